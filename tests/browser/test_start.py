"""Python is restored from its snapshot, and started the ordinary way whenever that fails.

Each way for the snapshot to fail is brought about here, in the browser.
"""

import hashlib
import json
import re

import pytest

ASK = {"do": "answer", "card": "boiling-point", "entries": {"pressure": "500 micron"}}
MARK = {"do": "mark", "lesson": "what-a-micron-is", "question": "", "answer": "500"}
NOT_RESTORED = "Python is started, not restored"
WORKER = r"/runtime/worker-\w+\.js$"

# Ask a fresh worker; give everything it said, and what it fetched, by name.
TALK = """(asks) => new Promise((done) => {
  const { worker: address } = document.querySelector("[data-worker]").dataset;
  const worker = new Worker(address, { type: "module" });
  const heard = [];
  worker.onmessage = ({ data }) => {
    heard.push(data);
    const replies = heard.filter((said) => "reply" in said).length;
    if (data.broken !== undefined || replies === asks.length) { worker.terminate(); done(heard); }
  };
  worker.onerror = () => done([{ broken: "the worker did not load" }]);
  setTimeout(() => done([...heard, { broken: "nothing more was heard" }]), 100_000);
  asks.forEach((ask, id) => worker.postMessage({ id, ask }));
})"""


class Talk:
    """One page with its watch: ask it, and see what it fetched."""

    def __init__(self, page):
        self.page, self.fetched, self.warned = page, [], []
        page.context.on("request", lambda request: self.fetched.append(request.url))
        page.context.on("console", lambda message: self.warned.append(message.text))
        page.watch.allow("404")
        page.goto("/404.html")

    def ask(self, *questions):
        """Give the replies, or why there is none."""
        asks = [json.dumps({"system": "us", **question}) for question in questions]
        self.heard = self.page.evaluate(TALK, asks)
        if "broken" in self.heard[-1]:
            return self.heard[-1]["broken"]
        replies = {said["id"]: json.loads(said["reply"]) for said in self.heard if "reply" in said}
        return [replies[number] for number in sorted(replies)]

    def got(self, part):
        """Say whether a file whose name holds this was asked for."""
        return any(part in url for url in self.fetched)

    def fell_back(self):
        """Say whether the worker told that it had to start Python."""
        return any(NOT_RESTORED in text for text in self.warned)


@pytest.fixture
def talk(page):
    return Talk(page)


def replace(page, pattern, change):
    """Have files come changed: ``change`` takes the whole and gives what arrives."""

    def handle(route):
        response = route.fetch()
        headers = {k: v for k, v in response.headers.items() if k != "content-encoding"}
        route.fulfill(status=200, headers=headers, body=change(response.body()))

    page.context.route(re.compile(pattern), handle)


def in_manifest(page, change):
    """Have the worker find something else said of what the build made."""

    def changed(code):
        before, text, after = re.split(rb"(?<= manifest = )(.*)(?=;\n)", code, maxsplit=1)
        manifest = json.loads(text)
        change(manifest)
        return before + json.dumps(manifest).encode() + after

    replace(page, WORKER, changed)


def flipped(content):
    """Turn a few bits over in the middle, where nothing would notice."""
    middle = len(content) // 2
    return (
        content[:middle]
        + bytes(b ^ 1 for b in content[middle : middle + 400])
        + content[middle + 400 :]
    )


def test_an_answer_comes_from_the_snapshot_alone(talk):
    [reply] = talk.ask(ASK)

    assert "sublimes" in reply["say"]
    assert talk.got("started-") and not talk.got(".zip")
    assert not talk.fell_back()


def test_bytes_are_counted_to_the_end_as_they_are_sent(talk):
    talk.ask(ASK)
    counts = [said for said in talk.heard if "total" in said]

    assert counts[-1]["loaded"] == counts[-1]["total"] < 8e6
    assert [c["loaded"] for c in counts] == sorted(c["loaded"] for c in counts)
    assert len(counts) > 3


