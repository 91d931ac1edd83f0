// @ts-check
/**
 * <needle-practice>: a needle to read and a needle that moves. Python draws the dial, says
 * where the needle goes and marks the answers; here it is turned.
 */
import { engine } from "./engine.js";
import { currentSystem } from "./system.js";

const KEY = "dry-tight:needle";
const LASTS = 12_000; // ms that a motion takes on the page
const MOST = 1_000_000;

/** @typedef {{ reading: number, motion: number, right: number, asked: number }} Kept */

export class NeedlePractice extends HTMLElement {
  static define(tag = "needle-practice", registry = customElements) {
    registry.define(tag, this);
    return this;
  }

  /** @type {AbortController | undefined} */
  #listening;
  /** @type {Kept} */
  #kept = { reading: 1, motion: 1, right: 0, asked: 0 };
  /** Whether the needle on show has been marked: only the first try counts. */
  #tried = false;
  /** @type {number[]} */
  #turns = [];
  #frame = 0;

  connectedCallback() {
    this.#listening = new AbortController();
    const { signal } = this.#listening;
    for (const type of ["click", "submit", "change", "input"]) this.addEventListener(type, this, { signal });
    document.addEventListener("system", this, { signal });
    engine.addEventListener("engine", this, { signal });
    this.#kept = recall();
    this.#score();
    this.#draw();
    this.#drawMotion();
    this.#hearEngine();
  }

  disconnectedCallback() {
    this.#listening?.abort();
    cancelAnimationFrame(this.#frame);
  }

  /** @param {Event} event */
  handleEvent(event) {
    const target = /** @type {HTMLElement} */ (event.target);
    if (event.type === "engine") this.#hearEngine();
    else if (event.type === "system") {
      this.#draw();
      this.#drawMotion();
    } else if (event.type === "submit") {
      event.preventDefault();
      this.#check(/** @type {HTMLFormElement} */ (target));
    } else if (event.type === "click") this.#press(target.closest("button"));
    else this.#show(target.closest("form"), "", null);
  }

  /** @param {HTMLButtonElement | null} button */
  #press(button) {
    const does = button?.dataset.needle;
    if (does === "next") {
      this.#keep({ reading: (this.#kept.reading % MOST) + 1 });
      const field = /** @type {HTMLInputElement} */ (this.querySelector("[name=answer]"));
      field.value = "";
      this.#draw();
      field.focus({ preventScroll: true });
    } else if (does === "other") {
      this.#keep({ motion: (this.#kept.motion % MOST) + 1 });
      for (const form of this.querySelectorAll("form.needle-choice")) {
        /** @type {HTMLFormElement} */ (form).reset();
        this.#show(form, "", null);
      }
      this.#part("moving").scrollIntoView({ block: "nearest" });
      this.#drawMotion().then(() => this.#play());
    } else if (does === "play") this.#play();
  }

  // --- asking Python ---------------------------------------------------------------

