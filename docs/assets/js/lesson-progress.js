// @ts-check
/**
 * <lesson-progress>: the list of lessons, with how far the learner is in each.
 * Each li[data-lesson] gets data-done: none, some or all.
 */
import { countRight, forgetAll, readRecord } from "./learn-record.js";

export class LessonProgress extends HTMLElement {
  static define(tag = "lesson-progress", registry = customElements) {
    registry.define(tag, this);
    return this;
  }

  /** @type {AbortController | undefined} */
  #listening;

  connectedCallback() {
    this.#listening = new AbortController();
    const { signal } = this.#listening;
    this.addEventListener("click", this, { signal });
    window.addEventListener("storage", this, { signal });
    window.addEventListener("pageshow", this, { signal });
    this.#show();
  }

  disconnectedCallback() {
    this.#listening?.abort();
  }

  /** @param {Event} event */
  handleEvent(event) {
    const button = event.type === "click" && /** @type {HTMLElement} */ (event.target).closest("button");
    if (button instanceof HTMLButtonElement) this.#press(button);
    else if (event.type !== "click") this.#show();
  }

  /** A second press forgets; the first one only asks. @param {HTMLButtonElement} button */
  #press(button) {
    if (!button.hasAttribute("data-sure")) {
      button.setAttribute("data-sure", "");
      button.textContent = "Forget every answer? Press again";
      return;
    }
    forgetAll();
    this.#show();
    this.#line("Forgotten. Start with any lesson.");
  }

  #show() {
    const record = readRecord();
    const items = [...this.querySelectorAll("li[data-lesson]")];
    let finished = 0;
    /** @type {Element | undefined} */
    let next;
    for (const item of items) {
      const names = (item.getAttribute("data-questions") ?? "").split(" ");
      const right = countRight(record[item.getAttribute("data-lesson") ?? ""], names);
      const all = right === names.length;
      if (all) finished += 1;
      else next ??= item;
      item.setAttribute("data-done", all ? "all" : right ? "some" : "none");
      const line = item.querySelector(".lesson-done");
      if (line) line.textContent = all ? `Done: ${right} of ${right}` : said(right, names.length);
    }
    const started = Object.keys(record).length > 0;
    for (const item of items) item.toggleAttribute("data-next", started && item === next);
    if (!started) this.#line("What you answer is kept on this device, and nowhere else.");
    else if (!next) this.#line("Every lesson is done.");
    else {
      const done = finished ? `${finished} of ${items.length} lessons done. ` : "";
      this.#line(`${done}Next: ${next.querySelector("a")?.textContent}.`);
    }
    this.#forgetButton(started);
  }

  /** @param {boolean} wanted */
  #forgetButton(wanted) {
    this.querySelector(":scope > button")?.remove();
    if (!wanted) return;
    const button = document.createElement("button");
    button.type = "button";
    button.className = "progress-forget";
    button.textContent = "Forget my answers";
    this.append(button);
  }

  /** @param {string} text */
  #line(text) {
    const line = this.querySelector(".progress-says");
    if (line && line.textContent !== text) line.textContent = text;
  }
}

/**
 * @param {number} right
 * @param {number} all
 */
function said(right, all) {
  return right ? `${right} of ${all} right` : `${all} questions`;
}
