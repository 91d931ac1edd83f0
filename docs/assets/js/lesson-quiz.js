// @ts-check
/**
 * <lesson-quiz lesson="slug" state="…">: the questions of a lesson, marked by Python.
 *
 * state: static  as built        waking  the calculator is starting
 *        busy    being marked    done    marked
 *        broken  the calculator could not start
 *
 * Each .quiz-question gets data-marked: right, wrong, unread, or waiting for Python.
 */
import { engine } from "./engine.js";
import { countRight, keepGiven, readRecord } from "./learn-record.js";
import { answerOf, fillAnswer, unitsFollow } from "./quiz-answer.js";
import { pressRow, startRows } from "./rows.js";
import { currentSystem } from "./system.js";

/** @typedef {import("./learn-record.js").Given} Given */

export class LessonQuiz extends HTMLElement {
  static define(tag = "lesson-quiz", registry = customElements) {
    registry.define(tag, this);
    return this;
  }

  /** @type {AbortController | undefined} */
  #listening;
  /** The question that waits for its mark. @type {HTMLElement | undefined} */
  #asked;

  get lesson() {
    return this.getAttribute("lesson") ?? "";
  }

  get questions() {
    return /** @type {HTMLElement[]} */ ([...this.querySelectorAll(".quiz-question")]);
  }

  connectedCallback() {
    this.#listening = new AbortController();
    const { signal } = this.#listening;
    for (const type of ["submit", "click", "focusin", "input", "change"]) {
      this.addEventListener(type, this, { signal });
    }
    document.addEventListener("system", this, { signal });
    engine.addEventListener("engine", this, { signal });
    startRows(this);
    this.#followSystem();
    this.#recall();
    this.#count();
  }

  disconnectedCallback() {
    this.#listening?.abort();
  }

  /** @param {Event} event */
  handleEvent(event) {
    const target = /** @type {HTMLElement} */ (event.target);
    const question = /** @type {HTMLElement | null} */ (target.closest?.(".quiz-question") ?? null);
    if (event.type === "engine") this.#hearEngine();
    else if (event.type === "system") this.#followSystem();
    else if (event.type === "focusin") engine.wake();
    else if (!question) return;
    else if (event.type === "submit") this.#submit(event, question);
    else if (event.type === "click") this.#press(target.closest("button[data-row]"), question);
    else this.#changed(question);
  }

  /**
   * @param {Element | null} button
   * @param {HTMLElement} question
   */
  #press(button, question) {
    if (button && pressRow(button)) this.#changed(question);
  }

  /**
   * What is typed is kept before it is checked; the old mark no longer belongs to it.
   * @param {HTMLElement} question
   */
  #changed(question) {
    if (this.#asked === question) this.#asked = undefined;
    this.#show(question, { correct: null, message: "" });
    this.#keep(question, { answer: answerOf(question), correct: null, message: "" });
  }

  /**
   * @param {Event} event
   * @param {HTMLElement} question
   */
  async #submit(event, question) {
    event.preventDefault();
    const answer = answerOf(question);
    const name = question.dataset.question ?? "";
    const ask = { do: "mark", lesson: this.lesson, question: name, answer, system: currentSystem() };
    const marking = engine.ask(ask, `mark ${name}`);
    this.#become(engine.state === "up" ? "busy" : "waking");
    this.#asked = question;
    this.#hearEngine();
    const reply = await marking;
    if (this.#asked === question) this.#asked = undefined;
    if (!reply || !this.isConnected || answerOf(question) !== answer) return; // answered anew
    const given = { answer, correct: reply.mark.correct, message: reply.mark.message };
    this.#become("done");
    this.#show(question, given);
    this.#keep(question, given);
    this.#count();
  }

  /**
   * @param {HTMLElement} question
   * @param {{ correct: boolean | null, message: string }} mark
   */
  #show(question, { correct, message }) {
    const output = question.querySelector(".quiz-mark");
    if (output && output.textContent !== message) output.textContent = message;
    if (!message) delete question.dataset.marked;
    else question.dataset.marked = correct === null ? "unread" : correct ? "right" : "wrong";
    const field = question.querySelector("input[type=text]");
    if (message && correct === null && engine.state === "up") field?.setAttribute("aria-invalid", "true");
    else field?.removeAttribute("aria-invalid");
  }

  /**
   * @param {HTMLElement} question
   * @param {Given} given
   */
  #keep(question, given) {
    if (!keepGiven(this.lesson, question.dataset.question ?? "", given)) {
      this.#say("This device keeps nothing here: your answers will be gone when the page closes.");
    }
  }

  /** Put back what was answered before. */
  #recall() {
    const record = readRecord()[this.lesson] ?? {};
    for (const question of this.questions) {
      const given = record[question.dataset.question ?? ""];
      if (typeof given?.answer !== "string") continue;
      fillAnswer(question, given.answer);
      this.#show(question, { correct: given.correct ?? null, message: String(given.message ?? "") });
    }
  }

  /** Say how many are right. */
  #count() {
    const names = this.questions.map((question) => question.dataset.question ?? "");
    const right = countRight(readRecord()[this.lesson], names);
    const all = right === names.length;
    this.toggleAttribute("finished", all);
    if (right) this.#say(all ? "All right. This lesson is done." : `${right} of ${names.length} right.`);
    else this.#say("");
  }

  /** A blank field follows the reader's units; a filled one stays as it is. */
  #followSystem() {
    unitsFollow(this, currentSystem());
  }

  /** What the calculator has to say stands where its mark will. */
  #hearEngine() {
    if (engine.state === "broken") this.#become("broken");
    else if (engine.state === "up" && this.getAttribute("state") === "waking") this.#become("busy");
    if (!this.#asked || engine.state === "up") return;
    this.#show(this.#asked, { correct: null, message: engine.says });
    if (engine.state !== "broken") this.#asked.dataset.marked = "waiting";
  }

  /** @param {string} state */
  #become(state) {
    if (engine.state === "broken") state = "broken";
    if (this.getAttribute("state") !== state) this.setAttribute("state", state);
  }

  /** @param {string} text */
  #say(text) {
    const line = this.querySelector(".quiz-score");
    if (line && line.textContent !== text) line.textContent = text;
  }
}
