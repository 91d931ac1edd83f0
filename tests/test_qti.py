"""QTI packages: whole, well-formed, as the specification structures them, the same every time.

The schema itself is in no package registry, so this checks the structure of IMS QTI 2.1
(information model, 2012) by hand: the elements and attributes an item, a test and a manifest
must have, and that every reference leads somewhere. An independent reader upgrades the package
to QTI 3.0, and tests/browser/test_qti_player.py answers it in an independent player.
"""

import io
import zipfile
from xml.etree import ElementTree

import pytest

from calculators.outputs import qti
from calculators.teaching.assignment import Assignment
from calculators.teaching.bank import LESSON_OF
from calculators.teaching.question import Choice, Numeric

ALL = Assignment(seed="4", problems=60, variants=2, objectives=tuple(LESSON_OF))
QTI, PACKAGE = f"{{{qti.QTI}}}", f"{{{qti.PACKAGE}}}"
# The order of an item's children, section 3 of the information model.
ORDER = ["responseDeclaration", "outcomeDeclaration", "itemBody", "responseProcessing",
         "modalFeedback"]  # fmt: skip


@pytest.fixture(scope="module")
def archive():
    return zipfile.ZipFile(io.BytesIO(qti.package(ALL, 1)))


@pytest.fixture(scope="module")
def items(archive):
    names = [name for name in archive.namelist() if name.startswith("items/") and "xml" in name]
    return [ElementTree.fromstring(archive.read(name)) for name in sorted(names)]


def test_the_manifest_lists_every_file_once(archive):
    manifest = ElementTree.fromstring(archive.read("imsmanifest.xml"))
    listed = [each.get("href") for each in manifest.iter(f"{PACKAGE}file")]

    assert manifest.tag == f"{PACKAGE}manifest"
    assert sorted(listed) == sorted(set(archive.namelist()) - {"imsmanifest.xml"})
    types = {each.get("type") for each in manifest.iter(f"{PACKAGE}resource")}
    assert types == {"imsqti_test_xmlv2p1", "imsqti_item_xmlv2p1"}
    known = {each.get("identifier") for each in manifest.iter(f"{PACKAGE}resource")}
    asked = {each.get("identifierref") for each in manifest.iter(f"{PACKAGE}dependency")}
    assert asked < known


def test_the_test_leads_to_every_item(archive):
    root = ElementTree.fromstring(archive.read("test.xml"))
    refs = [each.get("href") for each in root.iter(f"{QTI}assessmentItemRef")]

    assert root.tag == f"{QTI}assessmentTest"
    assert len(refs) == ALL.problems
    assert set(refs) <= set(archive.namelist())


def test_items_are_structured_as_the_standard_says(items):
    assert len(items) == ALL.problems
    for root in items:
        assert root.tag == f"{QTI}assessmentItem"
        assert {"identifier", "title", "adaptive", "timeDependent"} <= set(root.keys())
        tags = [child.tag.removeprefix(QTI) for child in root]
        assert [ORDER.index(tag) for tag in tags] == sorted(ORDER.index(tag) for tag in tags)
        assert tags.count("responseDeclaration") == tags.count("itemBody") == 1
        interactions = [e for e in root.iter() if e.tag.endswith("Interaction")]
        assert [each.get("responseIdentifier") for each in interactions] == ["RESPONSE"]
        declared = {each.get("identifier") for each in root.iter(f"{QTI}outcomeDeclaration")}
        assert {e.get("identifier") for e in root.iter(f"{QTI}setOutcomeValue")} <= declared


def test_every_feedback_that_is_earned_is_there(items):
    for root in items:
        earned = {
            each[0].text for each in root.iter(f"{QTI}setOutcomeValue")
            if each.get("identifier") == "FEEDBACK"
        }  # fmt: skip
        said = {each.get("identifier"): each.text for each in root.iter(f"{QTI}modalFeedback")}
        assert earned == set(said)
        assert all(said.values())


def test_numbers_have_bounds_and_no_tolerance(items):
    for root, problem in zip(items, ALL.variant(1), strict=True):
        assert not list(root.iter(f"{QTI}equal"))
        if isinstance(problem.question, Numeric):
            low, high = (float(next(root.iter(f"{QTI}{w}"))[1].text) for w in ("gte", "lte"))
            assert low < float(next(root.iter(f"{QTI}value")).text) < high
        if isinstance(problem.question, Choice):
            right = next(root.iter(f"{QTI}value")).text
            assert right in {each.get("identifier") for each in root.iter(f"{QTI}simpleChoice")}


def test_drawings_are_files_of_the_package(archive, items):
    sources = [e.get("src") for root in items for e in root.iter(f"{QTI}img")]

    assert sources
    assert {f"items/{name}" for name in sources} <= set(archive.namelist())
    for root in items:
        assert all(each.get("alt") for each in root.iter(f"{QTI}img"))


def test_a_package_holds_no_date_and_is_the_same_every_time(archive):
    assert {info.date_time for info in archive.infolist()} == {qti.EARLIEST}
    assert qti.package(ALL, 2) == qti.package(ALL, 2)
    assert qti.package(ALL, 1) != qti.package(ALL, 2)


@pytest.mark.native
def test_an_independent_reader_upgrades_it(tmp_path):
    qti_convert = pytest.importorskip("qti_convert", reason="brought by the test set-up")
    old, new = tmp_path / "old.zip", tmp_path / "new.zip"
    old.write_bytes(qti.package(ALL, 1))

    qti_convert.upgrade_package(old, new)

    with zipfile.ZipFile(new) as archive:
        items = [name for name in archive.namelist() if name.startswith("items/problem-")]
        first = next(name for name in sorted(items) if name.endswith(".xml"))
        assert b"qti-assessment-item" in archive.read(first)
        assert sum(name.endswith(".xml") for name in items) == ALL.problems
