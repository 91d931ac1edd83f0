"""Assignments: variants that differ, sheets, keys, tables, and the command that writes them."""

import csv
import io
import json
import re
import sys
import zipfile

import pytest

from calculators.errors import Complaints
from calculators.outputs import answer_key, assignment_command, pdf, sheet
from calculators.outputs.browser import reply
from calculators.outputs.cli import main
from calculators.outputs.element import text_of
from calculators.teaching.assignment import Assignment, read
from calculators.teaching.bank import LESSON_OF
from calculators.teaching.marking import mark, right_option, right_order, shown_options, shown_order
from calculators.teaching.question import Choice, Numeric

TWELVE = Assignment(seed="7", problems=12, variants=30)


# --- what is set ------------------------------------------------------------------------


def test_all_variants_ask_the_same_kinds_with_other_numbers():
    told = [TWELVE.variant(number) for number in range(1, 31)]

    assert len({tuple(p.template.name for p in variant) for variant in told}) == 1
    assert len({tuple(p.signature for p in variant) for variant in told}) == 30


def test_a_set_is_spread_over_the_lessons():
    lessons = [LESSON_OF[template.objective].slug for template in TWELVE.templates]

    assert len(set(lessons)) == 12


def test_more_problems_than_kinds_ask_some_twice_with_other_numbers():
    few = Assignment(seed="3", problems=6, objectives=("triple-point",))
    problems = few.variant(1)

    assert len(problems) == 6
    assert len({(p.template.name, p.seed) for p in problems}) == 6


def test_a_variant_does_not_hang_on_how_many_there_are():
    alone = Assignment(seed="7", problems=12, variants=1)

    assert [p.signature for p in alone.variant(9)] == [p.signature for p in TWELVE.variant(9)]


def test_reading_takes_lessons_objectives_levels_and_names():
    one = read(
        {"seed": "fall-26", "problems": "5", "objectives": "water-boils-cold, micron-convert",
         "levels": "1,2", "names": "Ada\n\n  Bo  Li \n", "system": "si"}
    )  # fmt: skip

    assert one.count == 2
    assert one.names == ("Ada", "Bo Li")
    assert "micron-convert" in one.objectives and "warm-dries" in one.objectives
    assert {template.level for template in one.templates} <= {1, 2}
    assert one.system == "si"


@pytest.mark.parametrize(
    ("given", "names"),
    [
        ({"problems": "0"}, ["problems"]),
        ({"problems": "many", "variants": "-1"}, ["problems", "variants"]),
        ({"variants": "1e3"}, ["variants"]),
        ({"seed": "a b"}, ["seed"]),
        ({"seed": "x" * 50}, ["seed"]),
        ({"objectives": "nonsense"}, ["objectives"]),
        ({"levels": "4"}, ["levels"]),
        ({"names": "x" * 90}, ["names"]),
        ({"title": "x" * 90}, ["title"]),
        ({"objectives": "triple-point", "levels": "3"}, ["levels"]),
    ],
)
def test_what_cannot_be_used_is_one_sentence_each(given, names):
    with pytest.raises(Complaints) as caught:
        read(given)

    assert [name for name, _ in caught.value.items] == names
    assert all(re.search(r"[.]$", text) for _, text in caught.value.items)


# --- sheets and keys ------------------------------------------------------------------------


def test_the_key_answers_what_the_sheet_asks():
    for number in (1, 17):
        for problem in TWELVE.variant(number):
            said = sheet.short_answer(problem)
            question = problem.question
            if isinstance(question, Numeric):
                typed = said.split(" (")[0].replace("−", "-")
                assert mark(question, typed).correct is True, said
            elif isinstance(question, Choice):
                option = shown_options(question)[sheet.LETTERS.index(said)]
                assert option is right_option(question)
            else:
                keys = [shown_order(question)[sheet.LETTERS.index(x)] for x in said.split(", ")]
                assert tuple(keys) == right_order(question)


def test_a_sheet_gives_nothing_away_and_a_key_shows_the_working():
    asked, key = text_of(sheet.sheet(TWELVE, 1)), text_of(sheet.key(TWELVE, 1))
    number = next(p for p in TWELVE.variant(1) if isinstance(p.question, Numeric))

    assert asked.count('class="situation"') == 12
    assert sheet.short_answer(number) not in re.sub(r"<[^>]*>", " ", asked)
    assert "work" not in re.findall(r'class="(\w+)"', asked)
    assert key.count('class="key-answer"') == 12
    assert '<ol class="work"><li>' in key
    assert "style=" not in asked + key


def test_a_document_needs_nothing_else():
    page = sheet.document("Sets & sheets", sheet.sheet(TWELVE, 1))

    assert page.startswith("<!doctype html>")
    assert "<title>Sets &amp; sheets</title>" in page
    assert not re.search(r"(src|href)=|@import|url\(", page)


def test_a_name_is_printed_as_text():
    named = Assignment(seed="1", problems=1, names=("<b>Ada</b>",))

    assert "&lt;b&gt;Ada&lt;/b&gt;" in text_of(sheet.sheet(named, 1))


def test_the_table_has_a_row_for_each_problem():
    text = answer_key.table(answer_key.rows(TWELVE, 1))
    rows = list(csv.DictReader(io.StringIO(text)))

    assert len(rows) == 12
    assert all(row["answer"] and row["template"] and row["seed"] for row in rows)
    for row in rows:
        if row["lowest"]:
            assert float(row["lowest"]) < float(row["highest"])


def test_a_cell_that_a_spreadsheet_would_run_is_quoted_off():
    assert answer_key.table(iter([["=1+1", "-4 °F"]]), head=False) == "'=1+1,-4 °F\r\n"


# --- the worker -------------------------------------------------------------------------------


