"""The guide's prose: numbers come from cards, hazards bring cautions, links lead somewhere."""

import re
import tomllib
from html.parser import HTMLParser
from pathlib import Path

import glossary
import job_steps
import pytest
import reference_lists
import stuck

from calculators.cards import BY_SLUG
from calculators.cautions import CAUTIONS
from calculators.practice_limits import PRACTICE_LIMITS, RECOVERY_LEVELS
from calculators.sources import BIBLIOGRAPHY

pytestmark = pytest.mark.native

ROOT = Path(__file__).resolve().parents[1]
DOCS = ROOT / "docs"
PAGES = sorted(DOCS.rglob("*.md"))
DATA = sorted(DOCS.rglob("*.toml"))
every_job_page = pytest.mark.parametrize("page", job_steps.ORDER)

MARKER = re.compile(r"<!--\s*([a-z]+):\s*(.*?)\s*-->", re.S)


# --- numbers -----------------------------------------------------------------

# What is not prose: markers, formulas, code, drawings, tags, addresses, list numbers.
NOT_PROSE = (
    (re.compile(r"<!--.*?-->", re.S), " "),
    (re.compile(r"<svg.*?</svg>", re.S), " "),
    (re.compile(r"\\\[.*?\\\]|\\\(.*?\\\)", re.S), " "),
    (re.compile(r"```.*?```|`[^`]*`", re.S), " "),
    (re.compile(r"<[^>]+>"), " "),
    (re.compile(r"\]\([^)]*\)"), "] "),
    (re.compile(r"\{[^{}]*[#.:=][^{}]*\}"), " "),
    (re.compile(r"^\s*\d+\. ", re.M), " "),
)
# Names that have digits in them. They are no quantities.
NAMES = re.compile(
    r"""\b(?:19|20)\d\d\b                      # a year
    | \bR-\d+[A-Za-z]*                        # a refrigerant
    | \bA[123]L?\b | \bB[12]L?\b              # a safety class
    | \b40\ CFR\ (?:Part\ )?\d+(?:\.\d+)?     # the law
    | \b(?:ISO|EN|UL|IEC)\ \d+(?:-\d+)?       # a standard
    | \bQTI\ \d\.\d\b | \b1EdTech\b
    | \bASTM\ B280\b | \bIAPWS\ [A-Z0-9-]+(?:\(\d+\))?
    | \b(?:\d+-)?\d/\d+\ in\b               # a size, the name of a hose or a tube
    """,
    re.VERBOSE,
)


def prose(text: str) -> str:
    for pattern, instead in NOT_PROSE:
        text = pattern.sub(instead, text)
    return NAMES.sub(" ", text)


def typed_numbers(text: str) -> list[str]:
    return re.findall(r"\S*\d\S*", prose(text))


every_page = pytest.mark.parametrize(
    "page", PAGES, ids=lambda page: page.relative_to(DOCS).as_posix()
)


@every_page
def test_no_number_is_typed_by_hand(page):
    assert typed_numbers(page.read_text(encoding="utf-8")) == []


@pytest.mark.parametrize("file", DATA, ids=lambda p: p.name)
def test_no_number_is_typed_into_the_data(file):
    def texts(value):
        if isinstance(value, str):
            yield value
        elif isinstance(value, (dict, list)):
            for each in value.values() if isinstance(value, dict) else value:
                yield from texts(each)

    whole = tomllib.loads(file.read_text(encoding="utf-8"))

    assert [number for text in texts(whole) for number in typed_numbers(text)] == []


def test_a_typed_number_would_be_found():
    assert typed_numbers("Pull to 500 micron, then <!-- practice: target -->.") == ["500"]


def test_every_level_of_the_trade_is_used():
    written = " ".join(p.read_text(encoding="utf-8") for p in [*PAGES, *DATA])
    code = " ".join(
        p.read_text(encoding="utf-8") for p in (ROOT / "calculators").rglob("*.py")
        if p.name != "practice_limits.py"
    )  # fmt: skip

    unused = [
        k for k in PRACTICE_LIMITS if f"practice: {k}" not in written and f'"{k}"' not in code
    ]

    assert unused == []


def test_levels_of_recovery_are_those_of_the_law():
    # 40 CFR 82.156, table 1: inches of mercury vacuum by the age of the machine; the last row
    # is 25 mm of mercury absolute.
    table = [(0, 0), (0, 0), (4, 10), (4, 10), (4, 15), (25, 25)]

    assert [(row.before, row.since) for row in RECOVERY_LEVELS] == table


# --- hazards -------------------------------------------------------------------

# Words of the work, and the caution that a page with them must show.
HAZARDS = {
    r"\bbreak (?:it )?with (?:dry )?nitrogen|\bnitrogen (?:in|out|pressure test)\b": "nitrogen",
    r"\brecover the refrigerant|\bweigh in the charge|\bcharging hose": "refrigerant",
    r"\bA2L\b|\bA3\b|\bflammable refrigerant": "flammable",
    r"\block out\b|\bcrankcase (?:heater|warm)|\btests its windings\b": "electricity",
    r"\bstart a compressor": "electricity",
    r"\bnever a flame|\bwarm air|\bheat gun": "hot-surface",
    r"\bchange the oil": "oil",
    r"\bpit\b|\bplant room": "asphyxiation",
    r"\bfrosts and slows|\bliquid refrigerant let into": "frostbite",
    r"\bweigh the cylinder": "cylinder",
    r"\bpressure test\.\*\*|\bcores back\b.*\bremove the tools": "stored-pressure",
}  # fmt: skip
HAS_THEM_ALL = "hazards"  # the marker of the page of all cautions


