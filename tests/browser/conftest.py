"""A real Chromium on the built site; anything it complains of fails the test.

``site`` is the address of the site. ``page`` is a page in a context of its own, that is,
with empty storage. Use ``open_page`` for a second visitor or other settings, and
``@both_widths`` and ``@both_schemes`` to run a test on a phone and a desktop, light and dark.
``screenshot`` writes pictures to build/screens to be looked at.
"""

import re
from pathlib import Path

import pytest
import site_server
from find_browser import ARGUMENTS, find
from playwright.sync_api import expect, sync_playwright

ROOT = Path(__file__).resolve().parents[2]
SITE, SCREENS = ROOT / "build" / "site", ROOT / "build" / "screens"
HEIGHTS = {360: 740, 1280: 900}
both_widths = pytest.mark.parametrize("width", [360, 1280])
both_schemes = pytest.mark.parametrize("scheme", ["light", "dark"])
# A report of every breach of the content policy, wherever in the page it happens.
REPORT_BREACHES = """addEventListener("securitypolicyviolation", (e) =>
  console.error(`content policy: ${e.violatedDirective} forbids ${e.blockedURI || e.sample}`));"""

PATIENCE = 60_000  # ms: a busy machine with two cores may take long to start Python
expect.set_options(timeout=PATIENCE)


@pytest.fixture(scope="session")
def site():
    """Serve build/site; the address has no slash at its end."""
    if not (SITE / "index.html").exists():
        pytest.fail("There is no site to test: run python3 scripts/test.py")
    server = site_server.start(SITE)
    yield f"http://localhost:{server.server_port}"
    server.shutdown()
    server.server_close()


@pytest.fixture(scope="session")
def browser():
    """Start the one browser."""
    program = find()
    if not program:
        pytest.fail(
            "There is no Chromium: run python3 scripts/test.py, which finds or installs it."
        )
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=program, args=ARGUMENTS)
        yield browser
        browser.close()


class Watch:
    """What went wrong in a context: errors on the console, in scripts, in requests."""

    def __init__(self, context, site):
        self.site, self.problems, self.allowed = site, [], []
        context.add_init_script(REPORT_BREACHES)
        context.on("console", self.console)
        context.on("weberror", lambda error: self.problems.append(f"script: {error.error}"))
        context.on("request", self.request)
        context.on("response", self.response)

    def console(self, message):
        """Keep errors and warnings; a missing page of ours is noted as a response."""
        expected = ("Failed to load resource", "blocked by Playwright")
        if message.type in ("error", "warning") and not any(e in message.text for e in expected):
            self.problems.append(f"console {message.type}: {message.text}")

    def request(self, request):
        """Keep every request that leaves this origin."""
        if not request.url.startswith((self.site + "/", "data:", "blob:")):
            self.problems.append(f"request to another origin: {request.url}")

    def response(self, response):
        """Keep every answer that says no."""
        if response.status >= 400:
            self.problems.append(f"{response.status}: {response.url}")

    def allow(self, pattern):
        """Expect a problem that matches, in a test that brings it about."""
        self.allowed.append(pattern)

    def unexpected(self):
        """List the problems that no test asked for."""
        return [p for p in self.problems if not any(re.search(a, p) for a in self.allowed)]


@pytest.fixture(scope="session")
def watch():
    """Give Watch, for a context that a test makes itself: ``watch(context, site)``."""
    return Watch


@pytest.fixture
def open_page(browser, site):
    """Open pages with contexts of their own; at the end nothing may have gone wrong.

    ``open_page(width=360, scheme="dark")`` takes any setting of a Playwright context too.
    ``page.watch.allow("404")`` lets a test bring about what it tests for.
    """
    watches, contexts = [], []

    def open_one(width=1280, scheme="light", **settings):
        viewport = {"width": width, "height": HEIGHTS.get(width, 900)}
        settings = {"viewport": viewport, "color_scheme": scheme, "base_url": site, **settings}
        # Only the tests of it need the copy for use offline, which takes a while to fetch.
        settings.setdefault("service_workers", "block")
        context = browser.new_context(**settings)
        context.set_default_timeout(PATIENCE)
        watches.append(Watch(context, site))
        contexts.append(context)
        page = context.new_page()
        page.watch = watches[-1]
        return page

    yield open_one
    for context in contexts:
        context.close()
    assert [problem for watch in watches for problem in watch.unexpected()] == []


@pytest.fixture
def page(open_page, request):
    """Open a page; a test that takes ``width`` or ``scheme`` gets them."""
    given = getattr(getattr(request.node, "callspec", None), "params", {})
    return open_page(**{name: given[name] for name in ("width", "scheme") if name in given})


@pytest.fixture
def no_python():
    """Have Python not start on a page: ``no_python(page)`` before it is opened."""

    def refuse(page):
        page.watch.allow("404|assets/runtime|PythonError|Error|started, not restored")
        # What a SharedWorker asks for can't be refused here, so there is none.
        page.add_init_script("delete globalThis.SharedWorker")
        files = re.compile("assets/runtime/(calculators|started)-")
        page.route(files, lambda route: route.fulfill(status=404))

    return refuse


@pytest.fixture
def screenshot(request):
    """Write a picture of a page to build/screens, named after the test and what it shows."""

    def write(page, name, **settings):
        SCREENS.mkdir(parents=True, exist_ok=True)
        test = re.sub(r"\W+", "-", request.node.name.removeprefix("test_")).strip("-")
        path = SCREENS / f"{test}-{name}.png"
        page.screenshot(path=path, **settings)
        return path

    return write
