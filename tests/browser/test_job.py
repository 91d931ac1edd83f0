"""The job record as a technician keeps it: added to from cards, printed, saved, never lost."""

import json
import re
import shutil
import subprocess

import pytest
from browser.access import RULES, look
from playwright.sync_api import expect

from calculators.job import schema

both_widths = pytest.mark.parametrize("width", [360, 1280])
both_schemes = pytest.mark.parametrize("scheme", ["light", "dark"])
RECORD = "/on-the-job/job/"
STORED = """() => new Promise((settle) => {
  const asked = indexedDB.open("dry-tight");
  asked.onsuccess = () => {
    const all = asked.result.transaction("jobs").objectStore("jobs").getAll();
    all.onsuccess = () => { asked.result.close(); settle(all.result); };
  };
})"""
FULL = """() => {
  IDBObjectStore.prototype.put = () => {
    throw new DOMException("no room", "QuotaExceededError");
  };
}"""
HOLD = "0 180\n1 185\n2 185\n3 185\n" + "\n".join(
    f"{minute} 190" for minute in (4, 5, 6, 8, 10, 12, 15, 20, 25, 30)
)


def card(page, slug, state="done"):
    """Give the card once its answer belongs to what is typed."""
    found = page.locator(f'worked-card[card="{slug}"]')
    expect(found).to_have_attribute("state", state)
    expect(found).not_to_have_attribute("stale", "")
    return found


def add(page, slug, use=False, **entries):
    """Open a card's page, type, take the job's numbers if asked, add the answer to the job."""
    page.goto(f"/calculators/{slug}/")
    card(page, slug)
    for name, text in entries.items():
        page.locator(f'[name="{name}"]').fill(text)
    if use:
        page.get_by_role("button", name="Use the job's numbers").click()
        expect(page.locator(".job-says")).to_contain_text("From ")
    card(page, slug)
    press_add(page)


def job(*results, **facts):
    """Make a job file as an object."""
    return {
        "format": schema.FORMAT, "version": schema.VERSION, "id": "job-00000001",
        "created": "2026-11-25T09:00:00+01:00", "changed": "2026-11-25T11:00:00+01:00",
        "facts": facts, "results": list(results),
    }  # fmt: skip


def result(card, **entries):
    return {
        "id": f"result-{card}", "card": card, "entries": entries, "system": "us",
        "when": "2026-11-25T10:00:00+01:00", "said": "As it was said",
    }  # fmt: skip


def press_add(page, says="Added to"):
    page.get_by_role("button", name="Add to job").click()
    expect(page.locator(".job-says")).to_contain_text(says)


def record(page, system=None):
    """Open the job record and wait for its sheet; name the system if asked."""
    page.goto(RECORD)
    expect(page.locator("job-record")).to_have_attribute("state", "open")
    if system:
        page.get_by_label("System", exact=True).fill(system)
        expect(page.locator(".job-head h2")).to_have_text(system)
    expect(page.locator(".job-head h2")).to_be_visible()


def start(page, system="Walk-in cooler"):
    page.goto(RECORD)
    page.locator(".job-none").get_by_role("button", name="Start a job").click()
    page.get_by_label("System", exact=True).fill(system)
    expect(page.locator(".job-head h2")).to_have_text(system)


def stored(page):
    """Everything in the store, read past our own code."""
    return page.evaluate(STORED)


def holds(page):
    """Wait until the page and the store agree on the facts, then give the job."""
    expect(page.locator("job-record")).to_have_attribute("state", "open")
    page.wait_for_function("!Object.keys(localStorage).some((key) => key.includes(':draft:'))")
    return stored(page)[0]


def saved(page, button):
    """Press a button that gives a file; its name and text."""
    with page.expect_download() as download:
        page.get_by_role("button", name=button).click()
    file = download.value
    return file.suggested_filename, file.path().read_text("utf-8")


def choose(page, text, name="job.json"):
    expect(page.locator("job-record")).not_to_have_attribute("state", "waking")
    file = {"name": name, "mimeType": "application/json", "buffer": text.encode()}
    page.locator("job-record [type=file]").set_input_files(file)


