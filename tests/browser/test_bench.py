"""The practice bench in Chromium: three faults found from the trace alone, and nothing lost."""

import json

import pytest
from playwright.sync_api import expect

from calculators.teaching.bench_case import case_of

PAGE = "/practice/bench/"
KEY = "dry-tight:bench"


def number_with(fault):
    """Give the first case with a fault."""
    return next(n for n in range(1, 300) if case_of(n).fault == fault)


@pytest.fixture
def bench(page):
    """Drive the bench as a learner would."""
    return Bench(page)


class Bench:
    """What a learner can do, and read."""

    def __init__(self, page):
        self.page = page

    def open(self, number):
        """Open a case and wait until it is set up."""
        self.page.goto(f"{PAGE}?case={number}")
        expect(self.page.locator("[data-speed='60']")).to_be_enabled(timeout=90_000)
        expect(self.page.locator("[name=case]")).to_have_value(str(number))

    def do(self, control, value):
        """Press a control, and see it in the list."""
        lines = self.page.locator("[data-part=log] li")
        before = lines.count()
        self.page.locator(f"[data-control={control}][data-value='{value}']").click()
        expect(lines).to_have_count(before + 1)

    def run(self, minutes, speed=240):
        """Let the bench's clock run so many minutes, then stop it."""
        until = self.clock() + 60 * minutes
        self.page.locator(f"[data-speed='{speed}']").click()
        for _ in range(600):
            if self.clock() >= until:
                break
            self.page.wait_for_timeout(50)
        self.stop()

    def stop(self):
        """Stop the clock."""
        self.page.locator("[data-speed='0']").click()

    def clock(self):
        """Seconds on the bench's clock."""
        text = self.page.locator("[data-part=clock]").inner_text()
        hours, minutes, seconds = map(int, text.split(":"))
        return 3600 * hours + 60 * minutes + seconds

    def reading(self):
        """What the gauge shows."""
        return float(self.page.locator("[data-part=reading]").inner_text().replace(",", ""))

    def name(self, fault):
        """Say what is wrong and give the grade."""
        details = self.page.locator(".bench-naming details")
        if details.get_attribute("open") is None:
            details.locator("summary").click()
        self.page.locator(f"input[name=named][value='{fault}']").check()
        self.page.get_by_role("button", name="Mark it").click()
        grade = self.page.locator(".bench-grade")
        expect(grade).to_be_visible()
        return grade


def hold(bench, minutes):
    """Shut the valve, wait, and give the readings at the start, the middle and the end."""
    bench.do("valve", "shut")
    bench.run(0.2)
    readings = [bench.reading()]
    for _ in range(2):
        bench.run(minutes / 2)
        readings.append(bench.reading())
    return readings


# --- three faults, from the trace alone -------------------------------------------------


def test_a_leak_is_found_by_its_straight_line(bench, screenshot):
    bench.open(number_with("leak-system"))
    bench.do("pump", "on")
    bench.run(8)
    assert bench.reading() > 500  # it will not go down

    first, middle, last = hold(bench, 6)

    # As much in the second half as in the first: no gas from inside does that.
    assert last - middle == pytest.approx(middle - first, rel=0.2)
    bench.page.locator("[data-view=last]").click()
    expect(bench.name("leak-system")).to_have_attribute("data-grade", "shown")
    expect(bench.page.locator("[data-part=mark]")).to_contain_text("Climbs steadily: a leak")
    screenshot(bench.page, "found", full_page=True)


def test_ice_is_found_by_where_it_levels_off(bench, screenshot):
    bench.open(number_with("frozen"))
    bench.do("pump", "on")
    bench.run(10)
    assert 500 < bench.reading() < 4_588  # it stands below the triple point

    first, middle, last = hold(bench, 12)

    assert last - middle < 0.5 * (middle - first)  # it bends
    assert last == pytest.approx(4_588, rel=0.06)  # at the triple point of water
    expect(bench.name("frozen")).to_have_attribute("data-grade", "shown")
    screenshot(bench.page, "found", full_page=True)


