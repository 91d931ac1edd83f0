"""Figures: drawn from the physics, fit for the pages, described in words."""

import re
from pathlib import Path
from xml.etree import ElementTree

import pytest

pytest.importorskip("matplotlib")  # Pyodide is not asked to draw

import figures
import svg_clean
from figures import style

ROOT = Path(__file__).resolve().parents[1]
SVG = "{http://www.w3.org/2000/svg}"
pytestmark = pytest.mark.native

every_figure = pytest.mark.parametrize("name", figures.BY_ID)


@pytest.fixture(scope="module")
def drawn():
    return {name: figures.drawing(name) for name in figures.BY_ID}


def test_the_guide_has_the_figures_it_promises():
    promised = {
        "phase-curve", "flow-regimes", "conductance-pressure", "effective-speed",
        "pull-down-hoses", "decay-shapes", "water-removal", "freezing", "dilution", "hold-time",
        "altitude", "pressure-along-rig", "thermal-gauge-gas", "smallest-leak", "log-scale",
    }  # fmt: skip

    assert promised <= set(figures.BY_ID)
    assert len(figures.BY_ID) == len(figures.FIGURES)


def test_the_gallery_shows_every_figure():
    gallery = (ROOT / "docs/look-up/figures.md").read_text("utf-8")
    shown = re.findall(r"<!-- figure: (\S+) -->", gallery)

    # What the decay judge does stands on the verification page, once it has been counted.
    assert sorted(shown) == sorted(set(figures.BY_ID) - {"judge-characteristic"})


@every_figure
def test_a_drawing_keeps_to_the_content_policy(name, drawn):
    svg = drawn[name]["svg"]

    assert not re.search(r"\bstyle=|<style|<script|\bon\w+=|<image|https?://(?!www\.w3\.org)", svg)


@every_figure
def test_a_drawing_takes_every_color_from_the_page(name, drawn):
    root = ElementTree.fromstring(drawn[name]["svg"])

    colors = {each.get(key) for each in root.iter() for key in ("fill", "stroke")} - {None}

    assert all(color == "none" or color.startswith("var(--") for color in colors), colors


@every_figure
def test_a_drawing_sets_text_as_text_large_enough_for_a_phone(name, drawn):
    root = ElementTree.fromstring(drawn[name]["svg"])
    width = float(root.get("viewBox").split()[2])
    texts = list(root.iter(f"{SVG}text"))

    assert texts
    # A phone of 360 leaves 328 for the drawing; nothing is set below 11 there.
    assert min(float(text.get("font-size")) for text in texts) * 328 / width >= 11
    assert not any(text.get("font-family") for text in texts)


@every_figure
def test_the_ids_of_a_drawing_are_its_own_and_all_used(name, drawn):
    svg = drawn[name]["svg"]
    ids = re.findall(r'\bid="([^"]+)"', svg)
    used = set(re.findall(r"#([\w-]+)", svg))

    assert len(ids) == len(set(ids))
    assert set(ids) == used
    assert all(identity.startswith(f"{name}-") for identity in ids)


@every_figure
def test_a_figure_says_in_words_what_it_shows(name, drawn):
    figure, made = figures.BY_ID[name], drawn[name]

    assert 60 < len(made["alt"]) < 700
    assert ElementTree.fromstring(made["svg"]).get("aria-label") == made["alt"]
    assert made["caption"].endswith(".")
    assert "{" not in made["caption"] + made["alt"] + figure.title


@every_figure
def test_a_figure_names_the_code_that_draws_it(name):
    source = figures.BY_ID[name].source

    assert (ROOT / source).is_file()
    assert source in figures.html(name)


@every_figure
def test_no_measured_number_is_typed_into_a_caption(name):
    """Numbers with a unit come through the template; what is left is fractions of a bore."""
    figure = figures.BY_ID[name]
    typed = re.sub(r"\{[^}]*\}", "", figure.caption)

    assert not re.search(r"\d\s*(micron|Pa|°|CFM|L/s|min\b|kg|mbar|psi)", typed), typed


def test_the_same_figure_gives_the_same_bytes():
    figure = figures.BY_ID["freezing"]

    assert style.rendered(figure) == style.rendered(figure)


def test_cleaning_refuses_a_color_that_is_not_the_pages():
    svg = '<svg xmlns="http://www.w3.org/2000/svg"><path d="M0 0" style="fill: #123456"/></svg>'

    with pytest.raises(ValueError, match="#123456"):
        svg_clean.clean(svg, name="x", label="x", colors={})


def test_cleaning_refuses_a_style_it_does_not_know():
    svg = '<svg xmlns="http://www.w3.org/2000/svg"><path d="M0 0" style="filter: blur"/></svg>'

    with pytest.raises(ValueError, match="filter"):
        svg_clean.clean(svg, name="x", label="x", colors={})


def test_cleaning_writes_a_label_that_html_can_hold():
    svg = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 1 1"><path d="M0 0"/></svg>'

    cleaned = svg_clean.clean(svg, name="x", label='less < "more" & more', colors={})

    assert 'aria-label="less &lt; &quot;more&quot; &amp; more"' in cleaned
