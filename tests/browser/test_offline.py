"""The guide without a network: with its server stopped, after one visit; and its updates.

The tests of the first part share one visitor, who opened the first page once.
"""

import json
import re
import shutil
from pathlib import Path
from xml.etree import ElementTree

import pytest
import site_server
from offline import files_kept, write_service_worker
from playwright.sync_api import expect

from calculators.cards import CARDS

SITE = Path(__file__).resolve().parents[2] / "build" / "site"
CALCULATOR = "/calculators/boiling-point/"
WHOLE = """async () => {
  const late = new Promise((_, fail) => setTimeout(fail, 120_000, "The guide could not be kept."));
  const registration = await Promise.race([navigator.serviceWorker.ready, late]);
  const worker = registration.active;
  if (worker.state === "activated") return;
  await new Promise((done) => worker.addEventListener("statechange", done, { once: true }));
}"""
OPEN_CACHE = """
  const cache = await caches.open((await caches.keys())[0]);
  const files = await cache.keys();
"""
UPDATE = """async () => {
  const registration = await navigator.serviceWorker.getRegistration();
  await registration.update();
  const worker = registration.installing ?? registration.waiting;
  if (!worker) return "none";
  for (; worker.state === "installing"; )
    await new Promise((done) => worker.addEventListener("statechange", done, { once: true }));
  return worker.state;
}"""


def paths_of_sitemap(site=SITE):
    """Give the path of every page, as the sitemap lists them."""
    tree = ElementTree.parse(site / "sitemap.xml")
    places = [each.text for each in tree.iter("{http://www.sitemaps.org/schemas/sitemap/0.9}loc")]
    return [re.sub(r"^https?://[^/]+", "", place) for place in places]


class Visitor:
    """One browser with storage of its own, and the server it talks to."""

    def __init__(self, browser, watch, folder, **settings):
        self.server = site_server.start(folder)
        self.port = self.server.server_port
        self.asked = []
        note = lambda handler, code="-", size="-": self.asked.append((handler.path, int(code)))  # noqa: E731
        self.server.RequestHandlerClass.log_request = note
        self.site = f"http://localhost:{self.port}"
        settings = {"viewport": {"width": 1280, "height": 900}, **settings}
        self.context = browser.new_context(base_url=self.site, **settings)
        self.watch = watch(self.context, self.site)
        self.page = self.context.new_page()

    def keep_all(self, path="/"):
        """Open a page and wait until the whole guide is kept."""
        self.page.goto(path)
        expect(self.page.locator("worked-card").first).to_have_attribute("state", "done")
        self.page.evaluate(WHOLE)

    def lose_signal(self):
        """Stop the server and switch the network off."""
        self.server.shutdown()
        self.server.server_close()
        self.context.set_offline(True)

    def close(self):
        """End it; nothing may have gone wrong on the way."""
        self.context.close()
        self.server.shutdown()
        self.server.server_close()
        assert self.watch.unexpected() == []


# --- without a network ---------------------------------------------------------


@pytest.fixture(scope="module")
def away(browser, watch):
    """Give somebody who opened the first page once, and has no signal now."""
    visitor = Visitor(browser, watch, SITE)
    visitor.keep_all()
    visitor.lose_signal()
    yield visitor
    visitor.context.close()


@pytest.fixture
def page(away):
    """Give that visitor's page; nothing may go wrong on it."""
    away.watch.problems.clear()
    yield away.page
    assert away.watch.unexpected() == []


def test_every_page_of_the_sitemap_opens(page):
    paths = paths_of_sitemap()
    for path in paths:
        answer = page.goto(path, wait_until="load")
        assert answer.ok, path
        assert answer.from_service_worker, path
        assert page.locator("h1").first.is_visible(), path
        broken = "[...document.images].filter((one) => one.complete && !one.naturalWidth).length"
        assert page.evaluate(broken) == 0, path
        assert page.evaluate("getComputedStyle(document.body).margin") == "0px", path
    pages = {p.parent.relative_to(SITE).as_posix() for p in SITE.rglob("index.html")}
    assert {path.strip("/") or "." for path in paths} == pages


