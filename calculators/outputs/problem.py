"""A problem of the bank as HTML: what is told, the form to answer, the solution step by step."""

from calculators.cards import BY_SLUG
from calculators.outputs.answer import working
from calculators.outputs.element import Element, tag
from calculators.outputs.question import asks_text, kind, question_block, solution_text
from calculators.outputs.ruled_curve import ruled_curve
from calculators.teaching.asking import answered
from calculators.teaching.bank import LESSON_OF
from calculators.teaching.marking import option_text, right_option
from calculators.teaching.problem import KINDS, Problem
from calculators.teaching.question import Asked, Choice, Numeric, Order

SITE = "../"  # the guide's root, from a page that shows problems


def told(problem: Problem, *, system: str = "us") -> list[Element]:
    """The situation, and the curve where there is one to read."""
    text = _situation(problem, system)
    parts = [tag("p", text[:1].upper() + text[1:], class_="situation")]
    if problem.figure:
        drawing = ruled_curve(problem.figure, problem.template.line, system=system)
        parts.append(tag("div", drawing, class_="curve-to-read"))
    return parts


def _situation(problem: Problem, system: str) -> str:
    if "{" in problem.situation and not isinstance(problem.question, Order):
        asked = deciding(problem)
        if asked:
            return answered(asked, system=system).say(problem.situation)
    return asks_text(problem.question, problem.situation, system=system)


def deciding(problem: Problem) -> Asked | None:
    """The card and entries that give the right answer, where one card does."""
    question = problem.question
    if isinstance(question, Numeric):
        return question.asked
    if isinstance(question, Choice):
        if isinstance(question.right, Asked):
            return question.right
        return right_option(question).asked or problem.figure
    return None


def problem_block(problem: Problem, *, system: str = "us") -> Element:
    """A problem as the practice page shows it."""
    template, lesson = problem.template, LESSON_OF[problem.template.objective]
    form, *rest = question_block(
        problem.question, "problem", system=system, calculators=f"{SITE}calculators/"
    )
    hint = [each for each in rest if each.get("class") == "quiz-hint"]
    about = tag(
        "p",
        tag("a", lesson.title, href=f"{SITE}learn/{lesson.slug}/"),
        f" · level {template.level} · {KINDS[template.kind].lower()}",
        class_="problem-about",
    )
    log = form.find(".//div[@class='scroll quiz-log']")
    if log is not None:
        _lift(form, log)
    if problem.figure:
        log = None  # the curve is to be read, not a table
    return tag(
        "article",
        about,
        told(problem, system=system),
        [log] if log is not None else None,
        form,
        hint,
        _solution(problem, system),
        class_="quiz-question problem",
        data_template=template.name,
        data_seed=problem.seed,
        data_kind=kind(problem.question),
    )


def _lift(form: Element, log: Element) -> None:
    """Take the log out of the form: it is told, not asked."""
    for parent in form.iter():
        if log in list(parent):
            parent.remove(log)
            return


def _solution(problem: Problem, system: str) -> Element:
    return tag(
        "details",
        tag("summary", "Answer and working"),
        solution(problem, system=system),
        class_="quiz-solution",
    )


def solution(problem: Problem, *, system: str = "us") -> list[Element]:
    """The right answer in words, and the card's own working."""
    parts = [tag("p", solution_text(problem.question, system=system), class_="right-answer")]
    asked = deciding(problem)
    if asked:
        parts.append(tag("p", f"Worked with the card “{BY_SLUG[asked.card].title}”:"))
        parts.append(working(answered(asked, system=system)))
    ranked = _ranked(problem, system)
    if ranked:
        parts.append(tag("ul", [tag("li", line) for line in ranked], class_="ranked"))
    return parts


def _ranked(problem: Problem, system: str) -> list[str]:
    """What each option or line comes to, where they are compared by their values."""
    question = problem.question
    if isinstance(question, Choice):
        compared = [(option, option.text) for option in question.options]
        if isinstance(question.right, (str, Asked)):
            return []
        return [
            f"{option_text(question, option, text, system=system)}: {_value(option.asked, system)}"
            for option, text in compared
        ]
    if isinstance(question, Order):
        return [
            f"{answered(item.asked, system=system).say(item.text)}: {_value(item.asked, system)}"
            for item in question.items
            if item.asked
        ]
    return []


def _value(asked: Asked | None, system: str) -> str:
    assert asked is not None
    return answered(asked, system=system).say(f"{{{asked.output}}}")
