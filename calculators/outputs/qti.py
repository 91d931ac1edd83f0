"""A variant as a QTI 2.1 content package (1EdTech), which a learning-management system imports.

A number is right between two bounds, written with ``gte`` and ``lte``: players
differ in what they make of the tolerance of ``equal``, and none needs it here.
Each usual wrong answer brings the feedback it earns. A package holds no date,
so the same variant is the same file, byte for byte.
"""

import io
import zipfile
from collections.abc import Iterable, Mapping
from xml.etree import ElementTree

from calculators import units, wording
from calculators.outputs.element import Element, tag
from calculators.outputs.problem import told
from calculators.outputs.question import asks_text, solution_text
from calculators.outputs.sheet import accepted, log_table
from calculators.teaching.asking import answered
from calculators.teaching.assignment import Assignment
from calculators.teaching.marking import (
    item_text,
    option_text,
    right_option,
    right_order,
    shown_options,
    shown_order,
)
from calculators.teaching.problem import Problem
from calculators.teaching.question import Choice, Numeric, Order, Question

QTI = "http://www.imsglobal.org/xsd/imsqti_v2p1"
SCHEMA = "http://www.imsglobal.org/xsd/qti/qtiv2p1/imsqti_v2p1.xsd"
PACKAGE = "http://www.imsglobal.org/xsd/imscp_v1p1"
INSTANCE = "http://www.w3.org/2001/XMLSchema-instance"
EARLIEST = (1980, 1, 1, 0, 0, 0)  # the first date that a zip can hold


def package(assignment: Assignment, number: int) -> bytes:
    """One variant as a package: a test and its items.

    Parameters
    ----------
    assignment : Assignment
        What is set.
    number : int
        Which variant, from 1.

    Returns
    -------
    bytes
        A zip with imsmanifest.xml, test.xml, items and images.
    """
    problems = assignment.variant(number)
    files: dict[str, bytes] = {}
    items: list[tuple[str, list[str]]] = []
    for place, problem in enumerate(problems, 1):
        name = f"problem-{place:02}"
        images: dict[str, bytes] = {}
        root = item(problem, name, place, images, system=assignment.system)
        files |= {f"items/{path}": data for path, data in images.items()}
        files[f"items/{name}.xml"] = _xml(root)
        items.append((name, [f"items/{path}" for path in images]))
    identity = f"set-{assignment.seed}-variant-{number}"
    title = f"{assignment.title}, variant {number}"
    files["test.xml"] = _xml(_test(identity, title, [name for name, _ in items]))
    files["imsmanifest.xml"] = _xml(_manifest(identity, items))
    return zipped(files)


def zipped(files: Mapping[str, bytes]) -> bytes:
    """Files in one zip: no dates, no compression, by name; so alike on every machine."""
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w") as archive:
        for name in sorted(files):
            about = zipfile.ZipInfo(name, EARLIEST)
            about.compress_type = zipfile.ZIP_STORED
            about.external_attr = 0o644 << 16
            archive.writestr(about, files[name])
    return out.getvalue()


# --- items -----------------------------------------------------------------------


def item(
    problem: Problem, name: str, place: int, images: dict[str, bytes], *, system: str = "us"
) -> Element:
    """One problem as an item; its drawing is put among the images."""
    question = problem.question
    if isinstance(question, Numeric):
        declared, asked, branches = _number(question, system)
    elif isinstance(question, Choice):
        declared, asked, branches = _choice(question, system)
    else:
        declared, asked, branches = _order(question, system)
    feedback = [
        ("right", f"Right. {solution_text(question, system=system)}"),
        *branches.said,
        ("wrong", branches.otherwise),
    ]
    return tag(
        "assessmentItem",
        declared,
        _outcome("SCORE", "float", "0"),
        _outcome("FEEDBACK", "identifier", "none"),
        tag("itemBody", _body(problem, name, images, system), asked),
        tag("responseProcessing", tag("responseCondition", branches.all())),
        [_feedback(which, text) for which, text in feedback],
        **_schema(),
        identifier=name,
        title=f"Problem {place}",
        adaptive="false",
        timeDependent="false",
    )


