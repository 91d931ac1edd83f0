// @ts-check
/**
 * <practice-bench state="static|waking|up|broken">: gauge, clock, controls, trace and log of a
 * simulated evacuation. Python works it out; here it is shown, and the clock runs.
 */
import { number } from "./chart-axes.js";
import { engine } from "./engine.js";
import { BenchClock, clockText } from "./bench-clock.js";
import { BenchSession } from "./bench-session.js";
import { currentSystem } from "./system.js";

const UNIT = { us: "micron", si: "Pa" };
const FIRST_SPEED = 10;
const CASES = 9999;

export class PracticeBench extends HTMLElement {
  static define(tag = "practice-bench", registry = customElements) {
    registry.define(tag, this);
    return this;
  }

  /** @type {AbortController | undefined} */
  #listening;
  /** @type {BenchSession} */
  #session = new BenchSession(2, 3600);
  /** @type {import("./bench-trace.js").BenchTrace | undefined} */
  #trace;
  #clock = new BenchClock((seconds) => this.#session.pass(seconds), {
    reading: () => this.#showReading(),
    trace: () => this.#showTrace(),
    keep: () => this.#session.keep(),
    tell: () => this.#say(`${this.#time()}: ${this.#reading()}.`),
  });

  connectedCallback() {
    this.#listening = new AbortController();
    const { signal } = this.#listening;
    this.#session = new BenchSession(Number(this.dataset.tick), Number(this.dataset.longest));
    this.#session.addEventListener("bench", this, { signal });
    for (const type of ["click", "submit"]) this.addEventListener(type, this, { signal });
    for (const type of ["system", "visibilitychange"]) document.addEventListener(type, this, { signal });
    engine.addEventListener("engine", this, { signal });
    addEventListener("pagehide", () => this.#session.keep(), { signal });
    engine.wake();
    this.#start();
    this.#startTrace();
    this.#hearEngine();
  }

  disconnectedCallback() {
    this.#listening?.abort();
    this.#clock.stop();
    this.#session.keep();
  }

  #start() {
    const linked = new URLSearchParams(location.search).get("case");
    if (this.#session.recall() && (!linked || linked === String(this.#session.number))) {
      this.#field.value = String(this.#session.number);
      this.#show();
    } else this.#setUp(linked ?? anyCase());
  }

  /** Imported here, since no other page than the bench's should fetch what draws it. */
  async #startTrace() {
    const { BenchTrace } = await import("./bench-trace.js");
    const figure = /** @type {HTMLElement} */ (this.querySelector("figure"));
    this.#trace ??= new BenchTrace(figure);
    const view = this.querySelector('[data-view][aria-pressed="true"]');
    this.#trace.look(view?.getAttribute("data-view") ?? "whole");
    if (this.#session.number) this.#showTrace();
  }

  /** @param {any} event */
  handleEvent(event) {
    if (event.type === "click") this.#press(/** @type {Element} */ (event.target).closest("button"));
    else if (event.type === "submit") this.#submit(event);
    else if (event.type === "bench") this.#hear(event);
    else if (event.type === "engine") this.#hearEngine();
    else if (event.type === "system") {
      this.#show();
      this.#session.reword();
      if (this.#named) this.#mark(this.#named);
    } else if (document.hidden) this.#session.keep();
  }

  /** @param {HTMLButtonElement | null} button */
  #press(button) {
    const { speed, control, value, view, bench } = button?.dataset ?? {};
    if (speed) this.#run(Number(speed));
    else if (control && value) {
      if (!this.#session.speed && !this.#session.actions.length) this.#run(FIRST_SPEED);
      this.#session.act(control, value);
    } else if (view) {
      this.#trace?.look(view);
      for (const each of this.querySelectorAll("[data-view]")) press(each, each === button);
    } else if (bench === "another") {
      this.#setUp(anyCase());
      if (button?.matches(".bench-next")) this.scrollIntoView();
    }
  }

  /** @param {Event} event */
  #submit(event) {
    event.preventDefault();
    const form = /** @type {HTMLFormElement} */ (event.target);
    if (form.classList.contains("bench-choose")) this.#setUp(this.#field.value);
    else this.#mark(String(new FormData(form).get("named") ?? ""));
  }

  get #field() {
    return /** @type {HTMLInputElement} */ (this.querySelector("[name=case]"));
  }

  /** @param {string} number */
  async #setUp(number) {
    this.#complain("");
    if (!(await this.#session.setUp(number))) return;
    this.#named = "";
    this.#part("mark").replaceChildren();
    this.#offerAnother(false);
    this.querySelector(".bench-naming details")?.removeAttribute("open");
    for (const input of this.querySelectorAll("input[name=named]")) /** @type {HTMLInputElement} */ (input).checked = false;
    this.#say(`Case ${this.#session.number} is set up. The pump is off.`);
  }

  // --- the clock ---------------------------------------------------------------------

  /** @param {number} speed */
  #run(speed) {
    this.#session.speed = speed;
    for (const each of this.querySelectorAll("[data-speed]")) {
      press(each, each.getAttribute("data-speed") === String(speed));
    }
    if (speed) this.#clock.start();
    else {
      this.#clock.stop();
      this.#session.keep();
      this.#show();
      this.#say(`Stopped at ${this.#reading()}.`);
    }
  }

  // --- what is shown -------------------------------------------------------------------

  /** @param {import("./bench-session.js").BenchEvent} event */
  #hear({ what, text }) {
    if (what === "complaint") this.#complain(text);
    else if (what === "refused") this.#say(text);
    else if (what === "end") {
      this.#run(0);
      this.#say("Six hours is enough for this case. Say what is wrong, or take another case.");
    } else if (what === "done") {
      const line = this.#session.said[this.#session.said.length - 1];
      if (line) this.#say(`${line[currentSystem()]}.`);
    }
    if (what === "case") {
      this.#field.value = String(this.#session.number);
      this.#run(this.#session.speed);
    }
    this.#show();
  }

  #hearEngine() {
    const state = { asleep: "waking", waking: "waking", up: "up", broken: "broken" }[engine.state];
    this.setAttribute("state", state);
    if (state !== "up") this.#say(engine.says || "Starting the bench.");
    this.#allow();
  }

  /** Nothing can be done before there is a case and somebody to work it out. */
  #allow() {
    const ready = engine.state === "up" && this.#session.number > 0;
    for (const button of this.querySelectorAll("[data-control], [data-speed]")) {
      /** @type {HTMLButtonElement} */ (button).disabled = !ready;
    }
  }

  #show() {
    const { number: which, says, known } = this.#session;
    this.#allow();
    if (!which) return;
    const paragraphs = says.map((text) => Object.assign(document.createElement("p"), { textContent: text }));
    this.querySelector(".bench-situation")?.replaceChildren(...paragraphs);
    for (const button of this.querySelectorAll("[data-control][aria-pressed]")) {
      press(button, known[button.getAttribute("data-control") ?? ""] === button.getAttribute("data-value"));
    }
    for (const group of this.querySelectorAll(".bench-control")) {
      const hint = group.querySelector("[data-part=as-found]");
      if (hint) hint.toggleAttribute("hidden", (group.getAttribute("data-of") ?? "") in known);
    }
    this.#showLog();
    this.#showReading();
    this.#showTrace();
  }

  #showReading() {
    text(this.#part("reading"), number(this.#session.readings[currentSystem()][this.#session.now]));
    text(this.#part("unit"), UNIT[currentSystem()]);
    text(this.#part("clock"), this.#time());
  }

  #showTrace() {
    const { readings, now, tick, actions, target } = this.#session;
    const system = currentSystem();
    this.#trace?.show({
      readings: readings[system],
      count: now + 1,
      tick,
      unit: UNIT[system],
      actions: actions.map(([at]) => at),
      target: target?.[system],
    });
    if (!this.#session.speed) this.#trace?.describe(`Trace of ${this.#time()} on the bench's clock. Now ${this.#reading()}.`);
  }

  #showLog() {
    const lines = this.#session.said.map((line) => {
      const item = document.createElement("li");
      const when = document.createElement("time");
      when.textContent = clockText(line.tick * this.#session.tick);
      item.append(when, ` ${line[currentSystem()]}`);
      return item;
    });
    this.#part("log").replaceChildren(...lines);
    this.#part("no-log").hidden = lines.length > 0;
  }

  #reading() {
    const system = currentSystem();
    return `${number(this.#session.readings[system][this.#session.now])} ${UNIT[system]}`;
  }

  #time() {
    return clockText(this.#session.at);
  }

  // --- naming it -----------------------------------------------------------------------

  #named = "";

  /** @param {string} named */
  async #mark(named) {
    const mark = await this.#session.mark(named);
    if (!mark) return;
    this.#named = named;
    this.#run(0);
    const made = new DOMParser().parseFromString(mark.html, "text/html");
    this.#part("mark").replaceChildren(...[...made.body.children].map((each) => document.importNode(each, true)));
    this.#offerAnother(true);
  }

  /** Under the mark: what one wants then. @param {boolean} offered */
  #offerAnother(offered) {
    this.querySelector(".bench-next")?.toggleAttribute("hidden", !offered);
  }

  /** @param {string} name */
  #part(name) {
    return /** @type {HTMLElement} */ (this.querySelector(`[data-part=${name}]`));
  }

  /** @param {string} words */
  #say(words) {
    text(this.#part("says"), words);
  }

  /** @param {string} words */
  #complain(words) {
    const line = this.#part("complaint");
    text(line, words);
    line.hidden = !words;
    if (words && !this.#session.number) this.#say(words);
  }
}

/**
 * @param {Element} button
 * @param {boolean} pressed
 */
function press(button, pressed) {
  if (button.getAttribute("aria-pressed") !== String(pressed)) button.setAttribute("aria-pressed", String(pressed));
}

/**
 * @param {HTMLElement} element
 * @param {string} words
 */
function text(element, words) {
  if (element.textContent !== words) element.textContent = words;
}

function anyCase() {
  return String(1 + (crypto.getRandomValues(new Uint32Array(1))[0] % CASES));
}
