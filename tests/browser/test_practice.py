"""An apprentice practices, an instructor makes sets: in a real browser, to the end."""

import csv
import io
import json
import re
import zipfile

import pytest
from playwright.sync_api import expect

from calculators import units
from calculators.teaching.bank import BY_NAME, TEMPLATES
from calculators.teaching.marking import bare_unit, right_number, right_option, right_order
from calculators.teaching.problem import make
from calculators.teaching.question import Choice, Numeric

both_widths = pytest.mark.parametrize("width", [360, 1280])
both_schemes = pytest.mark.parametrize("scheme", ["light", "dark"])
STARTS = 120_000  # ms; the calculator is fetched and started on a busy machine


def shown(page):
    """The problem on the page, made here from its name and seed."""
    place = page.locator(".problem")
    return make(BY_NAME[place.get_attribute("data-template")], place.get_attribute("data-seed"))


def type_right(page, question):
    """Answer as a learner who is right does."""
    if isinstance(question, Numeric):
        unit = bare_unit(question, "us")
        value = units.from_si(right_number(question), unit)
        typed = f"{value:.6g}" if question.in_unit else f"{value:.6g} {unit}"
        page.locator(".problem input[name=answer]").fill(typed.removesuffix(" 1"))
    elif isinstance(question, Choice):
        page.locator(f".problem input[value='{right_option(question).key}']").check()
    else:
        for place, key in enumerate(right_order(question)):
            row = page.locator(f".problem [data-key='{key}']")
            while row.evaluate("row => [...row.parentElement.children].indexOf(row)") > place:
                row.locator("[data-row=up]").click()


def check(page):
    page.locator(".problem .quiz-check").click()


def marked(page, how):
    expect(page.locator(".problem")).to_have_attribute("data-marked", how, timeout=STARTS)
    return page.locator(".problem .quiz-mark").inner_text()


def next_problem(page):
    before = page.locator(".problem").get_attribute("data-seed")
    page.locator("[data-do=next]").click()
    expect(page.locator(".problem")).not_to_have_attribute("data-seed", before, timeout=STARTS)
    expect(page.locator("problem-practice")).to_have_attribute("state", "asked")


# --- an apprentice ------------------------------------------------------------------


def test_an_apprentice_does_ten_problems_two_of_them_wrong(page):
    page.goto("/practice/")
    page.locator(".problem input[name=answer]").fill("100 °C")  # boiling in open air
    check(page)
    assert "open air" in marked(page, "wrong")
    type_right(page, shown(page).question)
    check(page)
    assert marked(page, "right").startswith("Right")

    # Gauge taken as absolute, on purpose.
    page.goto("/practice/#problem=gauge-to-absolute&seed=5")
    expect(page.locator(".problem")).to_have_attribute(
        "data-template", "gauge-to-absolute", timeout=STARTS
    )
    page.locator(".problem input[name=answer]").fill(shown(page).drawn["g"])
    check(page)
    assert "That is the gauge reading. Add the barometer" in marked(page, "wrong")
    page.locator(".quiz-hint summary").click()
    expect(page.locator(".quiz-hint")).to_contain_text("gauge plus barometer")
    type_right(page, shown(page).question)
    check(page)
    marked(page, "right")

    for _ in range(8):
        next_problem(page)
        type_right(page, shown(page).question)
        check(page)
        marked(page, "right")

    record = json.loads(page.evaluate("localStorage.getItem('dry-tight:practice')"))
    assert record["count"] == 10
    missed = {name for name, kind in record["kinds"].items() if kind["right"] < kind["tried"]}
    assert missed == {"boils-at-reading", "gauge-to-absolute"}
    assert sum(kind["tried"] for kind in record["kinds"].values()) == 10
    expect(page.locator(".record-says")).to_have_text("10 problems so far.")


def test_what_was_missed_comes_back_with_new_numbers(page):
    page.goto("/practice/")
    page.locator(".problem input[name=answer]").fill("100 °C")
    check(page)
    marked(page, "wrong")
    first = shown(page)
    met = []
    for _ in range(4):
        next_problem(page)
        met.append(shown(page))
        type_right(page, met[-1].question)
        check(page)
        marked(page, "right")

    assert [each.template.name for each in met].index(first.template.name) == 3
    assert met[3].seed != first.seed