def pages_of(pdf, out):
    """Count a PDF's pages and leave a picture of each in build/screens, where a tool can."""
    if shutil.which("pdftoppm"):
        subprocess.run(["pdftoppm", "-r", "70", "-png", pdf, out], check=True)
    return len(re.findall(rb"/Type\s*/Page\b(?!s)", pdf.read_bytes()))


def test_a_job_from_gauge_check_to_printed_record_on_a_phone(open_page, screenshot):
    page = open_page(width=360)
    add(page, "gauge-check", resolution="5")
    says = page.locator(".job-says")
    expect(says).to_contain_text("Added to the job of 20")
    screenshot(page, "added")
    says.get_by_role("link", name="Open the job record").click()
    page.get_by_label("System", exact=True).fill("Walk-in cooler")
    page.get_by_label("Site", exact=True).fill("The bakery at the mill")
    page.get_by_label("Refrigerant", exact=True).fill("R-290, A3")
    page.get_by_label("Technician", exact=True).fill("T. Oake")
    page.get_by_text("Notes:").click()
    page.get_by_label("Not tested").fill("The coil behind the closed solenoid valve.")
    expect(page.locator(".job-state")).to_contain_text("Still open: inside volume, pump, rig")
    expect(page.get_by_text("The pump has not been proved on this job.")).to_be_visible()

    add(page, "inside-volume")
    add(page, "pump-check", blank_off="28")
    add(page, "rig-check", use=True)
    expect(page.locator('[name="ultimate_pressure"]')).to_have_value("28")
    add(page, "hold-time", use=True)
    expect(page.locator('[name="resolution"]')).to_have_value("5")
    add(page, "decay", use=True, readings=HOLD)
    expect(page.locator('[name="resolution"]')).to_have_value("5")
    verdict = page.locator("worked-card .verdict b").inner_text()
    assert verdict == "It holds"
    screenshot(page, "decay-card", full_page=True)

    record(page)
    decay = page.locator('[data-part="decay"]')
    expect(decay.locator(".verdict b")).to_have_text(verdict)
    expect(decay.locator(".uplot")).to_be_visible()
    expect(page.locator(".job-state")).to_have_text("Still open: pull.")
    assert page.evaluate("document.documentElement.scrollWidth") <= 360
    screenshot(page, "record", full_page=True)
    for paper in ("A4", "Letter"):
        pdf = screenshot(page, paper).with_suffix(".pdf")
        page.pdf(path=pdf, format=paper, prefer_css_page_size=False)
        assert pages_of(pdf, pdf.with_suffix("")) <= 2
    page.emulate_media(media="print")
    expect(page.locator(".job-sign")).to_be_visible()
    for hidden in ("h1", ".bar", ".foot", ".job-tools >> nth=0", ".job-list", ".job-help"):
        expect(page.locator(hidden)).to_be_hidden()


def test_a_job_saved_wiped_and_opened_again_is_identical(open_page):
    page = open_page(width=360)
    add(page, "gauge-check", resolution="5")
    add(page, "decay", use=True, readings=HOLD)
    record(page, "Walk-in cooler")
    name, text = saved(page, "Save to a file")
    before = stored(page)
    schema.check(json.loads(text))
    assert name.startswith("walk-in-cooler-20") and name.endswith(".json")

    other = open_page(width=360)  # an empty profile
    other.goto(RECORD)
    choose(other, text, name)
    expect(other.locator(".job-head h2")).to_have_text("Walk-in cooler")
    expect(other.locator('[data-part="decay"] .verdict b')).to_have_text("It holds")

    assert saved(other, "Save to a file")[1] == text
    assert stored(other) == before


def test_the_table_holds_facts_entries_and_outputs(page):
    page.goto(RECORD)
    choose(page, json.dumps(job(result("decay", readings=HOLD), system="Walk-in cooler")))
    name, text = saved(page, "Save as a table")

    assert name == "walk-in-cooler-2026-11-25.csv"
    assert "fact,system,Walk-in cooler" in text
    assert "decay,decay,2026-11-25T10:00:00+01:00,output,verdict," in text


