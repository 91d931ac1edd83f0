"""A package opened and answered in an independent player.

The player is qti-components, brought by the test set-up and never shipped. It plays QTI 3.0, so
the package is first upgraded by citolab-qti-convert, as a learning-management system would.
"""

import io
import shutil
import zipfile

import pytest
import qti_convert
import site_server
from steps import ROOT

from calculators import units
from calculators.outputs import qti
from calculators.outputs.sheet import accepted
from calculators.teaching.assignment import Assignment
from calculators.teaching.marking import answered, right_option, right_order
from calculators.teaching.question import Choice, Numeric, Order

PLAYER = ROOT / "node_modules" / "@citolab" / "qti-components" / "cdn" / "index.js"
PAGE = """<!doctype html><html lang="en"><meta charset="utf-8"><title>Player</title>
<script type="module" src="index.js"></script>
<qti-item><item-container id="place"></item-container></qti-item></html>"""
ITEM = """() => {
  const find = (root) => {
    for (const each of root.querySelectorAll("*")) {
      if (each.localName === "qti-assessment-item") return each;
      const inside = each.shadowRoot && find(each.shadowRoot);
      if (inside) return inside;
    }
    return null;
  };
  return find(document);
}"""
SET = Assignment(
    seed="player",
    problems=14,
    objectives=(
        "micron-convert", "boil-by-pressure", "ice-leaves", "decay-shape", "order-of-work",
        "find-bottleneck", "hold-by-volume", "pull-time",
    ),
)  # fmt: skip


@pytest.fixture(scope="module")
def player(tmp_path_factory, browser):
    """A page with the player, and the items of one variant in QTI 3.0 beside it."""
    folder = tmp_path_factory.mktemp("player")
    package = folder / "variant.zip"
    package.write_bytes(qti.package(SET, 1))
    qti_convert.upgrade_package(package, folder / "upgraded.zip")
    with zipfile.ZipFile(io.BytesIO((folder / "upgraded.zip").read_bytes())) as archive:
        archive.extractall(folder / "items-3")
    shutil.copy(PLAYER, folder / "index.js")
    (folder / "index.html").write_text(PAGE, encoding="utf-8")
    server = site_server.start(folder)
    page = browser.new_page()
    page.goto(f"http://localhost:{server.server_port}/index.html")
    yield page
    page.close()
    server.shutdown()
    server.server_close()


def load(page, place):
    """Show one item."""
    url = f"items-3/items/problem-{place:02}.xml"
    page.evaluate("url => document.getElementById('place').setAttribute('item-url', url)", url)
    page.wait_for_function(f"name => ({ITEM})()?.identifier === name", arg=f"problem-{place:02}")


def respond(page, value):
    """Answer as the player's own interaction would, and give the score and the feedback."""
    return page.evaluate(
        f"""async (value) => {{
          const item = ({ITEM})();
          item.updateResponseVariable("RESPONSE", value);
          item.processResponse();
          await new Promise((done) => setTimeout(done, 50));
          const of = (name) => item.getOutcome(name)?.value;
          return [Number(of("SCORE")), String(of("FEEDBACK"))];
        }}""",
        value,
    )


def test_every_item_scores_what_is_right_and_names_what_is_wrong(player):
    for place, problem in enumerate(SET.variant(1), 1):
        question = problem.question
        load(player, place)
        if isinstance(question, Numeric):
            low, high, unit = accepted(question)
            middle, over = (low + high) / 2, high + 0.02 * abs(high - low)
            assert respond(player, f"{middle:.8g}") == [1, "right"], problem.template.name
            assert respond(player, f"{over:.8g}")[0] == 0
            for index, road in enumerate(question.wrong_roads, 1):
                where = road.method(answered(question.asked), question.asked.output)
                typed = f"{units.from_si(where, unit):.8g}"
                assert respond(player, typed) == [0, f"road-{index}"], road.name
        elif isinstance(question, Choice):
            right = right_option(question)
            for option in question.options:
                earned = [1, "right"] if option is right else [0, f"option-{option.key}"]
                assert respond(player, option.key) == earned
        else:
            right = list(right_order(question))
            assert respond(player, right) == [1, "right"]
            assert respond(player, right[::-1]) == [0, "wrong"]


def test_a_number_can_be_typed_into_the_blank(player):
    place, problem = next(
        (place, each) for place, each in enumerate(SET.variant(1), 1)
        if isinstance(each.question, Numeric)
    )  # fmt: skip
    low, high, _ = accepted(problem.question)
    load(player, place)
    field = player.locator("qti-text-entry-interaction input")

    field.fill(f"{(low + high) / 2:.6g}")
    field.press("Tab")

    score = player.evaluate(
        f"() => {{ const i = ({ITEM})(); i.processResponse(); return i.getOutcome('SCORE').value }}"
    )
    assert float(score) == 1


def test_an_option_can_be_clicked(player):
    place, problem = next(
        (place, each) for place, each in enumerate(SET.variant(1), 1)
        if isinstance(each.question, Choice)
    )  # fmt: skip
    load(player, place)

    key = right_option(problem.question).key
    player.locator(f"qti-simple-choice[identifier={key}]").click()

    score = player.evaluate(
        f"() => {{ const i = ({ITEM})(); i.processResponse(); return i.getOutcome('SCORE').value }}"
    )
    assert float(score) == 1


def test_the_kinds_of_question_are_all_there():
    kinds = {type(problem.question) for problem in SET.variant(1)}

    assert kinds == {Numeric, Choice, Order}
