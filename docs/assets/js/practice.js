// @ts-check
/**
 * <problem-practice data-bank="[[name, topic, level], …]" state="…">: one problem of the bank at a
 * time, set and marked by Python. With #set=… in the address it is a set that was assigned, and
 * with #problem=…&seed=… one problem that somebody linked to.
 *
 * state: static  as built      waking  the calculator is starting     busy  being set or marked
 *        asked   a problem is open    done    answered right, or given up    broken
 */
import { engine } from "./engine.js";
import { PracticeProgress } from "./practice-progress.js";
import { finish, keepPractice, nextKind, readPractice } from "./practice-record.js";
import { answerOf, unitsFollow } from "./quiz-answer.js";
import { pressRow, startRows } from "./rows.js";
import { currentSystem } from "./system.js";

/** @typedef {import("./practice-record.js").Listed} Listed */

export class ProblemPractice extends HTMLElement {
  static define(tag = "problem-practice", registry = customElements) {
    registry.define(tag, this);
    return this;
  }

  /** @type {AbortController | undefined} */
  #listening;
  /** @type {Listed[]} */
  #bank = [];
  #record = readPractice();
  /** The set that was assigned. @type {{ template: string, seed: string, right?: boolean }[] | undefined} */
  #set;
  #place = 0;
  /** Whether this problem was missed, or its answer was opened. */
  #missed = false;
  /** @type {PracticeProgress | undefined} */
  #progress;

  connectedCallback() {
    this.#bank = JSON.parse(this.dataset.bank ?? "[]");
    this.#listening = new AbortController();
    const { signal } = this.#listening;
    for (const type of ["submit", "click", "input", "change", "focusin", "toggle"]) {
      this.addEventListener(type, this, { signal, capture: type === "toggle" });
    }
    document.addEventListener("system", this, { signal });
    engine.addEventListener("engine", this, { signal });
    window.addEventListener("hashchange", this, { signal });
    const place = this.querySelector(".practice-record");
    if (place) {
      this.#progress = new PracticeProgress(/** @type {HTMLElement} */ (place), this.#topics());
      this.#progress.addEventListener("record", () => this.#recordChanged());
    }
    this.#progress?.show(this.#record, this.#bank);
    this.#open();
  }

  disconnectedCallback() {
    this.#listening?.abort();
  }

