// @ts-check
/**
 * <live-decay state="idle|running|judging">: a clock that starts when the valve is shut, a
 * field for what the gauge shows, and the list of readings. Each reading goes into the decay
 * card of the page, which judges the whole log anew.
 */
import { asClock, asReading, asText, isLogEvent, keepLog, recallLog } from "./live-log.js";

/** @typedef {import("./live-log.js").Log} Log */

const SURE = 5000; // ms in which a second press clears the log

export class LiveDecay extends HTMLElement {
  static define(tag = "live-decay", registry = customElements) {
    registry.define(tag, this);
    return this;
  }

  /** @type {AbortController | undefined} */
  #listening;
  /** @type {Log | null} */
  #log = null;
  #ticking = 0;
  #asked = 0;
  /** @type {any} */
  #awake;

  connectedCallback() {
    this.#listening = new AbortController();
    const { signal } = this.#listening;
    this.addEventListener("click", this, { signal });
    this.addEventListener("submit", this, { signal });
    document.addEventListener("visibilitychange", this, { signal });
    addEventListener("storage", this, { signal });
    this.#ticking = setInterval(() => this.#tick(), 500);
    this.#log = recallLog();
    this.#show();
    customElements.whenDefined("worked-card").then(() => this.#judge());
  }

  disconnectedCallback() {
    this.#listening?.abort();
    clearInterval(this.#ticking);
    this.#sleep();
  }

  /** @param {Event} event */
  handleEvent(event) {
    if (event.type === "submit") {
      event.preventDefault();
      this.#add();
    } else if (event.type === "click") this.#press(/** @type {Element} */ (event.target).closest("button"));
    else if (event.type === "storage") {
      if (isLogEvent(/** @type {StorageEvent} */ (event))) this.#change(recallLog(), false);
    } else if (!document.hidden) {
      this.#tick(); // the screen was locked: the clock is read, not counted
      this.#stayAwake();
    }
  }

  /** @param {HTMLButtonElement | null} button */
  #press(button) {
    const does = button?.dataset.live;
    if (does === "start") this.#start();
    else if (does === "clear") this.#clear(/** @type {HTMLButtonElement} */ (button));
    else if (does === "remove" && this.#log) {
      const { start, readings } = this.#log;
      this.#change({ start, readings: readings.filter((each) => String(each.at) !== button?.value) });
    }
  }

  // --- the log ---------------------------------------------------------------------

  #start() {
    const ago = Number(this.#control("ago").value.replace(",", "."));
    const minutes = Number.isFinite(ago) && ago > 0 ? Math.min(ago, 10_000) : 0;
    this.#change({ start: Date.now() - minutes * 60_000, readings: [] });
    this.#stayAwake();
    this.#control("reading").focus();
  }

  #add() {
    const field = this.#control("reading");
    const reading = asReading(field.value);
    this.#complain(reading ? "" : "Type the number on the gauge, above zero.");
    if (!reading || !this.#log) return field.focus();
    const entry = { at: Date.now(), reading, unit: this.#control("unit").value };
    field.value = "";
    this.#change({ start: this.#log.start, readings: [...this.#log.readings, entry] });
    // On a phone the keyboard would stand in front of the verdict.
    if (matchMedia("(pointer: coarse)").matches) field.blur();
    else field.focus();
  }

  /** @param {HTMLButtonElement} button */
  #clear(button) {
    if (Date.now() - this.#asked > SURE) {
      this.#asked = Date.now();
      button.textContent = "Press again to clear all";
      setTimeout(() => (button.textContent = "Clear and start over"), SURE);
      return;
    }
    this.#asked = 0;
    button.textContent = "Clear and start over";
    this.#change(null);
    this.#sleep();
  }

  /**
   * @param {Log | null} log
   * @param {boolean} keep
   */
  #change(log, keep = true) {
    this.#log = log;
    if (keep && !keepLog(log)) this.#complain("This browser keeps nothing: leave the page open until you are done.");
    this.#show();
    this.#judge();
  }

  /** Put the log into the page's decay card, which does the rest. */
  #judge() {
    const card = document.querySelector("worked-card[card=decay]");
    const field = card?.querySelector("textarea[name=readings]");
    if (!this.#log || this.#log.readings.length < 2 || !(field instanceof HTMLTextAreaElement)) return;
    const text = asText(this.#log);
    if (field.value === text) return;
    field.value = text;
    field.dispatchEvent(new Event("change", { bubbles: true }));
  }

  // --- what is shown ----------------------------------------------------------------

  #show() {
    const count = this.#log?.readings.length ?? 0;
    this.setAttribute("state", !this.#log ? "idle" : count < 2 ? "running" : "judging");
    if (this.#log) {
      const started = new Date(this.#log.start).toLocaleTimeString([], { hour: "2-digit", minute: "2-digit" });
      this.#part("since").textContent = `since the valve was shut, ${started}`;
      this.#part("wants").textContent =
        count === 0 ? "Add the first reading now." : count === 1 ? "Add one a minute: the verdict starts with the second." : "";
    }
    this.#part("count").textContent = count ? `${count} reading${count > 1 ? "s" : ""}` : "No readings";
    this.#part("list").replaceChildren(...(this.#log?.readings ?? []).map((each) => this.#row(each)).reverse());
    this.#tick();
  }

  /** @param {import("./live-log.js").Reading} each */
  #row({ at, reading, unit }) {
    const row = document.createElement("li");
    const when = document.createElement("time");
    when.textContent = asClock(at - (this.#log?.start ?? at));
    const what = document.createElement("span");
    what.textContent = `${reading} ${unit}`;
    const remove = document.createElement("button");
    Object.assign(remove, { type: "button", value: String(at), textContent: "Remove" });
    remove.dataset.live = "remove";
    remove.setAttribute("aria-label", `Remove ${reading} ${unit} at ${when.textContent}`);
    row.append(when, what, remove);
    return row;
  }

  #tick() {
    if (!this.#log) return;
    const now = Date.now();
    this.#part("clock").textContent = asClock(now - this.#log.start);
    const last = this.#log.readings.at(-1);
    const ago = last && now - last.at < 10_000 ? "just now" : `${asClock(now - (last?.at ?? now))} ago`;
    this.#part("last").textContent = last ? `${last.reading} ${last.unit}, ${ago}` : "none yet";
  }

  /** @param {string} text */
  #complain(text) {
    const line = this.#part("complaint");
    line.textContent = text;
    line.hidden = !text;
  }

  /** @param {string} name */
  #part(name) {
    return /** @type {HTMLElement} */ (this.querySelector(`[data-part=${name}]`));
  }

  /** @param {string} name */
  #control(name) {
    return /** @type {HTMLInputElement} */ (this.querySelector(`[name=${name}]`));
  }

  // --- the screen --------------------------------------------------------------------

  async #stayAwake() {
    if (!this.#log || this.#awake) return;
    try {
      this.#awake = await /** @type {any} */ (navigator).wakeLock?.request("screen");
      this.#awake?.addEventListener("release", () => (this.#awake = undefined));
    } catch {
      // The device decides; the clock does not depend on it.
    }
  }

  #sleep() {
    this.#awake?.release();
    this.#awake = undefined;
  }
}