@pytest.mark.parametrize("slug", [card.slug for card in CARDS])
def test_every_calculator_computes(page, slug):
    page.goto(f"/calculators/{slug}/")
    card = page.locator("worked-card").first
    expect(card).to_have_attribute("state", "done")
    page.get_by_role("button", name="SI", exact=True).click()
    expect(card).not_to_have_attribute("stale", "")
    expect(card).to_have_attribute("state", "done")
    page.get_by_role("button", name="US", exact=True).click()
    expect(card).not_to_have_attribute("stale", "")


def test_a_deep_link_fills_the_card(page):
    page.goto(f"{CALCULATOR}?pressure=1+kPa")
    expect(page.locator('input[name="pressure"]')).to_have_value("1")
    expect(page.locator("[data-part=main]").first).to_contain_text("Water boils")


def test_search_finds(page):
    page.goto("/look-up/glossary/")
    page.get_by_role("button", name="Search").click()
    page.get_by_label("Search the guide").fill("triple evacuation")
    found = page.locator(".md-search-result__link").first
    expect(found).to_be_visible()
    found.click()
    expect(page.locator("h1").first).to_be_visible()


def test_the_running_decay_test_takes_readings(page):
    page.goto("/on-the-job/live-decay/")
    page.get_by_role("button", name=re.compile("start the clock")).click()
    for reading in ("210", "230"):
        page.get_by_label("The gauge shows now").fill(reading)
        page.get_by_role("button", name="Add reading").click()
    expect(page.locator("live-decay")).to_contain_text("2 readings")
    expect(page.locator("live-decay")).to_contain_text("230")
    page.reload()
    expect(page.locator("live-decay")).to_contain_text("2 readings")


@pytest.mark.parametrize("path", ["/no-such-page/", "/calculators/no-such/thing?x=1"])
def test_an_unknown_address_gets_the_page_that_says_so(page, path):
    page.goto(path)
    expect(page.locator("h1")).to_have_text("There is no such page")
    assert page.evaluate("getComputedStyle(document.body).margin") == "0px"


def test_an_address_without_its_slash_or_with_its_file_leads_to_the_page(page):
    page.goto("/calculators/decay?limit=500+micron")
    expect(page).to_have_url(re.compile(r"/calculators/decay/\?limit=500\+micron"))
    page.goto("/calculators/decay/index.html")
    expect(page.locator("worked-card")).to_be_visible()


def test_a_browser_that_starts_anew_still_has_it_all(away):
    fresh = away.context.new_page()
    fresh.goto(CALCULATOR)
    expect(fresh.locator("worked-card")).to_have_attribute("state", "done")
    fresh.close()


def test_all_of_this_holds_under_any_path(browser, watch, tmp_path):
    shutil.copytree(SITE, tmp_path / "some" / "path")
    visitor = Visitor(browser, watch, tmp_path)
    visitor.watch.allow("favicon")
    visitor.keep_all(f"/some/path{CALCULATOR}?pressure=1+kPa")
    visitor.lose_signal()
    page = visitor.page
    page.goto("/some/path/calculators/decay")
    expect(page).to_have_url(re.compile("/some/path/calculators/decay/$"))
    expect(page.locator("worked-card")).to_have_attribute("state", "done")
    page.get_by_role("link", name="Learn", exact=True).first.click()
    expect(page).to_have_url(re.compile("/some/path/learn/$"))
    page.get_by_role("button", name="Search").click()
    page.get_by_label("Search the guide").fill("frozen")
    page.locator(".md-search-result__link").first.click()
    expect(page).to_have_url(re.compile("/some/path/"))
    expect(page.locator("h1").first).to_be_visible()
    visitor.close()


# --- updates -------------------------------------------------------------------