  get #problem() {
    return /** @type {HTMLElement | null} */ (this.querySelector(".problem"));
  }

  /** @param {Event} event */
  handleEvent(event) {
    const target = /** @type {HTMLElement} */ (event.target);
    if (event.type === "engine") this.#hearEngine();
    else if (event.type === "hashchange") this.#open();
    else if (event.type === "system") this.#again();
    else if (event.type === "focusin") engine.wake();
    else if (event.type === "toggle") this.#opened(target);
    else if (event.type === "submit") {
      event.preventDefault();
      if (target.closest(".problem")) this.#mark();
    } else if (event.type === "click") this.#press(target);
    else if (target.closest(".practice-choice")) {
      if (event.type === "change") this.#next();
    } else if (target.closest(".problem")) this.#typed();
  }

  // --- which problem ---------------------------------------------------------------

  /** Show what the address asks for, or go on where the learner is. */
  async #open() {
    const asked = new URLSearchParams(location.hash.slice(1));
    this.toggleAttribute("assigned", asked.has("set"));
    this.toggleAttribute("no-help", asked.has("set") && !asked.has("help"));
    this.#set = undefined;
    if (asked.has("set")) await this.#openSet(asked);
    else if (asked.has("problem")) this.#show(asked.get("problem") ?? "", asked.get("seed") ?? "1");
    else this.#settle();
  }

  /** @param {URLSearchParams} asked */
  async #openSet(asked) {
    this.querySelector(".practice-place")?.replaceChildren();
    const assignment = {
      seed: asked.get("set"),
      problems: asked.get("problems") ?? "12",
      variants: asked.get("of") ?? asked.get("variant") ?? "1",
      objectives: asked.get("objectives") ?? "",
      levels: asked.get("levels") ?? "",
      title: asked.get("title") ?? "",
    };
    const question = { do: "assignment", give: "set", assignment, variant: asked.get("variant") ?? "1" };
    const reply = await this.#ask(question);
    if (!reply) return;
    if (!reply.ok) {
      this.#say(`This link can't be opened. ${reply.complaints[0].text}`);
      return;
    }
    this.#set = reply.problems;
    this.#place = 0;
    this.dataset.title = reply.title;
    this.#next();
  }

  /** The kinds of problem that fit the learner's choice. @returns {Listed[]} */
  #chosen() {
    const value = (/** @type {string} */ name) =>
      /** @type {HTMLSelectElement | null} */ (this.querySelector(`.practice-choice [name=${name}]`))?.value ?? "";
    const [topic, level] = [value("topic"), value("level")];
    return this.#bank.filter(([, t, l]) => (!topic || t === topic) && (!level || String(l) === level));
  }

  /** @returns {Map<string, string>} */
  #topics() {
    const options = /** @type {NodeListOf<HTMLOptionElement>} */ (this.querySelectorAll("[name=topic] option[value]"));
    return new Map([...options].map((option) => [option.value, option.textContent ?? ""]));
  }

  #next() {
    if (this.#set) {
      const one = this.#set[this.#place];
      if (one) this.#show(one.template, one.seed);
      else this.#sum();
      return;
    }
    if (location.hash) history.replaceState(history.state, "", location.pathname + location.search);
    const listed = this.#chosen();
    if (!listed.length) {
      this.#say("No problem fits. Choose another topic or level.");
      return;
    }
    const name = nextKind(this.#record, listed, this.#problem?.dataset.template ?? "");
    this.#show(name, `${this.#record.salt}-${this.#record.count + 1}`);
  }

  /** The units have changed: the same problem in the other ones, unless something is typed. */
  #again() {
    const problem = this.#problem;
    if (!problem || this.getAttribute("state") === "done") return;
    if (problem.dataset.kind === "numeric" && answerOf(problem)) return;
    if (problem.dataset.kind === "numeric") unitsFollow(problem, currentSystem());
    else this.#show(problem.dataset.template ?? "", problem.dataset.seed ?? "1");
  }

  /**
   * @param {string} template
   * @param {string} seed
   */
  async #show(template, seed) {
    const reply = await this.#ask({ do: "problem", template, seed, system: currentSystem() });
    if (!reply) return;
    if (!reply.ok) {
      this.#say(reply.complaints[0].text);
      return;
    }
    const page = new DOMParser().parseFromString(reply.html, "text/html");
    this.querySelector(".practice-place")?.replaceChildren(...document.adoptNode(page.body).childNodes);
    this.#settle();
    const first = /** @type {HTMLElement | null} */ (this.#problem);
    first?.setAttribute("tabindex", "-1");
    if (document.activeElement && this.contains(document.activeElement)) return;
    if (this.hasAttribute("answered")) first?.focus({ preventScroll: false });
  }

  /** A problem stands there: give it what script adds. */
  #settle() {
    const problem = this.#problem;
    if (!problem) return;
    this.#missed = false;
    startRows(problem);
    const tools = document.createElement("div");
    tools.className = "problem-tools";
    const steps = this.#steps().length;
    if (steps) tools.append(button("Show the first step", "step"));
    tools.append(button("Next problem", "next"), button("Copy a link", "link"));
    problem.querySelector(".problem-tools")?.remove();
    problem.append(tools);
    if (engine.state !== "broken") this.#become("asked");
    this.#sayWhere();
  }

  /** Say where in the set the learner is, or what will come back. */
  #sayWhere() {
    const due = Object.values(this.#record.kinds).filter((kind) => kind.due !== undefined).length;
    if (this.#set) this.#say(`${this.dataset.title}: problem ${this.#place + 1} of ${this.#set.length}.`);
    else if (due) this.#say(`${due} you missed ${due === 1 ? "comes" : "come"} back with new numbers.`);
    else this.#say("");
  }

  // --- answering ------------------------------------------------------------------

  #typed() {
    this.#told({ correct: null, message: "" });
  }

  async #mark() {
    const problem = this.#problem;
    if (!problem) return;
    const answer = answerOf(problem);
    const { template, seed } = problem.dataset;
    const reply = await this.#ask({ do: "mark", template, seed, answer, system: currentSystem() });
    if (!reply || problem !== this.#problem || answerOf(problem) !== answer) return;
    if (!reply.ok) {
      this.#say(reply.complaints[0].text);
      return;
    }
    this.#told(reply.mark);
    this.#sayWhere();
    if (reply.mark.correct === false) this.#missed = true;
    if (reply.mark.correct) this.#finished(!this.#missed);
    else this.#become("asked");
  }

  /** @param {boolean} right */
  #finished(right) {
    const name = this.#problem?.dataset.template;
    if (!name || this.#problem?.hasAttribute("data-finished")) return;
    this.#problem.setAttribute("data-finished", "");
    this.setAttribute("answered", "");
    finish(this.#record, name, right);
    if (!keepPractice(this.#record)) this.#say("This device keeps nothing here: save your record as a file.");
    if (this.#set?.[this.#place]) this.#set[this.#place].right = right;
    this.#progress?.show(this.#record, this.#bank);
    this.#become("done");
    // What comes next is pressed where the answer was checked.
    const next = this.#problem.querySelector("[data-do=next]");
    if (next) this.#problem.querySelector(".quiz-check")?.after(next);
  }

  /** @param {{ correct: boolean | null, message: string }} mark */
  #told({ correct, message }) {
    const problem = this.#problem;
    const output = problem?.querySelector(".quiz-mark");
    if (!problem || !output) return;
    output.textContent = message;
    if (message) problem.dataset.marked = correct === null ? "unread" : correct ? "right" : "wrong";
    else delete problem.dataset.marked;
    const field = problem.querySelector("input[type=text]");
    if (message && correct === null) field?.setAttribute("aria-invalid", "true");
    else field?.removeAttribute("aria-invalid");
  }

  /** Whoever opens the answer has not found it. @param {HTMLElement} details */
  #opened(details) {
    if (details.matches(".quiz-solution[open]") && this.getAttribute("state") !== "done") this.#missed = true;
  }

  /** @param {HTMLElement} target */
  #press(target) {
    const row = target.closest("button[data-row]");
    if (row) {
      if (pressRow(row)) this.#typed();
      return;
    }
    const pressed = target.closest("button[data-do]")?.getAttribute("data-do");
    if (pressed === "step") this.#step(/** @type {HTMLButtonElement} */ (target.closest("button")));
    else if (pressed === "link") this.#link();
    else if (pressed === "next") this.#leave();
    else if (pressed === "start") location.hash = "";
  }

  #leave() {
    const started = this.#missed || this.#set;
    if (started) this.#finished(false);
    this.setAttribute("answered", "");
    if (this.#set) this.#place += 1;
    this.#next();
  }

  #steps() {
    return [...(this.#problem?.querySelectorAll(".quiz-solution .work > li") ?? [])];
  }

  /** Show one more step of the working. @param {HTMLButtonElement} pressed */
  #step(pressed) {
    const problem = this.#problem;
    if (!problem) return;
    this.#missed = true;
    let shown = problem.querySelector(".steps-shown");
    if (!shown) {
      shown = document.createElement("ol");
      shown.className = "work steps-shown";
      shown.setAttribute("aria-live", "polite");
      problem.querySelector(".problem-tools")?.before(shown);
    }
    const steps = this.#steps();
    const step = steps[shown.children.length];
    if (step) shown.append(step.cloneNode(true));
    const left = steps.length - shown.children.length;
    pressed.textContent = left ? `Show the next step (${left} left)` : "That was the last step";
    pressed.disabled = !left;
  }

  async #link() {
    const { template = "", seed = "" } = this.#problem?.dataset ?? {};
    const address = new URL(location.href);
    address.hash = new URLSearchParams({ problem: template, seed }).toString();
    try {
      await navigator.clipboard.writeText(address.href);
      this.#say("The link is copied. It leads anyone to this problem with these numbers.");
    } catch {
      this.#say(`Copy this link: ${address.href}`);
    }
  }

  /** The set is through. */
  #sum() {
    const all = this.#set?.length ?? 0;
    const right = this.#set?.filter((one) => one.right).length ?? 0;
    const line = document.createElement("p");
    line.className = "set-done";
    line.textContent = `${right} of ${all} right at the first try.`;
    const list = document.createElement("ol");
    for (const one of this.#set ?? []) {
      const item = document.createElement("li");
      item.textContent = one.right ? "Right" : "Missed";
      item.dataset.right = String(one.right === true);
      list.append(item);
    }
    const start = button("Practice on your own", "start");
    this.querySelector(".practice-place")?.replaceChildren(line, list, start);
    this.#say(`${this.dataset.title}: done.`);
    this.#become("done");
  }

  // --- the rest ---------------------------------------------------------------------

  #recordChanged() {
    this.#record = readPractice();
    this.#progress?.show(this.#record, this.#bank);
  }

  /** @param {object} question @returns {Promise<any>} null when a newer one took its place */
  #ask(question) {
    const reply = engine.ask(question, "practice");
    this.#become(engine.state === "up" ? "busy" : "waking");
    this.#hearEngine();
    return reply;
  }

  /** What the calculator has to say while it starts, or why it can't. */
  #hearEngine() {
    if (engine.state === "broken") this.#become("broken");
    const waits = ["waking", "busy", "broken"].includes(this.getAttribute("state") ?? "");
    if (waits && engine.state !== "up") this.#say(engine.says);
  }

  /** @param {string} state */
  #become(state) {
    this.setAttribute("state", engine.state === "broken" ? "broken" : state);
  }

  /** @param {string} text */
  #say(text) {
    const line = this.querySelector(".practice-says");
    if (line && line.textContent !== text) line.textContent = text;
  }
}

/**
 * @param {string} text
 * @param {string} does
 */
function button(text, does) {
  const made = document.createElement("button");
  made.type = "button";
  made.textContent = text;
  made.dataset.do = does;
  return made;
}
