"""The hold-time card: the formula, the trade beside it, and the reason where they differ."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.cards.hold_time import CARD, SYSTEMS
from calculators.errors import Complaints
from calculators.evaluate import evaluate

# By hand: k r V / Q with k = 5: r in micron, V in L, Q in micron L/s gives seconds.
ROWS = [
    ({"system": "residential-split"}, 5 * 1 * 10 / 0.5),
    ({"system": "large-chiller"}, 5 * 1 * 3000 / 0.5),
    ({"system": "recovery-cylinder", "resolution": "5 micron"}, 5 * 5 * 27 / 0.5),
    ({"system": "other", "volume": "100 L", "leak_rate": "2 micron·L/s"}, 5 * 1 * 100 / 2),
    ({"volume": "20 L"}, 5 * 1 * 20 / 0.5),
]


@pytest.mark.parametrize(("entries", "seconds"), ROWS)
def test_hold_is_k_steps_of_the_gauge(entries, seconds):
    assert evaluate(CARD, entries).answer.outputs["hold_time"] == pytest.approx(seconds)


def test_the_trades_times_stand_beside():
    # Common practice: residential about 10 min, a cylinder 5 to 10, a large chiller hours.
    outputs = {key: evaluate(CARD, {"system": key}).answer.outputs for key in SYSTEMS}

    assert outputs["residential-split"]["least_practice"] == 600.0
    assert outputs["recovery-cylinder"]["least_practice"] == 300.0
    assert outputs["recovery-cylinder"]["most_practice"] == 600.0
    assert outputs["large-chiller"]["least_practice"] >= 3600.0


@pytest.mark.parametrize(
    ("entries", "reason"),
    [
        ({"system": "residential-split"}, "longer than this leak needs"),
        ({"system": "recovery-cylinder", "resolution": "5 micron"}, "too short to show this leak"),
        ({"system": "large-chiller"}, "The two agree"),
        ({"system": "other", "volume": "5 L"}, "for comparison"),
    ],
)
def test_the_reason_is_said_where_they_differ(entries, reason):
    result = evaluate(CARD, entries)

    assert reason in " ".join(map(result.say, result.answer.notes))


def test_a_volume_is_needed_where_no_system_is_named():
    with pytest.raises(Complaints, match="Type the volume") as complaint:
        evaluate(CARD, {"system": "other"})

    assert dict(complaint.value.items).keys() == {"volume"}


@given(volume=st.floats(0.1, 1e4), steps=st.floats(0.1, 100.0), leak=st.floats(0.01, 100.0))
def test_hold_scales_as_it_should(volume, steps, leak):
    def hold(volume, steps, leak):
        entries = {"system": "other", "volume": f"{volume!r} L", "resolution": f"{steps!r} micron",
                   "leak_rate": f"{leak!r} micron·L/s"}  # fmt: skip
        return evaluate(CARD, entries).answer.outputs["hold_time"]

    once = hold(volume, steps, leak)
    assert hold(2.0 * volume, steps, leak) == pytest.approx(2.0 * once)
    assert hold(volume, 2.0 * steps, leak) == pytest.approx(2.0 * once)
    assert hold(volume, steps, 2.0 * leak) == pytest.approx(0.5 * once)
