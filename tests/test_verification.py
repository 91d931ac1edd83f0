"""Every published value and every reference library, against ours."""

import pytest
from published_values import SUBJECTS

from calculators.sources import BIBLIOGRAPHY

PUBLISHED = [(subject, check) for subject in SUBJECTS for check in subject.published]
LIBRARIES = [(subject, check) for subject in SUBJECTS for check in subject.libraries]


def name(value):
    return getattr(value, "title", None) or getattr(value, "what", None)


@pytest.mark.parametrize(("subject", "check"), PUBLISHED, ids=name)
def test_ours_is_the_published_value(subject, check):
    assert check.holds(), f"{check.what}: printed {check.printed}, ours {check.ours()} {check.unit}"


@pytest.mark.parametrize(("subject", "check"), LIBRARIES, ids=name)
def test_ours_is_the_librarys_value(subject, check):
    library = check.library() or pytest.skip(f"{check.module} is not installed")

    assert check.holds(library), f"{check.what}: {check.theirs(library)}, ours {check.ours()}"


@pytest.mark.parametrize(("subject", "check"), PUBLISHED, ids=name)
def test_a_wider_tolerance_is_explained_and_a_key_exists(subject, check):
    assert (check.within is None) == (check.because == "")
    # A key of the bibliography is written in capitals; a source without one is named in words.
    assert check.source in BIBLIOGRAPHY or check.source.upper() != check.source
