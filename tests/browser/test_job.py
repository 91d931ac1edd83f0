"""The job record as a technician keeps it: added to from cards, printed, saved, never lost."""

import re
import shutil
import subprocess

import pytest
from playwright.sync_api import expect

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
  const full = () => { throw new DOMException("no room", "QuotaExceededError"); };
  IDBObjectStore.prototype.put = full;
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


def saved(page, button):
    """Press a button that gives a file; its name and text."""
    with page.expect_download() as download:
        page.get_by_role("button", name=button).click()
    file = download.value
    return file.suggested_filename, file.path().read_text("utf-8")


def choose(page, text, name="job.json"):
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