def test_two_tabs_at_once_lose_nothing(page):
    start(page)
    other = page.context.new_page()
    record(other)
    # Twenty changes from each side, none waiting for another.
    change = """async (side) => {
      const { changeJob } = await import("/assets/js/job-store.js");
      const { newResult } = await import("/assets/js/job-file.js");
      const id = localStorage.getItem("dry-tight:job");
      const said = (n) => newResult({ card: "convert", entries: {}, system: "us", said: side + n });
      await Promise.all([...Array(20).keys()].map((n) =>
        changeJob(id, ({ results }) => void results.push(said(n)))));
    }"""
    for tab, side in ((page, "left"), (other, "right")):
        tab.evaluate(f"(side) => {{ window.done = ({change})(side); }}", side)
    for tab in (page, other):
        tab.evaluate("window.done")
    # And the facts: one field in each.
    page.get_by_label("Site", exact=True).fill("The bakery at the mill")
    other.locator(".job-about > summary").click()
    other.get_by_label("Technician", exact=True).fill("T. Oake")
    for tab in (page, other):
        expect(tab.get_by_label("Site", exact=True)).to_have_value("The bakery at the mill")
        expect(tab.get_by_label("Technician", exact=True)).to_have_value("T. Oake")
    kept = holds(page)

    said = {each["said"] for each in kept["results"]}
    assert said == {f"{side}{n}" for side in ("left", "right") for n in range(20)}
    assert kept["facts"] == {
        "system": "Walk-in cooler", "site": "The bakery at the mill", "technician": "T. Oake"
    }  # fmt: skip


def test_a_card_in_another_tab_sees_what_the_job_learns(page):
    start(page)
    other = page.context.new_page()
    other.goto("/calculators/decay/")
    card(other, "decay")
    expect(other.get_by_role("button", name="Use the job's numbers")).to_have_count(0)
    add(page, "gauge-check", resolution="5")

    expect(other.get_by_role("button", name="Use the job's numbers")).to_be_visible()


def test_a_crash_or_a_reload_loses_nothing_typed(page):
    start(page)
    page.get_by_label("Site", exact=True).fill("The bakery at the mill")
    page.reload()
    expect(page.get_by_label("Site", exact=True)).to_have_value("The bakery at the mill")
    page.locator(".job-about > summary").click()
    page.get_by_label("Technician", exact=True).press_sequentially("T. Oake")
    other = page.context.new_page()
    page.close()  # at once, with no warning to the page
    record(other)

    expect(other.get_by_label("Technician", exact=True)).to_have_value("T. Oake")
    assert holds(other)["facts"]["technician"] == "T. Oake"


def test_a_full_disk_is_said_and_what_was_typed_is_saved_later(page):
    start(page)
    page.evaluate(FULL)
    page.get_by_label("Site", exact=True).fill("The bakery at the mill")
    says = page.locator("job-record > .job-says")
    expect(says).to_contain_text("This device has no room left")
    expect(page.get_by_label("Site", exact=True)).to_have_value("The bakery at the mill")
    # A file has what the store could not take.
    assert json.loads(saved(page, "Save to a file")[1])["facts"]["site"] == "The bakery at the mill"

    page.reload()  # there is room again
    expect(page.get_by_label("Site", exact=True)).to_have_value("The bakery at the mill")
    assert holds(page)["facts"]["site"] == "The bakery at the mill"


def test_a_full_disk_is_said_on_a_card_and_the_entries_stay(page):
    page.goto("/calculators/gauge-check/")
    card(page, "gauge-check")
    page.locator('[name="resolution"]').fill("5")
    card(page, "gauge-check")
    page.evaluate(FULL)
    press_add(page, "This device has no room left")

    expect(page.locator('[name="resolution"]')).to_have_value("5")
    assert stored(page) == []


