// @ts-check
/**
 * The facts of a job, saved as they are typed: at once as a draft, after a pause in the store.
 *
 * @typedef {import("./job-file.js").Job} Job
 */
import { drafts, dropDrafts, keepDraft } from "./job-drafts.js";
import { changeJob } from "./job-store.js";

const PAUSE = 400; // ms after the last keystroke

export class JobFacts {
  /** Typed and not yet in the store. @type {Record<string, string>} */
  #pending = {};
  #id = "";
  #timer = 0;

  /**
   * @param {HTMLFormElement} form
   * @param {AbortSignal} signal
   * @param {(error: Error | null) => void} told after each attempt to save
   */
  constructor(form, signal, told) {
    this.form = form;
    this.told = told;
    form.addEventListener("submit", (event) => event.preventDefault(), { signal });
    form.addEventListener("input", ({ target }) => this.#typed(/** @type {HTMLInputElement} */ (target)), { signal });
    form.addEventListener("change", () => this.save(), { signal });
    addEventListener("pagehide", () => this.save(), { signal });
    document.addEventListener("visibilitychange", () => document.hidden && this.save(), { signal });
  }

  /**
   * Show a job's facts; what is being typed stays. Drafts that a crash left are taken up.
   * @param {Job} job
   */
  show(job) {
    if (job.id !== this.#id) {
      this.save();
      this.#id = job.id;
      this.#pending = drafts(job.id);
      if (Object.keys(this.#pending).length) this.save();
    }
    const facts = this.over(job).facts;
    for (const control of this.#controls()) {
      const text = facts[control.name] ?? "";
      if (control.value !== text) control.value = text;
    }
  }

  /**
   * A job with what is typed already in it, saved or not.
   * @param {Job} job
   * @returns {Job}
   */
  over(job) {
    const facts = { ...job.facts };
    if (job.id === this.#id) write(facts, this.#pending);
    return { ...job, facts };
  }

  /** Leave a job that is no more. */
  forget() {
    dropDrafts(this.#id, drafts(this.#id));
    this.#id = "";
    this.#pending = {};
  }

  async save() {
    clearTimeout(this.#timer);
    const [id, texts] = [this.#id, { ...this.#pending }];
    if (!id || !Object.keys(texts).length) return;
    try {
      await changeJob(id, ({ facts }) => write(facts, texts));
      for (const [name, text] of Object.entries(texts)) {
        if (id === this.#id && this.#pending[name] === text) delete this.#pending[name];
      }
      dropDrafts(id, texts);
      this.told(null);
    } catch (error) {
      this.told(/** @type {Error} */ (error)); // it stays pending, and in the form
    }
  }

  /** @param {HTMLInputElement} control */
  #typed(control) {
    this.#pending[control.name] = control.value;
    keepDraft(this.#id, control.name, control.value);
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => this.save(), PAUSE);
  }

  #controls() {
    return /** @type {NodeListOf<HTMLInputElement>} */ (this.form.querySelectorAll("input, textarea"));
  }
}

/**
 * A fact without a text is left out of the file.
 * @param {Record<string, string>} facts
 * @param {Record<string, string>} texts
 */
function write(facts, texts) {
  for (const [name, text] of Object.entries(texts)) {
    if (text.trim()) facts[name] = text;
    else delete facts[name];
  }
}
