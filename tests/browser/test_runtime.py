"""The worker answers on the built site, and its files come as browsers want them."""

import gzip
import json
import urllib.error
import urllib.request

import brotli
import pytest
from build_site import SITE

WORKER = next((SITE / "assets" / "runtime").glob("worker-*.js")).name


def get(address, coding=""):
    """Fetch a file as a client that accepts one coding."""
    request = urllib.request.Request(address, headers={"Accept-Encoding": coding})
    with urllib.request.urlopen(request) as response:
        return response.headers, response.read()


@pytest.mark.parametrize(
    ("path", "kind"),
    [
        ("/", "text/html; charset=utf-8"),
        ("/assets/js/guide.js", "text/javascript; charset=utf-8"),
        (f"/assets/runtime/{WORKER}", "text/javascript; charset=utf-8"),
    ],
)
def test_a_file_has_its_type_and_comes_whole_in_every_coding(site, path, kind):
    headers, plain = get(site + path)
    _, packed = get(site + path, "gzip")
    _, brotlied = get(site + path, "br")

    assert headers["Content-Type"] == kind
    assert gzip.decompress(packed) == plain == brotli.decompress(brotlied)


def test_a_browser_that_has_a_file_is_told_to_keep_it(site):
    headers, _ = get(f"{site}/assets/js/guide.js")
    again = urllib.request.Request(
        f"{site}/assets/js/guide.js", headers={"If-None-Match": headers["ETag"]}
    )

    with pytest.raises(urllib.error.HTTPError, match="304"):
        urllib.request.urlopen(again)


def test_the_worker_answers_and_counts_what_it_fetches(page):
    page.goto("/404.html")
    page.watch.allow("404")
    said = page.evaluate(
        """(ask) => new Promise((done) => {
          const { worker: address } = document.querySelector("[data-worker]").dataset;
          const worker = new Worker(address, { type: "module" });
          const heard = [];
          worker.onmessage = ({ data }) => { heard.push(data); if (data.id) done(heard); };
          worker.postMessage({ id: 7, ask });
        })""",
        json.dumps(
            {"do": "answer", "card": "boiling-point", "entries": {}, "system": "us", "data": True}
        ),
    )
    counts = [message for message in said if "total" in message]

    assert json.loads(said[-1]["reply"])["ok"] is True
    assert counts[-1]["loaded"] == counts[-1]["total"]
    assert {"ready": True} in said