@pytest.mark.parametrize(
    "closed",
    [
        "Object.defineProperty(window, 'indexedDB', { value: undefined })",
        "IDBFactory.prototype.open = () => { throw new DOMException('no', 'SecurityError'); }",
    ],
)
def test_a_browser_that_keeps_nothing_says_so(page, closed):
    page.add_init_script(closed)
    page.goto(RECORD)
    says = "This browser keeps no jobs here"
    expect(page.locator("job-record > .job-says")).to_contain_text(says)
    page.goto("/calculators/convert/")
    card(page, "convert")
    press_add(page, says)


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("not a job", "That is not a job file"),
        ("[1, 2]", "This is not a job file"),
        (json.dumps({**job(), "version": 9}), "this guide reads version 1"),
        (json.dumps({**job(), "extra": 1}), "“extra” is not known here"),
        (json.dumps(job(result("no-such-card"))), "is not one of"),
    ],
)
def test_a_wrong_file_gets_a_sentence_and_changes_nothing(page, text, says):
    page.goto(RECORD)
    expect(page.locator("job-record")).to_have_attribute("state", "none")
    choose(page, text)

    expect(page.locator("job-record > .job-says")).to_contain_text(says)
    assert stored(page) == []


@pytest.mark.parametrize(
    ("answer", "kept"),
    [
        ("Keep both", ["From the file", "Mine"]),
        ("Replace it", ["From the file"]),
        ("Leave it", ["Mine"]),
    ],
)
def test_a_job_that_is_here_already_is_asked_about(page, answer, kept, screenshot):
    page.goto(RECORD)
    choose(page, json.dumps(job(system="Mine")))
    expect(page.locator(".job-head h2")).to_have_text("Mine")
    choose(page, json.dumps(job(system="From the file")))
    expect(page.get_by_role("dialog")).to_contain_text("Mine is on this device already")
    screenshot(page, "question")
    page.get_by_role("button", name=answer).click()
    expect(page.get_by_role("dialog")).to_have_count(0)
    expect(page.locator(".job-list li")).to_have_count(len(kept))

    assert sorted(each["facts"]["system"] for each in stored(page)) == kept


def test_several_jobs_are_kept_opened_and_deleted_after_a_question(page):
    start(page, "Walk-in cooler")
    page.get_by_role("button", name="Start another job").click()
    expect(page.locator(".job-head h2")).to_have_text("System not named")
    page.get_by_label("System", exact=True).fill("Library split system")
    expect(page.locator(".job-head h2")).to_have_text("Library split system")
    page.get_by_role("button", name="Open Walk-in cooler").click()
    expect(page.locator(".job-head h2")).to_have_text("Walk-in cooler")
    delete = page.get_by_role("button", name="Delete Library split system")
    delete.click()
    expect(page.get_by_role("dialog")).to_be_visible()
    page.keyboard.press("Escape")
    expect(page.get_by_role("dialog")).to_have_count(0)
    expect(page.locator(".job-list li")).to_have_count(2)
    delete.click()
    page.get_by_role("button", name="Delete it").click()
    expect(page.locator(".job-list li")).to_have_count(1)
    page.get_by_role("button", name="Close this job").click()

    expect(page.locator("job-record")).to_have_attribute("state", "none")
    assert [each["facts"]["system"] for each in stored(page)] == ["Walk-in cooler"]


def test_a_result_leads_back_to_its_card_and_can_be_taken_out_and_put_back(page):
    page.goto(RECORD)
    choose(page, json.dumps(job(result("convert", pressure="66 Pa"), system="Mine")))
    page.get_by_role("button", name="Take out").click()
    expect(page.locator(".job-result")).to_have_count(0)
    page.keyboard.press("Enter")  # on "Put it back"
    expect(page.locator(".job-result")).to_have_count(1)
    page.get_by_role("link", name="Open this card").click()
    card(page, "convert")
    expect(page.locator('[name="pressure"]')).to_have_value("66")
    press_add(page)
    press_add(page, "It is already in Mine")

    assert len(stored(page)[0]["results"]) == 2


