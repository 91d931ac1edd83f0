// @ts-check
/**
 * <job-record state="waking|none|open|shut">: the jobs on this device, the facts of the open
 * one, and its record. What is kept is in job-store.js; the record is made by Python.
 */
import { engine } from "./engine.js";
import { askReader } from "./job-ask.js";
import { JobFacts } from "./job-facts.js";
import { asText, fileName, newJob, shown, titleOf } from "./job-file.js";
import { importJob } from "./job-import.js";
import { isOpenJobEvent, openJobId, setOpenJob } from "./job-open.js";
import { JobSheet } from "./job-sheet.js";
import { changeJob, jobs, listJobs, putJob, readJob, removeJob } from "./job-store.js";
import { saveFile } from "./save-file.js";

/** @typedef {import("./job-file.js").Job} Job */
/** @typedef {import("./job-file.js").Result} Result */

export class JobRecord extends HTMLElement {
  static define(tag = "job-record", registry = customElements) {
    registry.define(tag, this);
    return this;
  }

  /** @type {AbortController | undefined} */
  #listening;
  /** The open job as it is in the store. @type {Job | undefined} */
  #job;
  /** @type {JobFacts} */
  #facts;
  /** @type {JobSheet} */
  #sheet;
  /** Taken out last, to be put back. @type {Result | undefined} */
  #taken;

  connectedCallback() {
    this.#listening = new AbortController();
    const { signal } = this.#listening;
    const form = /** @type {HTMLFormElement} */ (this.querySelector("form"));
    this.#facts = new JobFacts(form, signal, (error) => this.#saved(error));
    this.#sheet = new JobSheet(this.#part("sheet"));
    this.addEventListener("click", this, { signal });
    this.addEventListener("change", this, { signal });
    jobs.addEventListener("jobs", this, { signal });
    addEventListener("storage", this, { signal });
    addEventListener("beforeprint", () => this.#unfold(true), { signal });
    addEventListener("afterprint", () => this.#unfold(false), { signal });
    engine.wake();
    this.#read();
  }

  disconnectedCallback() {
    this.#listening?.abort();
  }

  /** @param {Event} event */
  handleEvent(event) {
    const target = event.target;
    if (event.type === "jobs") this.#read();
    else if (event.type === "storage") isOpenJobEvent(/** @type {StorageEvent} */ (event)) && this.#read();
    else if (event.type === "click") this.#press(/** @type {Element} */ (target).closest("button"));
    else if (target instanceof HTMLInputElement && target.type === "file") this.#import(target);
  }

  /** @param {HTMLButtonElement | null} button */
  async #press(button) {
    const acts = {
      new: () => this.#open(newJob(), "Started a job. Say which system it is."),
      import: () => /** @type {HTMLElement} */ (this.querySelector("[type=file]")).click(),
      open: () => this.#choose(button?.value ?? ""),
      delete: () => this.#delete(button?.value ?? ""),
      close: () => this.#close(),
      print: () => print(),
      json: () => this.#save(),
      csv: () => this.#saveTable(),
      "take-out": () => this.#takeOut(button?.closest("article")?.dataset.result ?? ""),
      "put-back": () => this.#putBack(),
    };
    const act = acts[/** @type {keyof typeof acts} */ (button?.dataset.job)];
    try {
      await act?.();
    } catch (error) {
      this.#say(/** @type {Error} */ (error).message, true);
    }
  }

  // --- which job -------------------------------------------------------------------

  /** Show what the store holds now. */
  async #read() {
    try {
      const [job, all] = await Promise.all([readJob(openJobId()), listJobs()]);
      this.#list(all, job);
      if (job) this.#show(job);
      else this.#showNone();
    } catch (error) {
      this.setAttribute("state", "shut");
      this.#say(/** @type {Error} */ (error).message, true);
    }
  }