  /**
   * @param {object} question
   * @param {string} topic
   */
  #ask(question, topic) {
    return engine.ask({ do: "needle", system: currentSystem(), ...question }, topic);
  }

  async #draw() {
    const number = this.#kept.reading;
    this.#tried = false;
    this.#show(this.querySelector("form[data-ask=reading]"), "", null);
    const reply = await this.#ask({ give: "needle", number }, "needle");
    if (!reply?.ok || number !== this.#kept.reading) return;
    this.#put("dial", reply.svg);
    this.#part("unit").textContent = reply.unit;
  }

  async #drawMotion() {
    cancelAnimationFrame(this.#frame);
    const reply = await this.#ask({ give: "motion", number: this.#kept.motion }, "needle motion");
    if (!reply?.ok) return;
    this.#put("moving", reply.svg);
    this.#put("table", reply.table);
    this.#turns = reply.turns;
  }

  /** @param {HTMLFormElement} form */
  async #check(form) {
    const ask = form.dataset.ask ?? "";
    const answer = String(new FormData(form).get(ask === "reading" ? "answer" : ask) ?? "");
    const question =
      ask === "reading"
        ? { give: "reading", number: this.#kept.reading, answer }
        : { give: "moved", number: this.#kept.motion, part: ask, answer };
    if (engine.state !== "up") this.#show(form, engine.says, null);
    const reply = await this.#ask(question, `needle ${ask}`);
    if (!reply) return;
    if (!reply.ok) return this.#show(form, reply.complaints[0].text, null);
    this.#show(form, reply.says, reply.correct);
    if (ask !== "reading" || this.#tried) return;
    this.#tried = true;
    this.#keep({ asked: this.#kept.asked + 1, right: this.#kept.right + (reply.correct ? 1 : 0) });
    this.#score();
  }

  // --- what is shown -----------------------------------------------------------------

  /** Ten minutes of the needle; all at once for who wants little motion. */
  #play() {
    cancelAnimationFrame(this.#frame);
    const began = performance.now();
    const calm = matchMedia("(prefers-reduced-motion: reduce)").matches;
    const hand = this.#part("moving").querySelector(".needle-hand");
    const at = this.#part("moving").querySelector("svg")?.dataset.at;
    if (!hand || !at) return;
    if (calm) this.querySelector(".needle-table")?.setAttribute("open", "");
    const last = this.#turns.length - 1;
    const step = (/** @type {number} */ now) => {
      const share = calm ? 1 : Math.min(Math.max((now - began) / LASTS, 0), 1);
      const place = share * last;
      const low = Math.min(Math.floor(place), last - 1);
      const turn = this.#turns[low] + (place - low) * (this.#turns[low + 1] - this.#turns[low]);
      hand.setAttribute("transform", `translate(${at}) rotate(${turn.toFixed(2)})`);
      if (share < 1) this.#frame = requestAnimationFrame(step);
    };
    this.#frame = requestAnimationFrame(step);
  }

  /**
   * @param {Element | null} form
   * @param {string} says
   * @param {boolean | null} correct
   */
  #show(form, says, correct) {
    const output = form?.querySelector(".quiz-mark");
    if (!form || !output || (output.textContent === "" && !says)) return;
    output.textContent = says;
    form.toggleAttribute("data-marked", Boolean(says));
    if (says) form.setAttribute("data-marked", correct === null ? "unread" : correct ? "right" : "wrong");
  }

  #score() {
    const { right, asked } = this.#kept;
    this.#part("score").textContent = asked ? `${right} of ${asked} right at the first try.` : "";
  }

  #hearEngine() {
    this.setAttribute("state", engine.state);
    if (engine.state === "broken") this.#part("score").textContent = engine.says;
  }

  /**
   * @param {string} part
   * @param {string} html
   */
  #put(part, html) {
    const made = new DOMParser().parseFromString(html, "text/html");
    this.#part(part).replaceChildren(...[...made.body.children].map((each) => document.importNode(each, true)));
  }

  /** @param {string} name */
  #part(name) {
    return /** @type {HTMLElement} */ (this.querySelector(`[data-part=${name}]`));
  }

  /** @param {Partial<Kept>} changed */
  #keep(changed) {
    Object.assign(this.#kept, changed);
    try {
      localStorage.setItem(KEY, JSON.stringify(this.#kept));
    } catch {
      // Not kept, then; the page in hand goes on.
    }
  }
}

/** @returns {Kept} */
function recall() {
  const fresh = { reading: 1, motion: 1, right: 0, asked: 0 };
  try {
    const kept = JSON.parse(localStorage.getItem(KEY) ?? "{}");
    for (const name of /** @type {(keyof Kept)[]} */ (Object.keys(fresh))) {
      if (Number.isInteger(kept[name]) && kept[name] >= 0) fresh[name] = kept[name];
    }
  } catch {
    // Nothing was kept, then.
  }
  return fresh;
}