class _Branches:
    """What an answer earns: conditions tried in turn, each with its feedback."""

    def __init__(self, right: Element, otherwise: str) -> None:
        self.right, self.otherwise = right, otherwise
        self.wrong: list[tuple[str, Element]] = []
        self.said: list[tuple[str, str]] = []

    def add(self, name: str, condition: Element, text: str) -> None:
        """Add a known wrong answer."""
        self.wrong.append((name, condition))
        self.said.append((name, text))

    def all(self) -> list[Element]:
        """Give the branches of a responseCondition."""
        return [
            tag("responseIf", self.right, _set("SCORE", "float", "1"), _earn("right")),
            *(
                tag("responseElseIf", c, _set("SCORE", "float", "0"), _earn(n))
                for n, c in self.wrong
            ),
            tag("responseElse", _set("SCORE", "float", "0"), _earn("wrong")),
        ]


def _number(question: Numeric, system: str) -> tuple[Element, Element, _Branches]:
    low, high, unit = accepted(question, system=system)
    evaluation = answered(question.asked, system=system)
    right = float(evaluation.answer.outputs[question.asked.output])  # type: ignore[arg-type]
    branches = _Branches(_between(low, high), _not_yet(question, system))
    for index, road in enumerate(question.wrong_roads, 1):
        where = road.method(evaluation, question.asked.output)
        if where is None:
            continue
        around = question.absolute or question.relative * abs(where)
        ends = sorted(units.from_si(where + way * around, unit) for way in (-1.0, 1.0))
        says = f"Not yet. {evaluation.say(road.says)}"
        branches.add(f"road-{index}", _between(*ends), says)
    shown = wording.with_unit("", unit).strip()
    blank = tag("textEntryInteraction", responseIdentifier="RESPONSE", expectedLength="12")
    asked = tag("p", asks_text(question, question.asks, system=system))
    wanted = f" {shown}" if shown else ""
    line = tag("p", blank, wanted)
    value = f"{units.from_si(right, unit):.6g}"
    return _response("float", "single", [value]), tag("div", asked, line), branches


def _between(low: float, high: float) -> Element:
    """The answer is a number from ``low`` to ``high``."""
    return tag(
        "and",
        tag("not", tag("isNull", _given())),
        tag("gte", _given(), _plain("float", f"{low:.9g}")),
        tag("lte", _given(), _plain("float", f"{high:.9g}")),
    )


def _choice(question: Choice, system: str) -> tuple[Element, Element, _Branches]:
    right, options = right_option(question), shown_options(question)
    branches = _Branches(_is_correct(), _not_yet(question, system))
    for option in options:
        if option is not right:
            condition = tag("match", _given(), _plain("identifier", option.key))
            says = option_text(question, option, option.says, system=system)
            branches.add(f"option-{option.key}", condition, f"Not that. {says}")
    lines = [
        tag(
            "simpleChoice",
            option_text(question, o, o.text, system=system),
            identifier=o.key,
        )
        for o in options
    ]
    prompt = tag("prompt", asks_text(question, question.asks, system=system))
    asked = tag(
        "choiceInteraction", prompt, lines, responseIdentifier="RESPONSE", shuffle="false",
        maxChoices="1",
    )  # fmt: skip
    return _response("identifier", "single", [right.key]), asked, branches


def _order(question: Order, system: str) -> tuple[Element, Element, _Branches]:
    texts = {each.key: item_text(each, system=system) for each in question.items}
    lines = [tag("simpleChoice", texts[name], identifier=name) for name in shown_order(question)]
    asked = tag(
        "orderInteraction", tag("prompt", question.asks), lines, responseIdentifier="RESPONSE",
        shuffle="false",
    )  # fmt: skip
    branches = _Branches(_is_correct(), _not_yet(question, system))
    return _response("identifier", "ordered", right_order(question)), asked, branches


def _not_yet(question: Question, system: str) -> str:
    return f"Not yet. {asks_text(question, question.hint, system=system)}".strip()


