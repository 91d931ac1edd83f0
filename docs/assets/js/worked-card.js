// @ts-check
/**
 * <worked-card card="slug" state="…">: a form whose answer is already in the page, kept
 * true by Python as the reader types.
 *
 * state: static   as built        waking  the calculator is starting
 *        busy     asking          done    the answer belongs to what is typed
 *        wrong    an entry can't be used; the last answer stands, dimmed
 *        broken   the calculator could not start
 * stale: the answer shown does not belong to what is typed yet
 *
 * Fires AnsweredEvent ("answered") after each new answer.
 */
import { renewAnswer, renewWorking } from "./answer-parts.js";
import { cardTools } from "./card-tools.js";
import { hasComplaints, writeComplaints } from "./complaints.js";
import { convertEntries } from "./convert-entries.js";
import { engine } from "./engine.js";
import { changedEntries, fillEntries, inputs, readEntries, sameEntry, unfold } from "./entries.js";
import { keep, linkTo, recall } from "./memory.js";
import { afterPress } from "./press.js";
import { readingsFrom } from "./readings-file.js";
import { pressRow, setRowCount, startRows } from "./rows.js";
import { currentSystem } from "./system.js";

/** @typedef {import("./entries.js").Entries} Entries */

const PAUSE = { ask: 120, complain: 400, announce: 800 }; // ms after the last keystroke

/** A card has a new answer; `reply` is what Python said. */
export class AnsweredEvent extends Event {
  /** @param {any} reply */
  constructor(reply) {
    super("answered", { bubbles: true });
    this.reply = reply;
  }
}

let cards = 0;

export class WorkedCard extends HTMLElement {
  static define(tag = "worked-card", registry = customElements) {
    registry.define(tag, this);
    return this;
  }

  /** @type {AbortController | undefined} */
  #listening;
  #topic = `card-${++cards}`;
  /** @type {Partial<Record<"ask" | "complain" | "announce", number>>} */
  #timers = {};
  /** What the card came with, in each system's units. @type {{ us: Entries, si: Entries | undefined }} */
  #defaults = { us: {}, si: undefined };
  /** @type {import("./system.js").System} */
  #system = "us";

  get slug() {
    return this.getAttribute("card") ?? "";
  }

  get form() {
    return /** @type {HTMLFormElement} */ (this.querySelector(":scope > form"));
  }

  get output() {
    return /** @type {HTMLOutputElement} */ (this.querySelector(":scope > output"));
  }

  connectedCallback() {
    this.#listening = new AbortController();
    const { signal } = this.#listening;
    for (const type of ["input", "change", "click", "submit", "focusout"]) {
      this.form.addEventListener(type, this, { signal });
    }
    document.addEventListener("system", this, { signal });
    engine.addEventListener("engine", this, { signal });
    this.output.setAttribute("aria-live", "off"); // the announcer says it, after a pause
    if (!this.querySelector(":scope .tools")) this.form.append(cardTools());
    startRows(this.form);
    this.#defaults.us = readEntries(this.form);
    const recalled = recall(this.slug, this.#defaults.us);
    this.#fill(recalled);
    unfold(this.form);
    const changed = Object.keys(changedEntries(recalled, this.#defaults.us)).length > 0;
    this.toggleAttribute("stale", changed || currentSystem() !== "us");
    engine.wake();
    this.#hearEngine();
    this.#followSystem();
  }

  disconnectedCallback() {
    this.#listening?.abort();
    for (const timer of Object.values(this.#timers)) clearTimeout(timer);
  }

  /** @param {Event} event */
  handleEvent(event) {
    const target = /** @type {HTMLElement} */ (event.target);
    if (event.type === "engine") this.#hearEngine();
    else if (event.type === "system") this.#followSystem();
    else if (event.type === "submit") event.preventDefault();
    else if (event.type === "focusout") this.#sayComplaints();
    else if (event.type === "click") this.#press(target.closest("button"));
    else if (target.matches(".file")) this.#readFile(/** @type {HTMLInputElement} */ (target));
    else this.#typed(event.type === "change" ? 0 : PAUSE.ask);
  }

  /** @param {HTMLButtonElement | null} button */
  #press(button) {
    if (button?.dataset.tool === "over") this.#startOver();
    else if (button?.dataset.tool === "link") this.#copyLink();
    else if (button?.dataset.row && pressRow(button)) this.#typed(0);
  }

  // --- asking ----------------------------------------------------------------

  /** @param {number} pause */
  #typed(pause) {
    this.setAttribute("stale", "");
    this.#keep();
    this.#after("ask", pause, () => this.#ask());
  }

  async #ask() {
    this.#become(engine.state === "up" ? "busy" : "waking");
    const entries = readEntries(this.form);
    const question = { do: "answer", card: this.slug, entries, system: this.#system };
    const reply = await afterPress(engine.ask(question, this.#topic));
    if (!reply || !this.isConnected || !sameEntry(/** @type {any} */ (readEntries(this.form)), /** @type {any} */ (entries))) {
      return; // a newer question is on its way
    }
    if (reply.ok) this.#answer(reply);
    else this.#complain(reply.complaints);
  }

  /** @param {any} reply */
  #answer(reply) {
    renewAnswer(this.output, reply.html.answer);
    const working = this.querySelector(":scope > .working");
    if (working) renewWorking(working, reply.html.working);
    this.#complaints = [];
    this.#sayComplaints();
    if (reply.verdict) this.setAttribute("data-code", reply.verdict.code);
    else this.removeAttribute("data-code");
    this.removeAttribute("stale");
    this.#become("done");
    this.#drawChart(reply.chart);
    this.#announce(reply.say);
    this.dispatchEvent(new AnsweredEvent(reply));
  }

  /** @param {object | null} chart */
  async #drawChart(chart) {
    const figure = this.output.querySelector("[data-part=chart]");
    if (!chart || !(figure instanceof HTMLElement)) return;
    const { drawChart } = await import("./chart.js");
    if (figure.isConnected) drawChart(figure, /** @type {any} */ (chart));
  }

  // --- complaints --------------------------------------------------------------

  /** @type {{ input: string, text: string }[]} */
  #complaints = [];

  /** @param {{ input: string, text: string }[]} complaints */
  #complain(complaints) {
    this.#complaints = complaints;
    this.#become("wrong");
    this.#after("complain", hasComplaints(this.form) ? 0 : PAUSE.complain, () => this.#sayComplaints());
    this.#announce(complaints.map((each) => each.text).join(" "));
  }

  async #sayComplaints() {
    clearTimeout(this.#timers.complain);
    await afterPress();
    const homeless = writeComplaints(this.form, this.#complaints);
    if (homeless) this.#say(homeless);
  }

  // --- units, memory, files ------------------------------------------------------

  /** Put what is typed into the reader's units, then ask. */
  async #followSystem() {
    const system = currentSystem();
    if (system !== this.#system) {
      const entries = readEntries(this.form);
      const before = this.#defaults[this.#system] ?? {};
      this.setAttribute("stale", "");
      const given = await this.#converted(system, entries);
      const defaults = this.#defaults[system] ?? (await this.#converted(system, this.#defaults.us));
      if (!given || !defaults || currentSystem() !== system) return this.#ask();
      this.#defaults[system] = defaults;
      this.#system = system;
      const now = readEntries(this.form);
      for (const name of Object.keys(given)) {
        if (!sameEntry(now[name], entries[name])) delete given[name]; // typed since: as typed
        else if (sameEntry(now[name], before[name])) given[name] = defaults[name];
      }
      this.#fill(given);
      this.#keep();
    }
    return this.#ask();
  }

  /**
   * @param {import("./system.js").System} system
   * @param {Entries} entries
   */
  #converted(system, entries) {
    const ask = (/** @type {Entries} */ readable) =>
      engine.ask({ do: "convert", card: this.slug, entries: readable, system }, `${this.#topic}-units`);
    return convertEntries(entries, ask);
  }

  /** @param {Entries} entries */
  #fill(entries) {
    for (const [name, field] of inputs(this.form)) {
      const entry = entries[name];
      if (Array.isArray(entry)) setRowCount(field, entry.length);
    }
    fillEntries(this.form, entries);
  }