def test_a_leaking_rig_is_found_by_the_system_that_stands_still(bench, screenshot):
    bench.open(number_with("leak-rig"))
    bench.do("pump", "on")
    bench.run(9)
    assert bench.reading() > 500

    first, _, last = hold(bench, 4)
    assert last == pytest.approx(first, rel=0.03)  # the system is tight
    bench.do("pump", "off")
    bench.do("gauge", "pump")
    bench.run(0.2)
    start = bench.reading()
    bench.run(1)

    assert bench.reading() > 2 * start  # and the rig is not
    expect(bench.name("leak-rig")).to_have_attribute("data-grade", "shown")
    screenshot(bench.page, "found", full_page=True)


def test_a_wrong_name_is_told_what_the_trace_says(bench):
    bench.open(number_with("ballast"))
    bench.do("pump", "on")
    bench.run(20)  # a narrow hose takes its time

    expect(bench.name("leak-system")).to_contain_text("Not that.")
    expect(bench.name("ballast")).to_contain_text("your trace does not show it")

    bench.do("ballast", "shut")
    bench.run(6)  # through a narrow hose it falls by a third in three or four minutes
    expect(bench.name("ballast")).to_have_attribute("data-grade", "shown")


# --- how it behaves ---------------------------------------------------------------------


def test_a_reload_loses_nothing_and_goes_on_alike(bench):
    bench.open(number_with("oil-gas"))
    bench.do("pump", "on")
    bench.run(4)
    bench.do("valve", "shut")
    bench.run(2)
    before = bench.clock(), bench.reading(), bench.page.locator("[data-part=log]").inner_text()
    readings = json.loads(bench.page.evaluate(f"localStorage.getItem('{KEY}')"))["readings"]["us"]

    bench.page.reload()
    expect(bench.page.locator("[data-speed='60']")).to_be_enabled(timeout=90_000)
    expect(bench.page.locator("[data-part=clock]")).not_to_have_text("0:00:00")

    assert before == (
        bench.clock(), bench.reading(), bench.page.locator("[data-part=log]").inner_text()
    )  # fmt: skip
    bench.run(1)
    after = json.loads(bench.page.evaluate(f"localStorage.getItem('{KEY}')"))["readings"]["us"]
    assert after[: len(readings)] == readings
    assert len(after) > len(readings)


def test_what_you_cannot_see_stays_as_you_found_it_until_you_set_it(bench):
    bench.open(number_with("core-in"))
    core = bench.page.locator("[data-of=cores]")
    expect(core).to_contain_text("as you found it")
    expect(core.locator("[aria-pressed=true]")).to_have_count(0)

    bench.do("cores", "out")

    expect(core.get_by_text("as you found it")).to_be_hidden()
    expect(core.locator("[data-value=out]")).to_have_attribute("aria-pressed", "true")


def test_what_cannot_be_done_is_said(bench):
    bench.open(1)
    bench.page.locator("[data-control=hose][data-value='hose-1/2']").click()

    expect(bench.page.locator("[data-part=says]")).to_contain_text(
        "Shut the valve at the system first"
    )
    expect(bench.page.locator("[data-part=log] li")).to_have_count(0)


def test_a_number_that_is_no_case_is_told_and_stays(bench):
    bench.open(1)
    bench.page.locator("[name=case]").fill("70000")
    bench.page.get_by_role("button", name="Set up").click()

    expect(bench.page.locator("[data-part=complaint]")).to_contain_text("1 to 9,999")
    expect(bench.page.locator("[name=case]")).to_have_value("70000")