def _body(problem: Problem, name: str, images: dict[str, bytes], system: str) -> list[Element]:
    """What is told, with the drawing as an image of its own."""
    parts = []
    for part in told(problem, system=system):
        drawing = part.find("svg")
        if drawing is None:
            parts.append(tag("p", "".join(part.itertext())))
            continue
        drawing.set("xmlns", "http://www.w3.org/2000/svg")
        drawing.set("font-family", "sans-serif")
        path = f"{name}.svg"
        images[path] = _xml(drawing)
        width, height = drawing.get("viewBox", "0 0 440 320").split()[2:]
        image = tag("img", src=path, alt=drawing.get("aria-label"), width=width, height=height)
        parts.append(tag("p", image))
    log = log_table(problem)
    if log is not None:
        parts.append(log[0])
    return parts


# --- the parts of QTI ----------------------------------------------------------------


def _schema() -> dict[str, str]:
    return {"xmlns": QTI, "xmlns:xsi": INSTANCE, "xsi:schemaLocation": f"{QTI} {SCHEMA}"}


def _response(kind: str, cardinality: str, values: Iterable[str]) -> Element:
    correct = tag("correctResponse", [tag("value", value) for value in values])
    return tag(
        "responseDeclaration", correct, identifier="RESPONSE", cardinality=cardinality,
        baseType=kind,
    )  # fmt: skip


def _outcome(name: str, kind: str, value: str) -> Element:
    default = tag("defaultValue", tag("value", value))
    return tag("outcomeDeclaration", default, identifier=name, cardinality="single", baseType=kind)


def _given() -> Element:
    return tag("variable", identifier="RESPONSE")


def _is_correct() -> Element:
    return tag("match", _given(), tag("correct", identifier="RESPONSE"))


def _plain(kind: str, value: str) -> Element:
    return tag("baseValue", value, baseType=kind)


def _set(name: str, kind: str, value: str) -> Element:
    return tag("setOutcomeValue", _plain(kind, value), identifier=name)


def _earn(name: str) -> Element:
    return _set("FEEDBACK", "identifier", name)


def _feedback(name: str, text: str) -> Element:
    return tag(
        "modalFeedback", text, outcomeIdentifier="FEEDBACK", identifier=name, showHide="show"
    )


def _test(identity: str, title: str, names: list[str]) -> Element:
    refs = [tag("assessmentItemRef", identifier=n, href=f"items/{n}.xml") for n in names]
    section = tag(
        "assessmentSection", refs, identifier="problems", title="Problems", visible="true"
    )
    part = tag(
        "testPart", section, identifier="part-1", navigationMode="nonlinear",
        submissionMode="individual",
    )  # fmt: skip
    total = tag("sum", tag("testVariables", variableIdentifier="SCORE"))
    processing = tag("outcomeProcessing", tag("setOutcomeValue", total, identifier="SCORE"))
    return tag(
        "assessmentTest", _outcome("SCORE", "float", "0"), part, processing, **_schema(),
        identifier=identity, title=title,
    )  # fmt: skip


def _manifest(identity: str, items: list[tuple[str, list[str]]]) -> Element:
    about = tag("metadata", tag("schema", "QTIv2.1 Package"), tag("schemaversion", "1.0.0"))
    depends = [tag("dependency", identifierref=f"resource-{name}") for name, _ in items]
    test = tag(
        "resource", tag("file", href="test.xml"), depends, identifier="resource-test",
        type="imsqti_test_xmlv2p1", href="test.xml",
    )  # fmt: skip
    resources = [
        tag(
            "resource",
            [tag("file", href=path) for path in (f"items/{name}.xml", *images)],
            identifier=f"resource-{name}",
            type="imsqti_item_xmlv2p1",
            href=f"items/{name}.xml",
        )
        for name, images in items
    ]
    return tag(
        "manifest", about, tag("organizations"), tag("resources", test, resources),
        xmlns=PACKAGE, identifier=f"manifest-{identity}",
    )  # fmt: skip


def _xml(root: Element) -> bytes:
    return bytes(ElementTree.tostring(root, encoding="utf-8", xml_declaration=True))