@pytest.fixture
def folder(tmp_path):
    """Give a copy of the site that a test may change."""
    return shutil.copytree(SITE, tmp_path / "site")


@pytest.fixture
def visitor(browser, watch, folder):
    """Give somebody who keeps the copy that is about to change."""
    one = Visitor(browser, watch, folder, viewport={"width": 360, "height": 740})
    one.keep_all(CALCULATOR)
    yield one
    one.close()


def publish_change(folder, path="look-up/cautions/index.html"):
    """Change one page and publish that."""
    file = folder / path
    file.write_text(file.read_text("utf-8").replace("</h1>", " (new)</h1>", 1), "utf-8")
    write_service_worker(folder)
    return file


def test_an_update_fetches_only_what_changed_and_asks(visitor, folder, screenshot):
    page = visitor.page
    page.locator('input[name="pressure"]').fill("800")
    expect(page).to_have_url(re.compile("pressure=800"))
    other = visitor.context.new_page()
    other.goto("/look-up/cautions/")
    visitor.asked.clear()
    publish_change(folder)

    assert page.evaluate(UPDATE) == "installed"
    fetched = [path for path, code in visitor.asked if code == 200]
    assert sorted(fetched) == ["/look-up/cautions/", "/service-worker.js"]
    prompt = page.get_by_role("complementary", name="New version")
    expect(prompt).to_contain_text("A new version of the guide is ready")
    assert "(new)" not in other.locator("h1").inner_text()
    other.reload()
    assert "(new)" not in other.locator("h1").inner_text()
    for scheme in ("light", "dark"):
        page.emulate_media(color_scheme=scheme)
        for width, height in ((360, 740), (1280, 900)):
            page.set_viewport_size({"width": width, "height": height})
            screenshot(page, f"prompt-{width}-{scheme}")

    prompt.get_by_role("button", name="Use it now").click()
    expect(other.locator("h1")).to_contain_text("(new)")
    expect(page.locator('input[name="pressure"]')).to_have_value("800")
    expect(page.get_by_role("complementary", name="New version")).to_have_count(0)


def test_later_means_later(visitor, folder):
    page = visitor.page
    publish_change(folder)
    assert page.evaluate(UPDATE) == "installed"
    page.get_by_role("button", name="Later").click()
    expect(page.get_by_role("complementary", name="New version")).to_have_count(0)
    page.goto("/look-up/cautions/")
    assert "(new)" not in page.locator("h1").inner_text()
    page.wait_for_timeout(1500)
    expect(page.get_by_role("complementary", name="New version")).to_have_count(0)
    page.goto("/look-up/on-this-device/")
    expect(page.locator("kept-here")).to_contain_text("A new version has been fetched")
    with page.expect_navigation():  # each open page reloads
        page.get_by_role("button", name="Change to the new version").click()
    page.goto("/look-up/cautions/")
    expect(page.locator("h1")).to_contain_text("(new)")


