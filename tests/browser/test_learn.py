"""Lessons as an apprentice meets them: three done, a wrong answer explained, all kept."""

import pytest
from playwright.sync_api import expect

from calculators import units
from calculators.teaching.lessons import LESSONS
from calculators.teaching.marking import bare_unit, right_number, right_option, right_order
from calculators.teaching.question import Choice, Numeric


def question(page, name):
    return page.locator(f"#question-{name}")


def answer(page, asked):
    """Answer one question right, as a person does it with keys and clicks."""
    block = question(page, asked.name)
    if isinstance(asked, Numeric):
        unit = bare_unit(asked, "us")
        text = f"{units.from_si(right_number(asked), unit):.4g}"
        block.locator("input[name=answer]").fill(text)
    elif isinstance(asked, Choice):
        block.locator(f"input[value='{right_option(asked).key}']").check()
    else:
        put_in_order(block, right_order(asked))
    block.locator("button[type=submit]").click()
    expect(block).to_have_attribute("data-marked", "right")


def put_in_order(block, keys):
    for place, key in enumerate(keys):
        row = block.locator(f"[data-key='{key}']")
        while block.locator("[data-key]").nth(place).get_attribute("data-key") != key:
            row.locator("[data-row=up]").click()


def test_an_apprentice_does_three_lessons_and_finds_them_done(page):
    page.goto("/")
    page.get_by_role("link", name="Learn", exact=True).first.click()
    expect(page.locator("lesson-progress")).to_contain_text("kept on this device")

    for lesson in LESSONS[:3]:
        page.locator(".lessons").get_by_role("link", name=lesson.title).click()
        expect(page.get_by_role("heading", level=1)).to_have_text(lesson.title)
        for asked in lesson.questions:
            answer(page, asked)
        expect(page.locator(".quiz-score")).to_have_text("All right. This lesson is done.")
        page.goto("/learn/")

    expect(page.locator(".progress-says")).to_have_text(
        f"3 of {len(LESSONS)} lessons done. Next: {LESSONS[3].title}."
    )
    page.reload()
    expect(page.locator("li[data-done=all]")).to_have_count(3)
    expect(page.locator("li[data-next] a")).to_have_text(LESSONS[3].title)


def test_a_wrong_answer_is_explained_and_can_be_put_right(page):
    page.goto("/learn/why-a-dial-cant-show-it/")
    block = question(page, "dial-to-absolute")
    field, said = block.locator("input[name=answer]"), block.locator(".quiz-mark")

    field.fill("29")
    block.locator("select").select_option("inHg")
    field.press("Enter")
    expect(block).to_have_attribute("data-marked", "wrong")
    expect(said).to_have_text(
        "Not yet. You took the dial's reading as absolute. It counts down from the barometer: take "
        "29 inHg-vac away from 29.92 inHg."
    )

    field.fill("0.92")
    expect(said).to_be_empty()
    field.press("Enter")
    expect(block).to_have_attribute("data-marked", "right")
    expect(said).to_contain_text("Right: 23,368 micron, or 0.92 inHg.")


def test_what_is_answered_is_still_there_after_a_reload(page):
    page.goto("/learn/water-boils-cold/")
    number, order = question(page, "boils-at"), question(page, "first-to-boil")
    number.locator("input[name=answer]").fill("100")
    number.locator("select").select_option("°C")
    number.locator("button[type=submit]").click()
    expect(number).to_have_attribute("data-marked", "wrong")
    said = number.locator(".quiz-mark").inner_text()
    order.locator("[data-row=down]").first.click()
    keys = order.locator("[data-key]").evaluate_all("rows => rows.map(r => r.dataset.key)")

    page.reload()

    expect(number.locator("input[name=answer]")).to_have_value("100")
    expect(number.locator("select")).to_have_value("°C")
    expect(number.locator(".quiz-mark")).to_have_text(said)
    expect(number).to_have_attribute("data-marked", "wrong")
    for place, key in enumerate(keys):
        expect(order.locator("[data-key]").nth(place)).to_have_attribute("data-key", key)