  /** @param {Job} job */
  #show(job) {
    const isOther = job.id !== this.#job?.id;
    this.#job = job;
    this.#facts.show(job);
    this.setAttribute("state", "open");
    const about = /** @type {HTMLDetailsElement} */ (this.querySelector(".job-about"));
    if (isOther) about.open = !job.facts.system;
    const { system, site, technician } = job.facts;
    this.#part("about").textContent = [system, site, technician].filter(Boolean).join(", ");
    this.#sheet.show(this.#facts.over(job));
  }

  #showNone() {
    this.#job = undefined;
    this.#sheet.clear();
    this.setAttribute("state", "none");
  }

  /**
   * Keep a job and open it.
   * @param {Job} job
   * @param {string} says
   */
  async #open(job, says) {
    await this.#facts.save();
    await putJob(job);
    setOpenJob(job.id);
    await this.#read();
    this.#say(says);
    this.#begin();
  }

  /** @param {string} id */
  async #choose(id) {
    await this.#facts.save();
    setOpenJob(id);
    await this.#read();
    if (this.#job) this.#say(`Opened ${titleOf(this.#job)}.`);
    this.#begin();
  }

  /** Go to where the open job begins. */
  #begin() {
    const about = /** @type {HTMLDetailsElement} */ (this.querySelector(".job-about"));
    const first = about.open ? about.querySelector("input") : about.querySelector("summary");
    first?.focus();
  }

  async #close() {
    const title = this.#job && titleOf(this.#job);
    await this.#facts.save();
    setOpenJob("");
    await this.#read();
    this.#say(`Closed ${title}. It stays in the list.`);
    /** @type {HTMLElement | null} */ (this.querySelector(".job-none button"))?.focus();
  }

  /** @param {string} id */
  async #delete(id) {
    const job = await readJob(id);
    if (!job) return;
    const count = results(job);
    const question = `Delete ${titleOf(job)} with ${count}? Only a file you saved brings it back.`;
    const sure = await askReader(question, [["delete", "Delete it"], ["", "Keep it"]]);
    if (!sure) return;
    if (id === this.#job?.id) {
      this.#facts.forget();
      setOpenJob("");
    }
    await removeJob(id);
    this.#say(`Deleted ${titleOf(job)}.`);
    /** @type {HTMLElement | null} */ (this.querySelector(".job-list .job-buttons button"))?.focus();
  }

  /**
   * @param {Job[]} all
   * @param {Job | undefined} open
   */
  #list(all, open) {
    const items = all.map((job) => {
      const item = document.createElement("li");
      const [title, about] = [document.createElement("b"), document.createElement("span")];
      title.textContent = job.facts.system || job.facts.site || "System not named";
      about.textContent = `${shown(job.created)}, ${results(job)}`;
      item.append(title, about);
      const isOpen = job.id === open?.id;
      if (isOpen) item.setAttribute("aria-current", "true");
      for (const [does, words] of isOpen ? [["delete", "Delete"]] : [["open", "Open"], ["delete", "Delete"]]) {
        const button = document.createElement("button");
        Object.assign(button, { type: "button", textContent: words, value: job.id });
        button.dataset.job = does;
        button.setAttribute("aria-label", `${words} ${titleOf(job)}`);
        item.append(button);
      }
      return item;
    });
    this.#part("list").replaceChildren(...items);
    this.toggleAttribute("data-any", all.length > 0);
  }

  // --- what is in it -----------------------------------------------------------------

  /** @param {string} id */
  async #takeOut(id) {
    if (!this.#job) return;
    await changeJob(this.#job.id, (job) => {
      this.#taken = job.results.find((each) => each.id === id);
      job.results = job.results.filter((each) => each.id !== id);
    });
    this.#say("Taken out.");
    const back = document.createElement("button");
    Object.assign(back, { type: "button", textContent: "Put it back" });
    back.dataset.job = "put-back";
    this.#part("says").append(" ", back);
    back.focus({ preventScroll: true });
  }

  async #putBack() {
    const taken = this.#taken;
    if (!this.#job || !taken) return;
    await changeJob(this.#job.id, ({ results }) => void results.push(taken));
    this.#taken = undefined;
    this.#say("It is back.");
  }

  /** On paper every number stands open. @param {boolean} printing */
  #unfold(printing) {
    for (const each of this.querySelectorAll(printing ? ".job-numbers:not([open])" : ".job-numbers[data-printing]")) {
      each.toggleAttribute("open", printing);
      each.toggleAttribute("data-printing", printing);
    }
  }

  // --- files ----------------------------------------------------------------------------

  #save() {
    if (!this.#job) return;
    const job = this.#facts.over(this.#job);
    saveFile(fileName(job, "json"), asText(job), "application/json");
    this.#say(`Saved as ${fileName(job, "json")}.`);
  }

  async #saveTable() {
    if (!this.#job) return;
    if (engine.state === "broken") return this.#say("The calculator could not start, so there is no table. Save to a file works.", true);
    const job = this.#facts.over(this.#job);
    const reply = await engine.ask({ do: "job", give: "csv", job }, "job-csv");
    if (!reply) return;
    if (!reply.ok) return this.#say(reply.complaints[0].text, true);
    saveFile(fileName(job, "csv"), reply.csv, "text/csv");
    this.#say(`Saved as ${fileName(job, "csv")}.`);
  }

  /** @param {HTMLInputElement} control */
  async #import(control) {
    const file = control.files?.[0];
    if (!file) return;
    if (engine.state !== "up") this.#say("Checking the file as soon as the calculator is up.");
    try {
      const { job, says } = await importJob(file);
      control.value = ""; // so that the same file can be chosen again
      if (!job) return this.#say(says, true);
      await this.#choose(job.id);
      this.#say(says);
    } catch (error) {
      this.#say(/** @type {Error} */ (error).message, true);
    }
  }

  // --- what the reader is told --------------------------------------------------------------

  /** @param {Error | null} error */
  #saved(error) {
    const line = this.#part("says");
    if (error) this.#say(error.message, true);
    else if (line.textContent) this.#say(""); // typing on: it was read
  }

  /**
   * @param {string} text
   * @param {boolean} [wrong]
   */
  #say(text, wrong = false) {
    const line = this.#part("says");
    line.textContent = text;
    line.toggleAttribute("data-wrong", wrong);
  }

  /** @param {string} name */
  #part(name) {
    return /** @type {HTMLElement} */ (this.querySelector(`[data-part=${name}]`));
  }
}

/** @param {Job} job */
function results(job) {
  const count = job.results.length;
  return count === 1 ? "1 result" : count ? `${count} results` : "no result yet";
}