def test_an_update_that_arrives_half_broken_leaves_the_old_version_whole(visitor, folder):
    page = visitor.page
    visitor.watch.allow("404|integrity|ServiceWorker|bad-precaching")
    publish_change(folder, "calculators/altitude/index.html")
    victim = publish_change(folder)
    good = victim.read_bytes()
    victim.write_bytes(good[: len(good) // 2])
    assert page.evaluate(UPDATE) == "redundant"  # cut short
    victim.write_bytes(good + b"<!-- -->")
    assert page.evaluate(UPDATE) == "redundant"  # of yet another version
    victim.unlink()
    assert page.evaluate(UPDATE) == "redundant"  # gone

    visitor.server.shutdown()
    visitor.server.server_close()
    for path in ("/look-up/cautions/", "/calculators/altitude/", "/", "/learn/"):
        page.goto(path)
        expect(page.locator("h1").first).not_to_contain_text("(new)")
    page.goto(CALCULATOR)
    expect(page.locator("worked-card")).to_have_attribute("state", "done")
    expect(page.get_by_role("complementary", name="New version")).to_have_count(0)

    victim.write_bytes(good)  # put right, it goes on where it stopped
    visitor.server = site_server.start(folder, visitor.port)
    assert page.evaluate(UPDATE) == "installed"


# --- what is kept -----------------------------------------------------------------


def test_the_page_about_it_counts_refreshes_clears_and_removes(visitor, screenshot):
    page = visitor.page
    page.locator('input[name="pressure"]').fill("800")
    expect(page).to_have_url(re.compile("pressure=800"))
    page.get_by_role("button", name="SI", exact=True).click()
    page.goto("/look-up/on-this-device/")
    here = page.locator("kept-here")
    count = page.evaluate(f"async () => {{ {OPEN_CACHE} return files.length; }}")
    expect(here).to_contain_text(f"{count} files")
    size = float(re.search(r"files, ([\d.]+) MB", here.inner_text())[1])
    assert 10 < size < 60
    expect(here).to_contain_text("1 calculator")
    for scheme in ("light", "dark"):
        page.emulate_media(color_scheme=scheme)
        for width, height in ((360, 740), (1280, 900)):
            page.set_viewport_size({"width": width, "height": height})
            screenshot(page, f"{width}-{scheme}", full_page=True)

    page.evaluate(f"async () => {{ {OPEN_CACHE} await cache.delete(files[3]); }}")
    page.get_by_role("button", name="Refresh").click()
    expect(here).to_contain_text("1 lost file was fetched again")
    page.get_by_role("button", name="Refresh").click()
    expect(here).to_contain_text("the newest version, and it is whole")

    clear = here.get_by_role("listitem").filter(has_text="calculators").get_by_role("button")
    clear.click()
    expect(clear).to_have_text("Clear? Press again")
    clear.click()
    expect(here).not_to_contain_text("1 calculator")
    assert page.evaluate("Object.keys(localStorage)") == ["dry-tight:system"]

    page.get_by_role("button", name="Remove the copy").click()
    page.get_by_role("button", name="Remove the copy? Press again").click()
    expect(here).to_contain_text("Removed.")
    expect(here).to_contain_text("not kept on this device yet")
    assert page.evaluate("caches.keys()") == []

    visitor.keep_all(CALCULATOR)  # and it is kept again
    visitor.lose_signal()
    page.goto("/learn/")
    expect(page.locator("h1")).to_be_visible()


# --- on the home screen -----------------------------------------------------------


def test_the_manifest_names_pages_and_icons_that_are_there():
    manifest = json.loads((SITE / "site.webmanifest").read_text("utf-8"))
    assert len(manifest["shortcuts"]) >= 3
    for shortcut in manifest["shortcuts"]:
        assert (SITE / shortcut["url"] / "index.html").is_file()
    for icon in manifest["icons"]:
        path = SITE / icon["src"]
        assert path.is_file()
        if path.suffix == ".png":
            head = path.read_bytes()[:24]
            size = f"{int.from_bytes(head[16:20])}x{int.from_bytes(head[20:24])}"
            assert size == icon["sizes"]
    assert any(icon.get("purpose") == "maskable" for icon in manifest["icons"])


def test_all_that_a_page_can_ask_for_is_kept_and_nothing_else():
    kept = files_kept(SITE)
    script = (SITE / "service-worker.js").read_text("utf-8")
    assert json.dumps(kept, separators=(",", ":")) in script
    assert all(f"./{path.lstrip('/')}" in kept for path in paths_of_sitemap())
    runtime = [p for p in (SITE / "assets/runtime").rglob("*") if p.is_file()]
    names = {p.relative_to(SITE).as_posix() for p in runtime if p.suffix not in (".br", ".gz")}
    assert {f"./{name}" for name in names} <= set(kept)
    assert not any(name.endswith((".br", ".gz", ".map")) for name in kept)