def test_step_by_step_ends_at_the_answer(page):
    page.goto("/practice/#problem=leak-from-a-rise&seed=2")
    expect(page.locator(".problem")).to_have_attribute(
        "data-template", "leak-from-a-rise", timeout=STARTS
    )
    steps = page.locator(".quiz-solution .work > li").count()
    button = page.locator("[data-do=step]")
    for shown_so_far in range(1, steps + 1):
        button.click()
        expect(page.locator(".steps-shown > li")).to_have_count(shown_so_far)
    expect(button).to_be_disabled()


def test_filters_keep_to_the_topic_and_the_level(page):
    page.goto("/practice/")
    page.locator("[name=topic]").select_option("triple-evacuation")
    expect(page.locator(".problem-about a")).to_have_text("Triple evacuation", timeout=STARTS)
    page.locator("[name=level]").select_option("3")
    expect(page.locator(".problem-about")).to_contain_text("level 3")


def test_what_cannot_be_read_is_said_and_stays(page):
    page.goto("/practice/")
    page.locator(".problem input[name=answer]").fill("about ten")
    check(page)

    assert "not a number" in marked(page, "unread")
    expect(page.locator(".problem input[name=answer]")).to_have_value("about ten")


def test_the_record_goes_out_and_comes_in_as_a_file(open_page, tmp_path):
    page = open_page()
    page.goto("/practice/")
    type_right(page, shown(page).question)
    check(page)
    marked(page, "right")
    with page.expect_download() as saved:
        page.get_by_role("button", name="Save the record as a file").click()
    saved.value.save_as(tmp_path / "record.json")

    other = open_page()
    other.goto("/practice/")
    other.locator(".practice-record .file").set_input_files(tmp_path / "record.json")
    expect(other.locator(".record-says")).to_have_text("1 problem so far.")
    (tmp_path / "other.json").write_text('{"version": 1, "count": -4}')
    other.locator(".practice-record .file").set_input_files(tmp_path / "other.json")
    expect(other.locator(".practice-record .says")).to_contain_text("not a practice record")
    expect(other.locator(".record-says")).to_have_text("1 problem so far.")


def test_a_link_to_a_set_opens_that_set_and_counts_it(page):
    page.goto("/practice/#set=7&problems=2&variant=3&of=5&objectives=triple-point&title=Monday")
    expect(page.locator(".practice-says")).to_have_text("Monday: problem 1 of 2.", timeout=STARTS)
    assert page.locator(".quiz-solution").is_hidden()
    for _ in range(2):
        seed = page.locator(".problem").get_attribute("data-seed")
        assert re.fullmatch(r"7-3(-\d)?", seed)
        type_right(page, shown(page).question)
        check(page)
        marked(page, "right")
        page.locator("[data-do=next]").click()
        page.wait_for_timeout(300)
    expect(page.locator(".set-done")).to_have_text("2 of 2 right at the first try.")


def test_a_link_that_names_nothing_known_is_one_sentence(page):
    page.goto("/practice/#problem=no-such-problem&seed=1")

    expect(page.locator(".practice-says")).to_contain_text(
        "This guide has no problem", timeout=STARTS
    )


@both_widths
@both_schemes
def test_the_practice_page_fits(page, width, scheme, screenshot):
    page.goto("/practice/#problem=read-the-pull&seed=5")
    expect(page.locator(".problem")).to_have_attribute(
        "data-template", "read-the-pull", timeout=STARTS
    )

    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")
    screenshot(page, f"{width}-{scheme}", full_page=True)


# --- an instructor --------------------------------------------------------------------


def make_sets(page, **entries):
    page.goto("/teach/assignment/")
    for name, text in entries.items():
        page.locator(f"assignment-maker [name={name}]").fill(text)
    page.get_by_role("button", name="Make the sets").click()


def test_an_instructor_gets_sheets_keys_table_and_packages(page, tmp_path):
    make_sets(page, problems="4", names="Ada Reed\nBo Li\nCleo Moss", seed="7")
    expect(page.locator("assignment-maker")).to_have_attribute("state", "made", timeout=STARTS)

    expect(page.locator(".set-links a")).to_have_text(["Ada Reed", "Bo Li", "Cleo Moss"])
    link = page.locator(".set-links a").nth(1).get_attribute("href")
    assert "#set=7" in link and "variant=2" in link and "Bo" not in link
    saved = {}
    for name in ("Sheets", "Keys", "Table of answers (CSV)", "Packages (QTI)"):
        with page.expect_download() as download:
            page.get_by_role("button", name=name, exact=True).click()
        saved[name] = download.value.path().read_bytes()
    assert saved["Sheets"].count(b'class="sheet"') == 3
    assert saved["Keys"].count(b"Answer key") == 3
    rows = list(csv.DictReader(io.StringIO(saved["Table of answers (CSV)"].decode("utf-8-sig"))))
    assert [row["name"] for row in rows[::4]] == ["Ada Reed", "Bo Li", "Cleo Moss"]
    with zipfile.ZipFile(io.BytesIO(saved["Packages (QTI)"])) as archive:
        assert archive.namelist() == [f"variant-{n}.zip" for n in (1, 2, 3)]


