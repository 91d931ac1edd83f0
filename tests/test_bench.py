"""The practice bench: its cases, its physics against scipy, its marking by what was seen."""

import json

import pytest

from calculators.cards import BY_SLUG
from calculators.errors import CalculatorError, OutOfRange
from calculators.evaluate import evaluate
from calculators.outputs import bench as page
from calculators.outputs.browser import reply
from calculators.physics import evacuation
from calculators.physics.constants import MICRON
from calculators.physics.evacuation import SCALE, Conditions
from calculators.teaching import bench_marking, bench_session
from calculators.teaching.bench_actions import Action, after, as_found, at_once, setting
from calculators.teaching.bench_case import LARGEST, case_of
from calculators.teaching.bench_faults import BY_FAULT, FAULTS
from calculators.teaching.bench_session import TICK

NUMBERS = {
    fault.key: [n for n in range(1, 300) if case_of(n).fault == fault.key] for fault in FAULTS
}
ON = Action(0, "pump", "on")
# How somebody who knows the work finds each fault: ticks of two seconds.
FINDS = {
    "none": [ON, Action(600, "valve", "shut")],
    "leak-system": [ON, Action(300, "valve", "shut")],
    "leak-rig": [
        ON, Action(300, "valve", "shut"), Action(301, "pump", "off"), Action(302, "gauge", "pump"),
    ],
    "wet": [ON, Action(200, "valve", "shut")],
    "frozen": [ON, Action(300, "heat", "on")],
    "pump-oil": [
        ON, Action(300, "valve", "shut"), Action(302, "gauge", "pump"), Action(360, "pump", "off"),
        Action(361, "oil", "new"), Action(362, "pump", "on"),
    ],
    "oil-gas": [
        ON, Action(200, "valve", "shut"), Action(500, "valve", "open"),
        Action(650, "valve", "shut"),
    ],
    "ballast": [ON, Action(600, "ballast", "shut")],
    "core-in": [ON, Action(50, "cores", "out")],
    "gauge-dirty": [ON, Action(300, "second", "read")],
    "gauge-at-pump": [ON, Action(60, "gauge", "system")],
}  # fmt: skip
LENGTH = 950


def played(number, actions, ticks=LENGTH):
    case = case_of(number)
    moment, pressures = bench_session.run(case, bench_session.begin(case), actions, ticks)
    readings = [760_000.0, *(bench_session.shown(p, "micron") for p in pressures)]
    return case, moment, readings


def marked(number, actions, named, ticks=LENGTH):
    case, moment, readings = played(number, actions, ticks)
    return bench_marking.mark(case, actions, readings, named, froze=moment.froze)


# --- cases -----------------------------------------------------------------------


def test_every_fault_comes_up_and_none_of_them_rarely():
    counts = {key: len(numbers) for key, numbers in NUMBERS.items()}

    assert set(counts) == set(FINDS)
    assert min(counts.values()) > 12, counts


@pytest.mark.parametrize("number", [0, LARGEST + 1])
def test_there_is_no_case_outside_the_numbers(number):
    with pytest.raises(OutOfRange, match="numbered from 1 to 9,999"):
        case_of(number)


def test_the_words_of_a_case_do_not_tell_its_fault():
    # What a learner is told is the same kind of sentence for every fault.
    for fault, numbers in NUMBERS.items():
        says = " ".join(page.situation(case_of(numbers[0]), "us"))
        assert BY_FAULT[fault].name.lower() not in says.lower()
        known = bench_session.settings_known(case_of(numbers[0]), [])
        assert not {"ballast", "gauge", "cores"} & set(known)


@pytest.mark.parametrize(
    "seen",
    ["pump", "hose", "place", lambda case: case.plant.ambient, lambda case: case.plant.volume],
)
def test_nothing_a_learner_sees_at_first_gives_the_fault_away(seen):
    faults = {}
    for number in range(1, 1500):
        case = case_of(number)
        value = getattr(case, seen) if isinstance(seen, str) else seen(case)
        faults.setdefault(value, set()).add(case.fault)

    assert all(len(each) >= 5 for each in faults.values()), faults