def test_a_log_too_long_for_a_link_is_handed_over(page):
    log = "\n".join(f"{second / 60:.4f} {300 + second % 3}" for second in range(600))
    page.goto(RECORD)
    choose(page, json.dumps(job(result("decay", readings=log), system="Mine")))
    page.get_by_role("link", name="Open this card").click()
    card(page, "decay")

    expect(page.locator('[name="readings"]')).to_have_value(log)


def test_only_an_answer_is_added(page):
    page.goto("/calculators/convert/")
    card(page, "convert")
    page.locator('[name="pressure"]').fill("lots")
    expect(page.locator("#convert-pressure-complaint")).to_be_visible()
    press_add(page, "put the entries right first")

    assert page.evaluate("localStorage.getItem('dry-tight:job')") is None


def test_the_running_decay_test_is_added_from_its_own_panel(open_page, screenshot):
    page = open_page(width=360)
    page.goto("/on-the-job/live-decay/")
    page.get_by_role("button", name="The valve is shut").click()
    for reading in ("305", "306"):
        page.get_by_label("The gauge shows now").fill(reading)
        page.get_by_role("button", name="Add reading").click()
    card(page, "decay")
    page.locator(".live-job button").click()
    expect(page.locator("live-decay .job-says")).to_contain_text("Added to the job of")
    screenshot(page, "added")

    assert "306 micron" in stored(page)[0]["results"][0]["entries"]["readings"]


def test_without_python_the_list_the_facts_and_the_file_still_work(page, no_python):
    no_python(page)
    page.goto(RECORD)
    page.locator(".job-none").get_by_role("button", name="Start a job").click()
    page.get_by_label("System", exact=True).fill("Walk-in cooler")
    expect(page.locator(".job-sheet")).to_contain_text("could not start")
    expect(page.locator(".job-list li")).to_contain_text("Walk-in cooler")
    text = saved(page, "Save to a file")[1]

    assert json.loads(text)["facts"] == {"system": "Walk-in cooler"}


def test_without_scripts_the_page_says_what_it_needs(open_page):
    page = open_page(java_script_enabled=False)
    page.goto(RECORD)

    expect(page.get_by_text("this browser has them switched off")).to_be_visible()
    expect(page.get_by_role("button", name="Start a job")).to_be_hidden()


@both_widths
@both_schemes
def test_the_record_reads_well_and_shuts_nobody_out(open_page, width, scheme, screenshot):
    page = open_page(width=width, scheme=scheme, bypass_csp=True)
    page.goto(RECORD)
    expect(page.locator("job-record")).to_have_attribute("state", "none")
    assert look(page, "axe", RULES) == []
    results = [result(slug) for slug in ("gauge-check", "inside-volume", "pump-check")]
    results.append(result("decay", readings=HOLD))
    choose(page, json.dumps(job(*results, system="Walk-in cooler", site="The bakery")))
    expect(page.locator(".job-sheet .uplot")).to_be_visible()
    assert page.evaluate("document.documentElement.scrollWidth") <= width
    page.mouse.move(0, 0)
    screenshot(page, "record", full_page=True)
    page.locator("job-record details").evaluate_all(
        "(all) => all.map((each) => (each.open = true))"
    )
    assert look(page, "axe", RULES) == []
    small = page.locator("job-record :is(button, summary, .job-tools a, input:not([hidden]))")
    heights = small.evaluate_all(
        """(all) => all.filter((each) => each.checkVisibility())
          .map((each) => each.getBoundingClientRect().height)"""
    )
    assert min(heights) >= 44


def test_the_published_schema_is_the_one_the_guide_keeps(page, site):
    page.goto("/look-up/job-file/")
    page.get_by_role("link", name="job-file.schema.json").wait_for()
    address = page.get_by_role("link", name="job-file.schema.json").get_attribute("href")
    published = page.request.get(f"{site}/look-up/job-file/{address}").json()

    assert published == schema.SCHEMA
    assert page.locator("main, article").first.inner_text().count("facts.") >= 10