def breakage(name):
    """Give how one thing is broken."""

    def missing(page):
        page.context.route(re.compile("started-"), lambda route: route.fulfill(status=404))

    def cut(page):
        replace(page, "started-", lambda content: content[: len(content) // 2])

    def turned(page):
        replace(page, "started-", flipped)

    def foreign(page):
        in_manifest(page, lambda manifest: manifest["snapshot"].update(build="0" * 64))

    def wrong(page):
        in_manifest(page, lambda manifest: manifest["snapshot"].update(says="Water boils at 1 °F"))

    def no_snapshot(page):
        content = b"not a snapshot at all" * 100
        digest = hashlib.sha256(content).hexdigest()
        replace(page, "started-", lambda _: content)
        in_manifest(page, lambda manifest: manifest["snapshot"].update(sha256=digest))

    return locals()[name]


@pytest.mark.parametrize("name", ["missing", "cut", "turned", "foreign", "wrong", "no_snapshot"])
def test_a_snapshot_that_fails_ends_in_the_ordinary_start(talk, name):
    breakage(name)(talk.page)
    [reply] = talk.ask(ASK)

    talk.page.watch.allow(NOT_RESTORED)
    assert "sublimes" in reply["say"]
    assert talk.fell_back()
    assert talk.got("/python-") and talk.got("/calculators-")


def test_another_engine_starts_the_ordinary_way(talk):
    replace(talk.page, WORKER, lambda text: text.replace(b'brand === "Chromium"', b"false"))
    [reply] = talk.ask(ASK)

    assert "sublimes" in reply["say"]
    assert not talk.got("started-") and not talk.fell_back()


def test_without_any_of_its_files_it_says_so(talk):
    talk.page.context.route(
        re.compile("started-|calculators-"), lambda route: route.fulfill(status=404)
    )

    assert "404" in talk.ask(ASK)
    talk.page.watch.allow(NOT_RESTORED)


def test_what_the_snapshot_lacks_is_fetched_when_it_is_wanted(talk):
    [first, _, last] = talk.ask(ASK, {**MARK, "question": first_question()}, ASK)

    assert first == last
    assert talk.got("started-") and talk.got("/python-") and talk.got("/calculators-")
    assert not talk.fell_back()


def first_question():
    from calculators.teaching.lessons import BY_LESSON

    return BY_LESSON[MARK["lesson"]].questions[0].name


# Restore as the worker does, and look at what came of it.
INSIDE = """async (code) => {
  const address = new URL(document.querySelector("[data-worker]").dataset.worker, location.href);
  const source = await (await fetch(address)).text();
  const probe = source
    .replace("import.meta.url", `"${address}"`)
    .replace("() => restore(module, content, build)", `() => {
      const settings = restore(module, content, build);
      [self.after, self.at] = [module.HEAPU8.slice(), trampoline(module)];
      return settings;
    }`)
    .replace("return withFiles(python, reply);",
      "self.python = python; return withFiles(python, reply);")
    + `;awake.then(async () => postMessage({ probed: await (${code})(self.python) }));`;
  const url = URL.createObjectURL(new Blob([probe], { type: "text/javascript" }));
  const worker = new Worker(url, { type: "module" });
  return await new Promise((done, fail) => {
    worker.onmessage = ({ data }) => { if ("probed" in data) done(data.probed); };
    worker.onerror = ({ message }) => fail(new Error(message));
    setTimeout(() => fail(new Error("nothing was heard of the worker")), 60_000);
  });
}"""


def inside(browser, site, code):
    """Run a function of JavaScript on a restored Python; our policy allows no such worker."""
    context = browser.new_context(bypass_csp=True)
    page = context.new_page()
    page.goto(f"{site}/404.html")
    given = page.evaluate(INSIDE, code)
    context.close()
    return given


def test_the_heap_is_the_one_that_was_built(browser, site):
    """Every byte of it, but for the word that belongs to the engine."""
    same, word = inside(
        browser,
        site,
        """async () => {
          const word = new Uint32Array(self.after.buffer, self.at * 4, 1);
          const [own] = word;
          word[0] = 0;
          const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", self.after));
          return [digest.toHex() === manifest.snapshot.heap, own];
        }""",
    )

    assert same
    assert word  # Chromium has a way of its own to call; the build's 0 did not overwrite it


def test_nothing_of_the_build_is_frozen_in(browser, site):
    seen = inside(
        browser,
        site,
        """(python) => python.runPython(`
import json, os, random, sys
from calculators.outputs import browser
json.dumps({
    "environ": dict(os.environ),
    "argv": sys.argv,
    "path": sys.path,
    "code": browser.reply.__code__.co_filename,
    "draw": random.random(),
})`)""",
    )
    again = inside(browser, site, "(python) => python.runPython('import random; random.random()')")
    seen = json.loads(seen)

    assert seen["argv"] == [""]
    assert seen["path"].count("") == 1
    assert seen["environ"]["_"] == "python"
    assert seen["environ"]["HOME"] == "/home/pyodide"
    assert seen["code"] == "calculators/outputs/browser.py"
    assert seen["draw"] != again