def test_another_case_begins_with_an_empty_trace(bench):
    bench.open(1)
    drawn = "document.querySelector('practice-bench canvas').toDataURL()"
    empty = bench.page.evaluate(drawn)
    bench.do("pump", "on")
    bench.run(4)
    bench.name("none")
    assert bench.page.evaluate(drawn) != empty

    bench.page.get_by_role("button", name="Take another case").click()

    expect(bench.page.locator(".bench-grade")).to_have_count(0)
    expect(bench.page.locator("[data-part=log] li")).to_have_count(0)
    expect(bench.page.locator("[data-part=says]")).to_contain_text("is set up")
    bench.page.wait_for_function(f"(empty) => {drawn} === empty", arg=empty)


def test_gauge_and_trace_stay_in_sight_at_every_control(open_page):
    page = open_page(width=360)
    Bench(page).open(1)
    for control in page.locator(".bench-control").all():
        control.scroll_into_view_if_needed()
        control.locator("button").first.focus()
        for part in ("[data-part=reading]", ".plot", "[data-speed='0']"):
            expect(page.locator(f"practice-bench {part}")).to_be_in_viewport(ratio=1)
        # Whatever has the focus is not under what stays at the top.
        assert page.evaluate(
            """() => document.activeElement.getBoundingClientRect().top
              >= document.querySelector(".bench-instrument").getBoundingClientRect().bottom - 1"""
        )


def test_the_bench_follows_the_units(bench):
    bench.open(1)
    bench.do("pump", "on")
    bench.run(1)
    micron = bench.reading()

    bench.page.locator(".switch button", has_text="SI").click()

    expect(bench.page.locator("[data-part=unit]")).to_have_text("Pa")
    expect(bench.page.locator(".bench-situation")).to_contain_text("°C")
    assert bench.reading() == pytest.approx(micron * 0.133322, rel=0.02)


def test_it_works_by_keyboard(bench):
    bench.open(1)
    page = bench.page
    page.locator("[data-control=pump][data-value=on]").focus()
    page.keyboard.press("Enter")
    expect(page.locator("[data-part=log] li")).to_have_text(["0:00:00 Pump on"])
    page.locator("[data-speed='240']").focus()
    page.keyboard.press("Space")
    page.wait_for_timeout(1500)
    page.locator("[data-speed='0']").focus()
    page.keyboard.press("Space")
    expect(page.locator("[data-part=says]")).to_contain_text("Stopped at")

    page.locator("practice-bench .plot").focus()
    page.keyboard.press("End")

    expect(page.locator(".bench-readout")).to_contain_text("min: ")


def test_who_wants_little_motion_gets_little(open_page):
    page = open_page(reduced_motion="reduce")
    bench = Bench(page)
    bench.open(1)
    bench.do("pump", "on")
    page.locator("[data-speed='240']").click()
    changes = page.evaluate(
        """() => new Promise((done) => {
          let count = 0;
          const watch = new MutationObserver(() => count++);
          watch.observe(document.querySelector("[data-part=clock]"), { childList: true });
          setTimeout(() => done(count), 3000);
        })"""
    )

    assert 1 <= changes <= 8


@pytest.mark.parametrize("width", [360, 1280])
@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_the_bench_fits_its_screen(bench, width, scheme, screenshot):
    bench.open(number_with("oil-gas"))
    bench.do("pump", "on")
    bench.run(8)
    bench.do("valve", "shut")
    bench.run(6)
    screenshot(bench.page, "trace", full_page=True)

    page = bench.page
    assert page.evaluate("document.documentElement.scrollWidth") <= width
    sizes = page.evaluate(
        """() => [...document.querySelectorAll("practice-bench button")]
          .map((each) => each.getBoundingClientRect()).filter((box) => box.width)
          .map((box) => [box.width, box.height])"""
    )
    assert all(across >= 44 and high >= 44 for across, high in sizes)
    largest = page.evaluate(
        """() => {
          const size = (each) => parseFloat(getComputedStyle(each).fontSize);
          const reading = document.querySelector(".bench-reading b");
          const all = [...document.querySelectorAll("article *")];
          return all.every((each) => size(each) <= size(reading));
        }"""
    )
    assert largest