def ask(**question):
    return json.loads(reply(json.dumps({"do": "assignment", **question})))


def test_the_worker_gives_a_set_and_its_sheets():
    given = {"seed": "7", "problems": "12", "variants": "30"}
    problems = ask(give="set", assignment=given, variant=4)["problems"]
    made = ask(give="sheets", assignment=given, variant=4)

    assert problems == [
        {"template": p.template.name, "seed": p.seed} for p in TWELVE.variant(4)
    ]  # fmt: skip
    assert made["sheet"] == text_of(sheet.sheet(TWELVE, 4))
    assert made["csv"].count("\r\n") == 12


def test_the_worker_refuses_a_variant_that_is_not_there():
    given = ask(give="set", assignment={"seed": "7", "variants": "3"}, variant=4)

    assert given["ok"] is False
    assert "1 to 3" in given["complaints"][0]["text"]


# --- the shell ----------------------------------------------------------------------------------


def run(capsys, *words):
    status = main(["assignment", *words])
    out, err = capsys.readouterr()
    return status, out, err


@pytest.mark.native
def test_the_shell_writes_everything(capsys, tmp_path):
    status, out, err = run(
        capsys, "--seed", "7", "--problems", "4", "--variants", "3", "--formats", "html,csv,qti",
        "--out", str(tmp_path / "class"),
    )  # fmt: skip

    assert status == 0
    assert "3 variants of 4 problems" in out
    assert "3 of 3 variants" in err
    names = sorted(path.relative_to(tmp_path).as_posix() for path in tmp_path.rglob("*.*"))
    assert names == [
        "class/key.csv",
        *(f"class/keys/variant-{n}.html" for n in (1, 2, 3)),
        *(f"class/qti/variant-{n}.zip" for n in (1, 2, 3)),
        *(f"class/sheets/variant-{n}.html" for n in (1, 2, 3)),
    ]
    rows = (tmp_path / "class" / "key.csv").read_text(encoding="utf-8-sig")
    assert len(list(csv.reader(io.StringIO(rows)))) == 13


@pytest.mark.native
def test_twice_is_the_same_byte_for_byte(capsys, tmp_path):
    words = ["--seed", "9", "--problems", "3", "--variants", "2", "--formats", "html,csv,qti"]
    for name in ("one", "two"):
        assert run(capsys, *words, "--out", str(tmp_path / name))[0] == 0

    one, two = (
        {p.relative_to(tmp_path / name): p.read_bytes() for p in (tmp_path / name).rglob("*.*")}
        for name in ("one", "two")
    )
    assert one == two


@pytest.mark.native
def test_a_class_list_names_the_sheets(capsys, tmp_path):
    (tmp_path / "names.txt").write_text("Ada\nBo Li\n", encoding="utf-8")
    status, _, _ = run(
        capsys, "--names", str(tmp_path / "names.txt"), "--problems", "2", "--formats", "html",
        "--out", str(tmp_path / "out"),
    )  # fmt: skip

    assert status == 0
    assert "Bo Li" in (tmp_path / "out" / "sheets" / "variant-2.html").read_text(encoding="utf-8")


@pytest.mark.native
def test_without_a_browser_it_says_so_and_does_the_rest(capsys, tmp_path, monkeypatch):
    monkeypatch.setattr(pdf, "find_browser", lambda: None)
    status, out, _ = run(
        capsys, "--problems", "1", "--variants", "1", "--out", str(tmp_path / "out")
    )

    assert status == 0
    assert "No PDF" in out
    assert (tmp_path / "out" / "sheets" / "variant-1.html").exists()


@pytest.mark.native
def test_with_a_browser_it_prints(capsys, tmp_path):
    if not pdf.find_browser():
        pytest.skip("no Chromium on the PATH")
    status, _, _ = run(
        capsys, "--problems", "2", "--variants", "2", "--formats", "pdf", "--out", str(tmp_path)
    )

    assert status == 0
    assert (tmp_path / "sheets-1-2.pdf").read_bytes().startswith(b"%PDF-")
    assert (tmp_path / "keys-1-2.pdf").stat().st_size > 10_000
    assert [path.suffix for path in tmp_path.iterdir()] == [".pdf", ".pdf"]


@pytest.mark.native
@pytest.mark.parametrize(
    "words",
    [
        ("--problems", "many"),
        ("--variants", "0"),
        ("--formats", "docx"),
        ("--names", "no-such-file.txt"),
        ("--objectives", "nonsense"),
        ("--levels", "9"),
    ],
)
def test_bad_input_is_one_line_and_status_2(capsys, tmp_path, words):
    status, out, err = run(capsys, *words, "--out", str(tmp_path / "out"))

    assert status == 2
    assert out == ""
    assert len(err.strip().splitlines()) == 1


@pytest.mark.native
def test_a_folder_that_is_a_file_is_refused(capsys, tmp_path):
    (tmp_path / "out").write_text("")

    status, _, err = run(capsys, "--out", str(tmp_path / "out"))

    assert status == 2
    assert "is a file" in err


def test_the_bar_ends_with_a_line(capsys, monkeypatch):
    monkeypatch.setattr(sys.stderr, "isatty", lambda: True, raising=False)
    bar = assignment_command._Progress(2)
    bar.show(1)
    bar.show(2)

    err = capsys.readouterr().err
    assert err.count("\r") == 2
    assert err.endswith("\n")


def test_packed_files_come_back():
    given = {"do": "pack", "files": {"b.txt": "Yg==", "a.txt": "YQ=="}}
    made = json.loads(reply(json.dumps(given)))["zip"]
    from base64 import b64decode

    with zipfile.ZipFile(io.BytesIO(b64decode(made))) as archive:
        assert archive.namelist() == ["a.txt", "b.txt"]
        assert archive.read("a.txt") == b"a"
