"""Lessons as HTML: the aim, the worked example, the questions, the list of all lessons.

Everything reads without script: each question has its answer and working one
tap away. Script turns it into a question that marks itself.
"""

from calculators.cards import BY_SLUG
from calculators.outputs.element import tag, text_of
from calculators.outputs.html import example_section
from calculators.outputs.question import kind, question_block
from calculators.teaching.lesson import Lesson
from calculators.teaching.lessons import BY_LESSON, LESSONS


def aim(slug: str) -> str:
    """Where a lesson stands, what it is for, and what you can do after it."""
    lesson = BY_LESSON[slug]
    can = [tag("li", objective.says) for objective in lesson.objectives]
    return text_of(
        tag(
            "div",
            tag("p", f"Lesson {number(lesson)} of {len(LESSONS)}", class_="kicker"),
            tag("p", lesson.aim, class_="aim-says"),
            tag("p", "After this you can:", class_="aim-can"),
            tag("ul", can),
            class_="aim",
        )
    )


def number(lesson: Lesson) -> int:
    """The lesson's place in the course, from 1."""
    return LESSONS.index(lesson) + 1


def worked(slug: str) -> str:
    """The lesson's own worked example, every step shown."""
    example = BY_LESSON[slug].worked
    return text_of(example_section(BY_SLUG[example.card], example.example))


def quiz(slug: str) -> str:
    """The questions of a lesson."""
    lesson = BY_LESSON[slug]
    asked = [
        tag("li", question_block(question, lesson.slug), class_="quiz-question",
            id=f"question-{question.name}", data_question=question.name, data_kind=kind(question))
        for question in lesson.questions
    ]  # fmt: skip
    return text_of(
        tag(
            "lesson-quiz",
            tag("ol", asked, class_="quiz-questions"),
            tag("p", class_="quiz-score", role="status"),
            lesson=lesson.slug, state="static", data_search_exclude=True,
        )
    )  # fmt: skip


def lesson_list(folder: str) -> str:
    """Every lesson in order, linked from a page beside them; script adds how far you are."""
    items = []
    for lesson in LESSONS:
        count = len(lesson.questions)
        items.append(
            tag(
                "li",
                tag("a", lesson.title, href=f"{folder}{lesson.slug}/"),
                tag("p", lesson.aim),
                tag("p", f"{count} questions", class_="lesson-done"),
                data_lesson=lesson.slug,
                data_questions=" ".join(question.name for question in lesson.questions),
            )
        )
    return text_of(
        tag(
            "lesson-progress",
            tag("p", class_="progress-says", role="status"),
            tag("ol", items, class_="lessons"),
        )
    )
