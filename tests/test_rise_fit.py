"""The fits: known parameters come back, intervals cover, and scipy finds the same."""

import math
import random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.physics.rise_bounds import (
    level_interval,
    slope_interval,
    steepest_leak,
    stretch,
    time_constants,
)
from calculators.physics.rise_choice import compare_shapes, preferred
from calculators.physics.rise_fit import fit_rise, spread_out
from calculators.physics.rise_noise import Noise, correlation_length, noise
from calculators.physics.rise_record import Point, gauge_step, isolation_time, record, seen
from calculators.physics.rise_shapes import released


def points(curve, *, count=60, length=600.0, step=0.1, scatter=0.0, seed=1):
    chance = random.Random(seed)
    times = [length * k / (count - 1) for k in range(count)]
    return tuple(Point(t, curve(t) + chance.gauss(0.0, scatter), step, 1) for t in times)


def fitted(some):
    fits = fit_rise(some)
    found = noise(fits)
    return spread_out(fits, room=found.quantile(1.96) ** 2 * found.variance), found


# --- shapes --------------------------------------------------------------------------


def test_vermeulens_curve_is_close_to_diffusion_out_of_a_sphere():
    # Source: Crank, The Mathematics of Diffusion, eq. (6.20), a sphere: 1 - 6/pi^2 sum
    # exp(-n^2 pi^2 Dt/a^2)/n^2. Vermeulen's curve has tau = a^2/(pi^2 D); he claims a few percent.
    for fourier in (0.001, 0.01, 0.03, 0.1, 0.3):
        series = 1.0 - 6.0 / math.pi**2 * sum(
            math.exp(-(n**2) * math.pi**2 * fourier) / n**2 for n in range(1, 200)
        )
        ours = released(shape="square root", x=fourier, tau=1.0 / math.pi**2)

        assert ours == pytest.approx(series, abs=0.04)


@pytest.mark.parametrize("shape", ["exponential", "square root"])
def test_release_starts_at_nothing_and_ends_at_all(shape):
    assert released(shape=shape, x=0.0, tau=1.0) == 0.0
    assert released(shape=shape, x=60.0, tau=1.0) == pytest.approx(1.0)


# --- known parameters come back -------------------------------------------------------


@given(
    start=st.floats(5.0, 200.0),
    slope=st.floats(0.0, 0.5),
    gas=st.floats(5.0, 500.0),
    tau=st.floats(20.0, 200.0),
    shape=st.sampled_from(["exponential", "square root"]),
)
def test_exact_data_give_their_own_parameters_back(start, slope, gas, tau, shape):
    some = points(lambda t: start + slope * t + gas * released(shape=shape, x=t, tau=tau))

    best = fit_rise(some).best_both()

    assert best.misfit <= 1e-6 * gas**2 * len(some)
    assert best.slope / 600.0 == pytest.approx(slope, abs=0.002 + 0.02 * slope)
    assert best.at(1.0) == pytest.approx(some[-1].pressure, rel=1e-3)


def test_scipy_finds_the_same_fit():
    optimize = pytest.importorskip("scipy.optimize")
    some = points(lambda t: 40 + 0.05 * t + 80 * -math.expm1(-t / 90), scatter=0.3)
    times, pressures = [p.time for p in some], [p.pressure for p in some]

    def model(t, p0, s, g, tau):
        return [p0 + s * x + g * -math.expm1(-x / tau) for x in t]

    (_, slope, gas, tau), _ = optimize.curve_fit(model, times, pressures, p0=(40, 0.1, 50, 60))
    exponential = [f for f in fit_rise(some).both if f.shape == "exponential"]
    best = min(exponential, key=lambda fit: fit.misfit)

    assert best.slope / 600.0 == pytest.approx(slope, rel=2e-3)
    assert best.gas == pytest.approx(gas, rel=2e-3)
    assert best.tau * 600.0 == pytest.approx(tau, rel=2e-3)


def test_leak_and_gas_are_never_negative():
    falling = fit_rise(points(lambda t: 100.0 - 0.05 * t))

    assert falling.line.slope == 0.0
    assert all(fit.gas >= 0.0 for fit in (*falling.gas, *falling.both))


# --- intervals ------------------------------------------------------------------------


@pytest.mark.parametrize("slope", [0.02, 0.1])
def test_interval_of_a_leak_covers_it_about_95_times_in_100(slope):
    covered = 0
    for seed in range(60):
        fits, found = fitted(points(lambda t: 40 + slope * t, scatter=0.5, seed=seed))
        low, _, high = slope_interval(fits, found, slowest=3.0)
        covered += low <= slope * 600.0 <= high

    assert covered >= 54