def test_the_link_of_a_variant_shows_the_problems_of_its_sheet(page):
    make_sets(page, problems="2", variants="2", seed="11")
    expect(page.locator("assignment-maker")).to_have_attribute("state", "made", timeout=STARTS)
    told = page.locator(".made.sheets .situation").first.text_content()
    page.evaluate("document.querySelector('.set-links').closest('details').open = true")

    page.locator(".set-links a").first.click()

    expect(page.locator(".problem .situation")).to_have_text(told, timeout=STARTS)


@pytest.mark.parametrize(("kind", "other"), [("sheets", "keys"), ("keys", "sheets")])
def test_only_what_was_asked_for_is_printed(page, kind, other):
    page.add_init_script("window.print = () => {}")
    make_sets(page, problems="2", variants="3", seed="7")
    expect(page.locator("assignment-maker")).to_have_attribute("state", "made", timeout=STARTS)
    page.get_by_role("button", name=f"Print the {kind}").click()
    page.emulate_media(media="print")

    printed = page.locator(f".assignment-made > .{kind} .sheet")
    expect(printed).to_have_count(3)
    assert all(sheet.is_visible() for sheet in printed.all())
    for hidden in ("h1", ".assignment-form", f".made.{other}", "footer"):
        assert not page.locator(hidden).first.is_visible()
    assert page.pdf().startswith(b"%PDF-")

    page.emulate_media(media="screen")
    page.evaluate("dispatchEvent(new Event('afterprint'))")
    expect(printed).to_have_count(0)
    expect(page.locator("h1")).to_be_visible()


def test_what_was_made_stays_what_it_was_when_the_form_changes(page):
    make_sets(page, problems="2", variants="2", seed="11")
    expect(page.locator("assignment-maker")).to_have_attribute("state", "made", timeout=STARTS)
    page.locator("assignment-maker [name=seed]").fill("12")
    expect(page.locator(".assignment-says")).to_contain_text("make the sets again")

    with page.expect_download() as download:
        page.get_by_role("button", name="Table of answers (CSV)").click()

    assert download.value.suggested_filename == "set-11-key.csv"
    table = download.value.path().read_text(encoding="utf-8-sig")
    assert len(list(csv.DictReader(io.StringIO(table)))) == 4


def test_bad_entries_are_said_under_their_fields(page):
    make_sets(page, problems="many", seed="a b")

    expect(page.locator(".complaint[data-for=problems]")).to_contain_text(
        "whole number", timeout=STARTS
    )
    expect(page.locator(".complaint[data-for=seed]")).to_contain_text("letters and digits")
    expect(page.locator("[name=problems]")).to_have_value("many")


def test_what_was_chosen_is_there_after_a_reload(page):
    page.goto("/teach/assignment/")
    page.locator("[name=problems]").fill("9")
    page.locator("summary", has_text="Objectives").click()
    page.locator("[name=objective]").first.uncheck()
    page.reload()

    expect(page.locator("[name=problems]")).to_have_value("9")
    expect(page.locator(".chosen")).to_contain_text("of")


@both_widths
@both_schemes
def test_the_teaching_pages_fit(page, width, scheme, screenshot):
    for name in ("teach", "teach/assignment", "teach/syllabus", "teach/rubrics"):
        page.goto(f"/{name}/")
        assert page.evaluate("document.documentElement.scrollWidth <= innerWidth"), name
        screenshot(page, f"{name.replace('/', '-')}-{width}-{scheme}", full_page=True)


def test_the_bank_is_listed_on_the_page(page):
    page.goto("/practice/")
    listed = json.loads(page.locator("problem-practice").get_attribute("data-bank"))

    assert [name for name, _, _ in listed] == [template.name for template in TEMPLATES]