# --- the physics, as it runs on the bench --------------------------------------------


@pytest.mark.filterwarnings("ignore:overflow encountered:RuntimeWarning")
@pytest.mark.parametrize("seed", range(20))
def test_a_session_agrees_with_scipys_radau(seed):
    # Source: scipy's solve_ivp, method Radau, an independent implementation, from the same
    # moment on through the same actions.
    integrate = pytest.importorskip("scipy.integrate")
    fault = list(FINDS)[seed % len(FINDS)]
    number = NUMBERS[fault][seed // len(FINDS)]
    actions, ticks = FINDS[fault], 700
    case, moment, _ = played(number, actions, ticks)

    state, now = bench_session.begin(case).state, as_found(case)
    edges = [*actions, None]
    for action, following in zip(actions, edges[1:], strict=True):
        state = at_once(case, now, action, state)
        now = after(now, action)
        span = ((following.tick if following else ticks) - action.tick) * TICK
        set_to = setting(case, now)
        found = integrate.solve_ivp(
            lambda t, y, set_to=set_to: evacuation.rates(case.plant, set_to, list(y)),
            (0, span), list(state), method="Radau", rtol=1e-6, atol=[1e-5 * s for s in SCALE],
        )  # fmt: skip
        assert found.success
        state = Conditions(*found.y[:, -1])

    assert moment.state.pressure == pytest.approx(state.pressure, rel=0.01, abs=0.05)
    assert moment.state.gauge == pytest.approx(state.gauge, rel=0.01, abs=0.05)
    assert moment.state.rig == pytest.approx(state.rig, rel=0.01, abs=0.05)
    assert moment.state.water == pytest.approx(state.water, rel=0.01, abs=2e-6)
    assert moment.state.oil == pytest.approx(state.oil, rel=0.01, abs=0.05)


def test_a_session_cut_anywhere_is_the_same_to_the_last_digit():
    number, actions = NUMBERS["frozen"][0], FINDS["frozen"]
    case, whole, readings = played(number, actions, 400)

    moment, pieces = bench_session.begin(case), [760_000.0]
    for ticks in (1, 7, 142, 151, 99):
        kept = json.loads(json.dumps(moment.as_data()))
        moment, part = bench_session.run(case, bench_session.moment_of(kept), actions, ticks)
        pieces += [bench_session.shown(p, "micron") for p in part]

    assert pieces == readings
    assert moment == whole


def test_with_the_pump_off_and_the_valve_open_the_rig_leaks_into_the_system():
    number = NUMBERS["leak-rig"][0]
    case = case_of(number)
    actions = [ON, Action(300, "pump", "off")]
    _, before, _ = played(number, actions, 301)
    _, end, _ = played(number, actions, 331)

    rise = (end.state.pressure - before.state.pressure) / (30 * TICK)

    # Balance: all that leaks in stands in the volume.
    assert rise == pytest.approx((case.plant.rig_leak + case.plant.leak) / case.plant.volume, 0.02)


def test_nitrogen_stops_at_one_atmosphere():
    actions = [ON, Action(100, "valve", "shut"), Action(101, "nitrogen", "open")]
    _, end, _ = played(NUMBERS["none"][0], actions, 400)

    assert end.state.pressure == pytest.approx(101_325.0, rel=0.01)


def test_a_hose_full_of_air_spreads_into_the_system_when_the_valve_opens():
    # Boyle: 0.2 L at one atmosphere into the system's volume.
    case = case_of(NUMBERS["none"][0])
    state = bench_session.begin(case).state._replace(air=50.0, vapor=0.0, rig=101_325.0)
    shut = after(as_found(case), Action(0, "valve", "shut"))

    mixed = at_once(case, shut, Action(0, "valve", "open"), state)

    volume = case.plant.volume
    assert mixed.pressure == pytest.approx((101_325.0 * 2e-4 + 50.0 * volume) / (volume + 2e-4))


@pytest.mark.parametrize(
    ("pressure", "unit", "reads"),
    [(66.66, "micron", 500.0), (66.66, "Pa", 66.5), (13.0, "micron", 98.0), (5.04, "Pa", 5.0),
     (101_325.0, "micron", 760_000.0), (-1.0, "Pa", 0.0)],
)  # fmt: skip
def test_the_gauge_shows_steps(pressure, unit, reads):
    assert bench_session.shown(pressure, unit) == reads


# --- what can be done ----------------------------------------------------------------


@pytest.mark.parametrize(
    ("before", "new", "because"),
    [
        ([ON], Action(9, "hose", "hose-1/2"), "Shut the valve at the system first"),
        ([ON], Action(9, "oil", "new"), "Switch the pump off first"),
        ([], Action(9, "pump", "sideways"), "no such thing"),
        ([], Action(9, "kettle", "on"), "no such thing"),
    ],
)
def test_what_cannot_be_done_is_refused_with_the_reason(before, new, because):
    actions, why = bench_session.add(case_of(1), before, new)

    assert because in why
    assert list(actions) == before


def test_a_setting_is_known_once_the_learner_has_set_it():
    case = case_of(NUMBERS["ballast"][0])

    known = bench_session.settings_known(case, [ON, Action(5, "ballast", "open")])

    assert known["ballast"] == "open"
    assert "cores" not in known


# --- marking -------------------------------------------------------------------------


@pytest.mark.parametrize("fault", FINDS)
@pytest.mark.parametrize("which", [0, 1, 2])
def test_the_short_way_to_each_fault_shows_it(fault, which):
    mark = marked(NUMBERS[fault][which], FINDS[fault], fault)

    assert mark.grade == "shown", mark
    assert mark.evidence
    assert mark.says.startswith("Right, and your trace shows it.")
    assert mark.sooner[-1] == BY_FAULT[fault].sooner


@pytest.mark.parametrize("fault", sorted(set(FINDS) - {"wet"}))
def test_a_right_guess_is_a_guess(fault):
    # A minute of pulling shows none of them; the water's stall does not need more than the pull.
    mark = marked(NUMBERS[fault][0], [ON], fault, ticks=30)

    assert mark.grade == "guessed"
    assert not mark.evidence


@pytest.mark.parametrize("fault", sorted(set(FINDS) - {"none"}))
def test_the_evidence_for_a_fault_is_not_found_where_there_is_nothing_wrong(fault):
    case, _, readings = played(NUMBERS["none"][0], FINDS[fault])
    trace = bench_marking.read_trace(case, FINDS[fault], readings, "us")

    assert bench_marking.sights(trace, fault) == []


def test_a_wrong_name_is_told_what_that_would_look_like():
    mark = marked(NUMBERS["wet"][0], FINDS["wet"], "leak-system")

    assert mark.grade == "wrong"
    assert mark.says == "Not that. There was liquid water in the system."
    assert mark.because == BY_FAULT["leak-system"].looks
    assert mark.evidence


def test_a_near_name_is_close():
    assert marked(NUMBERS["leak-rig"][0], FINDS["leak-rig"], "leak-system").grade == "close"


def test_holds_are_judged_by_the_decay_card_itself():
    fault = "leak-system"
    number, actions = NUMBERS[fault][0], FINDS[fault]
    case, _, readings = played(number, actions, 500)
    mark = bench_marking.mark(case, actions, readings, fault)
    held = readings[300:]
    rows = [f"{n * TICK:g} {p:g}" for n, p in enumerate(held)]
    entries = {
        "readings": "\n".join(["seconds, micron", *rows]),
        "volume": f"{case.plant.volume * 1e3:g} L",
        "resolution": f"{max(map(bench_session.step_at, held)):g} micron",
    }  # fmt: skip

    card = evaluate(BY_SLUG["decay"], entries)

    (hold,) = mark.holds
    assert hold.code == card.answer.verdict.code == "leak"
    assert hold.at == 600.0
    assert card.say(card.answer.verdict.says) in hold.says


def test_marking_says_when_a_shorter_hold_was_enough():
    mark = marked(NUMBERS["leak-system"][0], FINDS["leak-system"], "leak-system")

    assert any("A hold of 3 min was enough" in line for line in mark.sooner)


def test_a_hold_with_the_gauge_at_the_pump_is_no_hold():
    fault = "gauge-at-pump"
    mark = marked(NUMBERS[fault][0], [ON, Action(60, "valve", "shut")], "none")

    assert mark.holds == ()
    assert mark.grade == "wrong"


@pytest.mark.parametrize("named", ["", "gremlins"])
def test_naming_nothing_is_asked_again(named):
    with pytest.raises(CalculatorError, match="Choose what you think is wrong"):
        marked(1, [ON], named, ticks=5)


# --- across to the page ----------------------------------------------------------------


def ask(**question):
    return json.loads(reply(json.dumps({"do": "bench", "system": "us", "case": 7, **question})))


def test_the_page_gets_a_case_and_moves_it_on():
    first = ask(give="case")
    moved = ask(
        give="run", moment=first["moment"], actions=[], act=[0, "pump", "on"], ticks=30,
    )  # fmt: skip

    assert moved["ok"]
    assert moved["moment"]["tick"] == len(moved["us"]) == len(moved["si"]) == 30
    assert moved["us"][-1] < first["us"][0]
    assert moved["actions"] == [[0, "pump", "on"]]
    assert moved["said"] == [{"tick": 0, "us": "Pump on", "si": "Pump on"}]
    assert moved["known"]["pump"] == "on"


def test_a_refusal_leaves_the_session_as_it_was():
    first = ask(give="case")
    moved = ask(
        give="run", moment=first["moment"], actions=[[0, "pump", "on"]], act=[3, "oil", "new"],
        ticks=6,
    )  # fmt: skip

    assert "pump off first" in moved["refused"]
    assert moved["actions"] == [[0, "pump", "on"]]


def test_the_second_gauge_is_read_in_both_systems():
    number = NUMBERS["gauge-dirty"][0]
    moment = ask(give="case", case=number)["moment"]
    actions = [[0, "pump", "on"], [290, "second", "read"]]
    moved = ask(give="run", case=number, moment=moment, actions=actions, act=None, ticks=300)

    said = moved["said"][-1]
    offset = case_of(number).plant.gauge_offset / MICRON
    other, yours = (
        float(text.split(" micron")[0].split()[-1].replace(",", ""))
        for text in said["us"].split(", yours")
    )
    assert yours - other == pytest.approx(offset, abs=6)
    assert said["si"].endswith("Pa")


@pytest.mark.parametrize("case", ["", "many", "0", "10000", "1.5"])
def test_a_number_that_is_no_case_is_told_so(case):
    answer = ask(give="case", case=case)

    assert not answer["ok"]
    assert answer["complaints"][0]["input"] == "case"
    assert "1 to 9,999" in answer["complaints"][0]["text"]


@pytest.mark.parametrize("moment", [{}, {"tick": 0, "state": ["x"], "step": 1, "froze": False}])
def test_a_session_that_cannot_be_read_is_told_so(moment):
    answer = ask(give="run", moment=moment, actions=[], act=None, ticks=1)

    assert answer["complaints"][0]["text"] == "This session cannot be read. Start the case again."


def test_a_session_ends_after_six_hours():
    moment = {**ask(give="case")["moment"], "tick": 10_790}

    answer = ask(give="run", moment=moment, actions=[], act=None, ticks=30)

    assert "Six hours is enough" in answer["complaints"][0]["text"]


def test_a_mark_comes_as_html():
    number = NUMBERS["ballast"][0]
    _, _, readings = played(number, FINDS["ballast"])
    actions = [[a.tick, a.control, a.value] for a in FINDS["ballast"]]

    answer = ask(
        give="mark", case=number, actions=actions, readings=readings, named="ballast",
        froze=False, system="si",
    )  # fmt: skip

    assert answer["grade"] == "shown"
    assert "With the ballast shut it fell from" in answer["html"]
    assert " Pa" in answer["html"]


def test_a_mark_without_a_trace_is_told_so():
    answer = ask(give="mark", actions=[], readings=[760000], named="none")

    assert "no trace to mark yet" in answer["complaints"][0]["text"]
