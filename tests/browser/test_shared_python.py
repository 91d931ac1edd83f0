"""One Python answers all pages of the guide, and outlives the page that brought it up."""

import re
import shutil

import pytest
import site_server
from build_site import SITE
from playwright.sync_api import expect

A_PAGE = 400_000  # bytes: more than any page brings along, and far less than Python


def answered(page, state="done"):
    return page.locator(f"worked-card[state={state}]:not([stale])").first.wait_for()


def ask(page, pressure):
    page.locator('input[name="pressure"]').fill(pressure)
    answered(page)


@pytest.fixture
def server(tmp_path):
    """Serve a copy of the site that a test may take files from, and count what is sent."""
    one = site_server.start(shutil.copytree(SITE, tmp_path / "site"))
    yield one
    one.shutdown()
    one.server_close()


@pytest.fixture
def visit(browser, server):
    """Open pages of one visitor."""
    address = f"http://localhost:{server.server_port}"
    context = browser.new_context(base_url=address, service_workers="block")
    context.set_default_timeout(60_000)
    yield context.new_page
    context.close()


def test_the_next_page_in_the_same_tab_finds_python_up(visit, server):
    page = visit()
    page.goto("/calculators/boiling-point/")
    answered(page)
    first = server.sent
    page.goto("/calculators/convert/")
    answered(page)

    assert first > 3_000_000
    assert server.sent - first < A_PAGE


def test_tabs_ask_the_same_python_and_each_hears_its_own_answer(visit, server):
    one, two = visit(), visit()
    one.goto("/calculators/boiling-point/")
    answered(one)
    first = server.sent
    two.goto("/calculators/boiling-point/")
    ask(two, "20000")
    ask(one, "1000")
    one.close()
    ask(two, "5000")

    assert server.sent - first < A_PAGE
    expect(two.locator('[data-part="main"]').first).to_contain_text("34.2")


def test_a_python_that_broke_is_told_of_in_every_tab_and_a_reload_starts_another(
    visit, server, tmp_path
):
    runtime = tmp_path / "site" / "assets" / "runtime"
    files = [path for path in runtime.iterdir() if re.match("started|calculators", path.name)]
    away = tmp_path / "away"
    away.mkdir()
    for path in files:
        path.rename(away / path.name)
    pages = visit(), visit()
    for page in pages:
        page.goto("/calculators/boiling-point/")
        answered(page, "broken")
        expect(page.locator(".says")).to_contain_text("could not start")
    for path in files:
        (away / path.name).rename(path)

    for page in pages:
        page.reload()
        ask(page, "1000")


def test_a_browser_that_cannot_share_starts_one_for_the_page(visit):
    page = visit()
    page.add_init_script("delete globalThis.SharedWorker")
    page.goto("/calculators/boiling-point/")

    ask(page, "1000")


def test_a_page_starts_another_python_when_the_shared_one_was_told_to_end(visit):
    page = visit()
    page.goto("/calculators/boiling-point/")
    answered(page)
    page.evaluate("new BroadcastChannel('dry-tight:python').postMessage('end')")
    page.wait_for_timeout(1000)

    ask(page, "1000")