def shown_cautions(text: str) -> set[str]:
    shown = set()
    for marker, words in MARKER.findall(text):
        if marker == HAS_THEM_ALL:
            return set(CAUTIONS)
        if marker == "cautions":
            shown.update(words.split())
        if marker == "range":
            shown.update(BY_SLUG[words].cautions)
    return shown


@every_page
def test_a_page_with_a_hazard_shows_its_caution(page):
    text = page.read_text(encoding="utf-8")
    words = " ".join(re.sub(r"<!--.*?-->", " ", text, flags=re.S).split())
    needed = {key for pattern, key in HAZARDS.items() if re.search(pattern, words, re.IGNORECASE)}
    if page.parent.name == "on-the-job":
        for marker, slug in MARKER.findall(text):
            needed |= set(BY_SLUG[slug].cautions) if marker == "card" else set()

    assert needed - shown_cautions(text) == set()


def test_symptoms_show_their_cautions():
    text = (DOCS / "stuck.toml").read_text(encoding="utf-8")
    words = " ".join(text.split())
    needed = {key for pattern, key in HAZARDS.items() if re.search(pattern, words, re.IGNORECASE)}

    assert needed - shown_cautions((DOCS / "stuck.md").read_text(encoding="utf-8")) == set()


def test_every_caution_is_shown_somewhere_beside_the_page_of_all():
    pages = [p for p in PAGES if p.name != "cautions.md"]
    shown = set().union(*(shown_cautions(p.read_text(encoding="utf-8")) for p in pages))

    assert set(CAUTIONS) - shown == set()


# --- the job, the symptoms, the words, the sources ---------------------------------


@every_job_page
def test_a_job_page_has_its_parts_in_order(page):
    text = (job_steps.FOLDER / f"{page}.md").read_text(encoding="utf-8")
    headings = [heading.split(":")[0] for heading in re.findall(r"^## (.+)$", text, re.M)]
    parts = ["Do this", "The number that decides", "Why", "What goes wrong"]
    found = [part for heading in headings for part in parts if heading.startswith(part)]

    assert list(dict.fromkeys(found)) == [part for part in parts if part in found]
    assert {"Do this", "The number that decides", "What goes wrong"} <= set(found)
    assert "**You need:**" in text


@every_job_page
def test_steps_are_short_enough_to_read_at_arms_length(page):
    _, steps = job_steps.steps_of(page)
    lengths = [len(MARKER.sub("0", step).split()) for step in steps]

    assert 5 <= len(steps) <= 12
    assert max(lengths) <= 14


def test_symptoms_lead_somewhere():
    _, symptoms = stuck.symptoms()

    assert len(symptoms) >= 20
    assert len({each.id for each in symptoms}) == len(symptoms)
    for each in symptoms:
        assert each.check.endswith(("?", ".")), each.id
        assert any(cause.card or cause.page for cause in each.causes), each.id
        for cause in each.causes:
            assert cause.card in {"", *BY_SLUG}, each.id
            assert not cause.page or (DOCS / f"{cause.page}.md").exists(), each.id


def test_words_are_in_order_and_lead_somewhere():
    terms = glossary.terms()
    names = [term.name for term in terms]
    order = [name.casefold().replace("-", "") for name in names]

    assert len(terms) >= 90
    assert order == sorted(order)
    assert len(set(names)) == len({term.anchor for term in terms}) == len(terms)
    for term in terms:
        assert set(term.see) <= set(names), term.name
        assert term.card in {"", *BY_SLUG}, term.name
        assert not term.page or (DOCS / f"{term.page}.md").exists(), term.name


def test_every_source_is_used_and_every_citation_has_a_source():
    used = reference_lists.uses()  # raises when something in the bibliography is not

    assert set(used) == set(BIBLIOGRAPHY)


# --- links of the finished site ------------------------------------------------------


class Page(HTMLParser):
    """The links and the named places of one page."""

    def __init__(self, path: Path):
        super().__init__()
        self.links: list[str] = []
        self.places: set[str] = {""}
        self.feed(path.read_text(encoding="utf-8"))

    def handle_starttag(self, tag, attrs):
        found = dict(attrs)
        self.places.update(found[name] for name in ("id", "name") if found.get(name))
        if tag == "a" and found.get("href") is not None:
            self.links.append(found["href"])


def test_every_link_of_the_site_leads_to_a_place():
    site = ROOT / "build" / "site"
    files = [p for p in site.rglob("*.html") if p.name != "404.html"]
    assert files, "There is no site to test: run python3 scripts/test.py"
    pages = {path.resolve(): Page(path) for path in files}
    broken = []
    for path, page in pages.items():
        for link in page.links:
            if re.match(r"[a-z]+:", link):
                continue
            address, _, place = link.partition("#")
            target = (path.parent / address.partition("?")[0]).resolve() if address else path
            target = target / "index.html" if target.is_dir() else target
            if not target.exists() or (target in pages and place not in pages[target].places):
                broken.append(f"{path.relative_to(site.resolve())}: {link}")

    assert broken == []