  /** Fill in what is known from elsewhere, and ask. @param {Entries} entries */
  enter(entries) {
    this.#fill(entries);
    unfold(this.form);
    this.#typed(0);
  }

  #changed() {
    return changedEntries(readEntries(this.form), this.#defaults[this.#system] ?? this.#defaults.us);
  }

  #keep() {
    if (!keep(this.slug, this.#changed())) {
      this.#say("There is too much here for this device to keep: it will be gone when the page closes.");
    }
  }

  #startOver() {
    this.enter(this.#defaults[this.#system] ?? this.#defaults.us);
    this.#say("Back to the example.");
  }

  async #copyLink() {
    const link = linkTo(this.slug, this.#changed());
    if (!link) return this.#say("There is too much here for a link. It is kept on this device.");
    try {
      await navigator.clipboard.writeText(link);
      this.#say("Link copied. It opens this card as you see it.");
    } catch {
      this.#say(`Copy this link: ${link}`);
    }
  }

  /** @param {HTMLInputElement} control */
  async #readFile(control) {
    const file = control.files?.[0];
    if (!file) return;
    const name = control.dataset.for ?? "";
    const { text, complaint } = await readingsFrom(file);
    control.value = ""; // so that the same file can be chosen again
    if (text === undefined) return this.#complain([{ input: name, text: complaint ?? "" }]);
    this.enter({ [name]: text });
  }

  // --- what the reader is told ------------------------------------------------

  #hearEngine() {
    if (engine.state === "broken") this.#become("broken");
    else if (engine.state === "waking" && this.getAttribute("state") === "static") this.#become("waking");
    this.#say(engine.says);
  }

  /** @param {string} state */
  #become(state) {
    if (engine.state === "broken") state = "broken";
    if (this.getAttribute("state") !== state) this.setAttribute("state", state);
  }

  /** @param {string} text */
  #say(text) {
    const line = this.form.querySelector(".says");
    if (line && line.textContent !== text) line.textContent = text;
  }

  /** @param {string} text */
  #announce(text) {
    const line = this.form.querySelector(".announcer");
    const typing = this.contains(document.activeElement);
    if (typing && line) this.#after("announce", PAUSE.announce, () => (line.textContent = text));
  }

  /**
   * @param {"ask" | "complain" | "announce"} timer
   * @param {number} pause
   * @param {() => void} action
   */
  #after(timer, pause, action) {
    clearTimeout(this.#timers[timer]);
    this.#timers[timer] = setTimeout(action, pause);
  }
}
