"""The practice and teaching pages as HTML, readable without script."""

import json
from collections import Counter

from calculators.outputs.element import Child, Element, tag, text_of
from calculators.outputs.problem import problem_block
from calculators.teaching.bank import BY_NAME, LESSON_OF, TEMPLATES
from calculators.teaching.lessons import LESSONS
from calculators.teaching.problem import KINDS, LEVELS, make

FIRST = ("boils-at-reading", "1")  # the problem that stands on the page from the start
LESSON_HOURS = 1.0  # a lesson of fifteen minutes, its questions and problems; common practice


def practice() -> str:
    """Choices, one problem with its answer a tap away, and room for the record."""
    topics = [tag("option", lesson.title, value=lesson.slug) for lesson in LESSONS]
    levels = [tag("option", f"{n}: {says}", value=str(n)) for n, says in LEVELS.items()]
    chosen = tag(
        "form",
        _select("Topic", "topic", [tag("option", "All topics", value=""), *topics]),
        _select("Level", "level", [tag("option", "Any level", value=""), *levels]),
        class_="practice-choice", novalidate=True,
    )  # fmt: skip
    bank = [[t.name, LESSON_OF[t.objective].slug, t.level] for t in TEMPLATES]
    name, seed = FIRST
    return text_of(
        tag(
            "problem-practice",
            chosen,
            tag("p", class_="practice-says", role="status"),
            tag("div", problem_block(make(BY_NAME[name], seed)), class_="practice-place"),
            tag("div", class_="practice-record"),
            data_bank=json.dumps(bank, separators=(",", ":")), data_search_exclude=True,
            state="static",
        )
    )  # fmt: skip


def _select(label: str, name: str, options: list[Element]) -> Element:
    return tag(
        "label",
        tag("span", label),
        tag("span", tag("select", options, name=name), class_="field choice"),
    )


def assignment_form() -> str:
    """What an instructor chooses."""
    count = Counter(template.objective for template in TEMPLATES)
    topics = []
    for number, lesson in enumerate(LESSONS, 1):
        boxes = [
            tag(
                "label",
                tag("input", type="checkbox", name="objective", value=objective.name,
                    checked=True),
                tag("span", objective.says),
                tag("small", f"{count[objective.name]} kinds of problem"),
                class_="objective",
            )
            for objective in lesson.objectives
        ]  # fmt: skip
        topics.append(
            tag(
                "fieldset",
                tag("legend", f"{number}. {lesson.title}"),
                boxes,
                class_="topic",
            )
        )
    levels = [
        tag(
            "label",
            tag("input", type="checkbox", name="level", value=str(level), checked=True),
            tag("span", f"{level}: {says}"),
        )
        for level, says in LEVELS.items()
    ]
    form = tag(
        "form",
        _entry("Title", "title", "Evacuation problems", hint="the heading of every sheet"),
        _entry("Problems", "problems", "12", pad="numeric", hint="in a set"),
        _entry("Variants", "variants", "30", pad="numeric", hint="one each"),
        _entry("Seed", "seed", "1", hint="same seed, same sets"),
        tag("fieldset", tag("legend", "Levels"), levels, class_="levels wide"),
        tag(
            "div",
            tag("label", "Class list ",
                tag("span", "instead of a number of variants", class_="hint"),
                for_="assignment-names"),
            tag("textarea", id="assignment-names", name="names", rows=4, autocomplete="off",
                spellcheck="false", aria_describedby="assignment-names-help"),
            tag("p", "One name on each line. Names are printed on the sheets and stay on this "
                "device: no link holds them.", class_="help", id="assignment-names-help"),
            tag("p", class_="complaint", data_for="names", hidden=True),
            class_="ask-row wide", data_input="names",
        ),
        tag(
            "details",
            tag("summary", "Objectives ", tag("span", "all", class_="hint chosen")),
            tag("div", topics, class_="topics"),
            class_="objectives wide",
        ),
        tag("label", tag("input", type="checkbox", name="help", value="1"),
            tag("span", "Who follows a link may open hints, steps and answers"), class_="wide"),
        tag("div", tag("button", "Make the sets", type="submit", class_="quiz-check"),
            tag("p", class_="assignment-says", role="status"), class_="wide assignment-make"),
        class_="ask assignment-form", novalidate=True,
    )  # fmt: skip
    return text_of(
        tag(
            "assignment-maker", form, tag("div", class_="assignment-made", hidden=True),
            data_search_exclude=True, state="static",
        )
    )  # fmt: skip


def _entry(label: str, name: str, value: str, *, pad: str = "text", hint: str = "") -> Element:
    identity = f"assignment-{name}"
    heading: list[Child] = [f"{label} ", tag("span", hint, class_="hint")] if hint else [label]
    return tag(
        "div",
        tag("label", heading, for_=identity),
        tag(
            "div",
            tag("input", type="text", id=identity, name=name, value=value, inputmode=pad,
                autocomplete="off", spellcheck="false"),
            class_="field",
        ),
        tag("p", class_="complaint", data_for=name, hidden=True),
        class_="ask-row", data_input=name, data_kind="words" if pad == "text" else "quantity",
    )  # fmt: skip


def syllabus() -> str:
    """The course: every lesson with its objectives and how many kinds of problem check each."""
    rows = []
    for number, lesson in enumerate(LESSONS, 1):
        for index, objective in enumerate(lesson.objectives):
            mine = [t for t in TEMPLATES if t.objective == objective.name]
            levels = ", ".join(str(level) for level in sorted({t.level for t in mine}))
            problems = " kind of problem" if len(mine) == 1 else " kinds of problem"
            level = " \N{MIDDLE DOT} levels " if "," in levels else " \N{MIDDLE DOT} level "
            head = None
            if index == 0:
                link = tag("a", lesson.title, href=f"../../learn/{lesson.slug}/")
                head = tag("th", f"{number}. ", link, scope="rowgroup",
                           rowspan=len(lesson.objectives))  # fmt: skip
            # On a phone there are no columns: the words stand beside the numbers.
            cells = [tag("td", objective.says),
                     tag("td", str(len(mine)), class_="number", data_after=problems),
                     tag("td", levels, class_="number", data_before=level)]  # fmt: skip
            rows.append(tag("tr", head, cells))
    heads = ("Lesson", "Afterward the learner can", "Problems", "Levels")
    top = tag("tr", [tag("th", head, scope="col") for head in heads])
    table = tag("table", tag("thead", top), tag("tbody", rows), class_="syllabus")
    return text_of(
        tag("div", table, class_="scroll", tabindex=0, role="region", aria_label="Syllabus")
    )


def bank_size(what: str) -> str:
    """How many templates, objectives, lessons or kinds there are, as a number in prose."""
    kinds = {template.kind for template in TEMPLATES}
    sizes = {
        "templates": len(TEMPLATES),
        "objectives": len(LESSON_OF),
        "lessons": len(LESSONS),
        "kinds": len(kinds & set(KINDS)),
        "hours": round(len(LESSONS) * LESSON_HOURS),
    }
    return str(sizes[what])
