"""Opening a page and reading off when it first answered, on the page's own clock."""

import time
from dataclasses import dataclass
from http import HTTPStatus

import site_server
from playwright.sync_api import BrowserContext, Page
from steps import StepFailed

PATIENCE = 240_000  # ms for a first answer: long, for a slowed processor
# The guide's card and the plain page's line say by this attribute that Python has answered.
PLACES = ("worked-card", "#answer")
ENDED = ", ".join(f"{one}[state={end}]" for one in PLACES for end in ("done", "broken"))
# Watches from before the page's own scripts run. A time is that of the frame that shows it.
CLOCK = """
const seen = (name) => requestAnimationFrame(() => {
  const painted = new MessageChannel();
  painted.port1.onmessage = () => { window[name] ??= performance.now(); };
  painted.port2.postMessage("");
});
const watch = new MutationObserver(() => {
  if (!window.askedReadable && document.querySelector(".big")?.textContent.trim()) {
    window.askedReadable = true;
    seen("readable");
  }
  const first = document.querySelector("worked-card, #answer");
  if (!["done", "broken"].includes(first?.getAttribute("state"))) return;
  watch.disconnect();
  seen("firstAnswer");
});
const state = { attributes: true, attributeFilter: ["state"] };
watch.observe(document, { ...state, childList: true, subtree: true });
"""
# The first paint of any content at all cannot be later than what is readable, or it is not that.
READ = """() => ({
  ms: window.firstAnswer,
  readable: window.readable && Math.max(
    window.readable, performance.getEntriesByName("first-contentful-paint")[0]?.startTime ?? 0),
})"""


class Counted:
    """A handler's part: tells what a page asks for from what the offline copy does."""

    def send(self, status: HTTPStatus, headers: dict[str, str], body: bytes = b"") -> None:
        """Send, and count the copy's bytes by themselves; it asks the server to look again."""
        looks_again = self.headers.get("Cache-Control") == "max-age=0"
        if looks_again and self.headers.get("Sec-Fetch-Dest") == "empty":
            self.server.copied += len(body)
        super().send(status, headers, body)


class Handler(Counted, site_server.Handler):
    """The plain server, counting."""


@dataclass(frozen=True)
class Visit:
    """One page opened: when it answered, when it could be read, and what it fetched for that."""

    ms: float
    readable: float | None
    sent: int


def first_answer(page: Page, address: str, server: site_server.Server) -> Visit:
    """Open a page and wait for its first answer."""
    before = server.sent - server.copied
    page.goto(address, wait_until="commit", timeout=PATIENCE)
    page.wait_for_selector(ENDED, state="attached", timeout=PATIENCE)
    sent = server.sent - server.copied - before
    if page.locator(", ".join(PLACES)).first.get_attribute("state") == "broken":
        raise StepFailed("Python did not start in the browser, so there is nothing to time.")
    page.wait_for_function("window.firstAnswer", timeout=PATIENCE)
    return Visit(sent=sent, **page.evaluate(READ))


def new_page(context: BrowserContext) -> Page:
    """Give a page on about:blank whose browser has come to rest."""
    context.add_init_script(CLOCK)
    page = context.pages[0] if context.pages else context.new_page()
    page.goto("about:blank")
    time.sleep(0.5)
    return page


def wait_for_copy(page: Page) -> None:
    """Wait until the guide is whole on the device."""
    page.evaluate("""async () => {
      const { active } = await navigator.serviceWorker.ready;
      if (active.state === "activated") return;
      await new Promise((done) => active.addEventListener("statechange", done, { once: true }));
    }""")