def test_a_lesson_stays_done_when_an_answer_is_changed_afterwards(page):
    page.goto("/learn/what-a-micron-is/")
    for asked in LESSONS[0].questions:
        answer(page, asked)
    question(page, "micron-in-torr").locator("input[name=answer]").fill("7")

    page.goto("/learn/")

    expect(page.locator("li[data-lesson=what-a-micron-is]")).to_have_attribute("data-done", "all")


@pytest.mark.parametrize("text", ["", "many", "5 furlong", "5 g"])
def test_what_cannot_be_read_gets_a_sentence(page, text):
    page.goto("/learn/what-a-micron-is/")
    block = question(page, "air-in-micron")
    block.locator("input[name=answer]").fill(text)
    block.locator("button[type=submit]").click()

    expect(block).to_have_attribute("data-marked", "unread")
    assert block.locator(".quiz-mark").inner_text().endswith(".")


def test_a_calculator_that_cannot_start_says_so_beside_the_answer_and_keeps_it(page):
    page.watch.allow("TypeError|Failed|Error")
    page.route("**/assets/runtime/**", lambda route: route.abort())
    page.goto("/learn/what-a-micron-is/")
    block = question(page, "air-in-micron")
    block.locator("input[name=answer]").fill("760000")
    block.locator("button[type=submit]").click()

    expect(block.locator(".quiz-mark")).to_contain_text("What you typed is kept")
    page.reload()
    expect(block.locator("input[name=answer]")).to_have_value("760000")


def test_a_question_is_answered_with_the_keyboard_alone_and_the_mark_is_announced(page):
    page.goto("/learn/below-the-triple-point/")
    block = question(page, "stall")
    keys = block.locator("input").evaluate_all("inputs => inputs.map(input => input.value)")
    block.locator("input").first.focus()
    page.keyboard.press("Space")
    for _ in range(keys.index("water")):
        page.keyboard.press("ArrowDown")
    page.keyboard.press("Enter")

    expect(block).to_have_attribute("data-marked", "right")
    expect(block.locator(".quiz-mark")).to_have_attribute("aria-live", "polite")


def test_a_blank_field_follows_the_readers_units(page):
    page.goto("/learn/water-boils-cold/")
    page.get_by_role("button", name="SI").click()
    unit = question(page, "boils-at").locator("select")
    expect(unit).to_have_value("°C")
    answered = question(page, "boils-at")
    answered.locator("input[name=answer]").fill("22.1")
    answered.locator("button[type=submit]").click()

    expect(answered.locator(".quiz-mark")).to_contain_text("Right: 22.1 °C.")


def test_answers_are_forgotten_on_a_second_press_only(page):
    page.goto("/learn/what-a-micron-is/")
    answer(page, LESSONS[0].questions[0])
    page.goto("/learn/")
    forget = page.locator(".progress-forget")
    forget.click()
    expect(page.locator("li[data-done=some]")).to_have_count(1)

    forget.click()

    expect(page.locator("li[data-done=none]")).to_have_count(len(LESSONS))
    assert page.evaluate("localStorage.getItem('dry-tight:learn')") is None


def test_a_lesson_reads_without_script(open_page):
    page = open_page(java_script_enabled=False)
    page.goto("/learn/below-the-triple-point/")
    block = question(page, "triple-point")
    expect(block.locator(".quiz-check")).to_be_hidden()

    block.get_by_text("Answer and working").click()

    expect(block.locator(".quiz-solution")).to_contain_text("4,588 micron")
    expect(block.locator(".quiz-solution .work li").first).to_be_visible()


@pytest.mark.parametrize("width", [360, 1280])
@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_a_lesson_fits_its_screen(page, width, scheme, screenshot):
    page.goto("/learn/water-boils-cold/")
    answer(page, LESSONS[4].questions[1])
    question(page, "boils-at").locator("input[name=answer]").fill("212")
    question(page, "boils-at").locator("button[type=submit]").click()
    expect(question(page, "boils-at")).to_have_attribute("data-marked", "wrong")
    question(page, "boils-at").scroll_into_view_if_needed()
    screenshot(page, "questions")

    assert page.evaluate("document.documentElement.scrollWidth") <= width
    page.goto("/learn/")
    screenshot(page, "list")
    assert page.evaluate("document.documentElement.scrollWidth") <= width