def test_interval_of_a_plateau_covers_it():
    covered = 0
    for seed in range(60):
        curve = points(lambda t: 40 + 100 * -math.expm1(-t / 150), scatter=0.5, seed=seed)
        fits, found = fitted(curve)
        low, _, high = level_interval(fits.gas, found, x=math.inf, points=60)
        shortest, longest = time_constants(fits.gas, found)
        covered += low <= 140.0 <= high and shortest <= 0.25 <= longest

    assert covered >= 52


def test_no_leak_is_steeper_than_the_bound():
    for seed in range(40):
        leak = 0.005 * seed / 600.0

        def curve(t, leak=leak):
            return 40 + leak * t + 3 * -math.expm1(-t / 50)

        some = points(curve, scatter=0.05, seed=seed)
        fits, found = fitted(some)

        assert steepest_leak(fits, found, temperature_known=True) >= leak * 600.0


def test_a_stretch_without_two_readings_is_none():
    fits, found = fitted(points(lambda t: 40.0, count=3))

    assert stretch(fits, found, start=0.9) is None


# --- noise ----------------------------------------------------------------------------


@pytest.mark.parametrize("keep", [0.0, 0.5, 0.8])
def test_correlation_length_is_that_of_a_first_order_process(keep):
    # Identity: x_n = a x_(n-1) + e has 1 + 2 sum a^k = (1 + a)/(1 - a).
    chance, value, series = random.Random(3), 0.0, []
    for _ in range(6000):
        value = keep * value + chance.gauss(0.0, 1.0)
        series.append(value)

    assert correlation_length(series) == pytest.approx((1 + keep) / (1 - keep), rel=0.25)


@pytest.mark.parametrize("freedom", [4.0, 8.0, 20.0, 200.0])
def test_quantiles_are_students(freedom):
    stats = pytest.importorskip("scipy.stats")
    some = Noise(1.0, 1.0, 1.0, 1.0, 1.0, freedom)

    assert some.quantile(1.96) == pytest.approx(stats.t.ppf(0.9750021, freedom), rel=0.01)


def test_scatter_is_never_below_the_step():
    fits = fit_rise(points(lambda t: 40.0, step=1.0))

    assert noise(fits).variance >= 1.0 / 12.0


# --- record ---------------------------------------------------------------------------


def test_a_long_log_becomes_few_points_on_the_same_line():
    times = [float(t) for t in range(5000)]
    some = record(time=times, pressure=[40 + 0.01 * t for t in times], resolution=0.1)

    assert len(some) <= 200
    assert sum(p.size for p in some) == 5000
    assert all(p.pressure == pytest.approx(40 + 0.01 * p.time) for p in some)


def test_a_coarser_step_higher_up_is_seen():
    coarse, fine = [*range(1000, 1400, 10)], [*range(900, 1000)]

    def step_at(pressure, readings, resolution=1.0):
        return gauge_step(log=seen(readings), pressure=pressure, resolution=resolution)

    assert step_at(930.0, 3 * (fine + coarse), resolution=0.1) == 1.0
    assert step_at(1200.0, 3 * coarse) == 10.0
    assert step_at(1300.0, 20 * [1290, 1300]) == 10.0


def test_a_steady_climb_through_round_numbers_is_no_step():
    for readings in ([300, 350, 400], [*range(300, 400, 10)], [*range(300, 600, 10)]):
        assert gauge_step(log=seen(readings), pressure=350, resolution=1.0) == 1.0


def test_isolation_is_where_the_fall_ends():
    pulled = [5000.0 * math.exp(-t / 60.0) + 40.0 for t in range(0, 600, 10)]
    held = [40.5 + 0.01 * t for t in range(0, 600, 10)]
    times = [10.0 * k for k in range(120)]
    some = record(time=times, pressure=[*pulled, *held], resolution=0.1)

    assert 400.0 <= isolation_time(some) <= 610.0
    assert isolation_time(some[60:]) == some[60].time


# --- choice ---------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("curve", "shape"),
    [
        (lambda t: 40.0, "constant"),
        (lambda t: 40.0 + 0.1 * t, "leak"),
        (lambda t: 40.0 + 100 * -math.expm1(-t / 100), "gas"),
        (lambda t: 40.0 + 0.1 * t + 100 * -math.expm1(-t / 60), "leak and gas"),
    ],
)
def test_the_criterion_prefers_what_made_the_data(curve, shape):
    fits, found = fitted(points(curve, scatter=0.2))
    choices = compare_shapes(fits, found)

    assert preferred(choices) == shape
    assert sum(choice.weight for choice in choices) == pytest.approx(1.0)


def test_too_few_readings_weigh_nothing():
    fits, found = fitted(points(lambda t: 40.0 + t, count=2))

    assert preferred(compare_shapes(fits, found)) is None
