// @ts-check
/** The answer to a question, as Python reads it, and back into its form. */
import { fillEntries, readEntries } from "./entries.js";
import { startRows } from "./rows.js";

/**
 * A number with its unit, an option's key, or keys in order.
 * @param {HTMLElement} question
 */
export function answerOf(question) {
  if (question.dataset.kind === "choice") {
    return /** @type {HTMLInputElement | null} */ (question.querySelector("input:checked"))?.value ?? "";
  }
  if (question.dataset.kind === "order") {
    return [...question.querySelectorAll("[data-key]")].map((row) => row.getAttribute("data-key")).join(",");
  }
  const { answer } = readEntries(question);
  return typeof answer === "string" ? answer : "";
}

/**
 * @param {HTMLElement} question
 * @param {string} answer
 */
export function fillAnswer(question, answer) {
  if (question.dataset.kind === "choice") {
    for (const input of question.querySelectorAll("input")) input.checked = input.value === answer;
  } else if (question.dataset.kind === "order") {
    const list = question.querySelector("ol");
    for (const key of answer.split(",")) {
      const row = question.querySelector(`[data-key="${CSS.escape(key)}"]`);
      if (row) list?.append(row);
    }
    startRows(question);
  } else fillEntries(question, { answer });
}

/**
 * A blank field takes the reader's units; a filled one stays as it is.
 * @param {ParentNode} within
 * @param {string} system
 */
export function unitsFollow(within, system) {
  for (const select of within.querySelectorAll("select[data-us]")) {
    const value = select.parentElement?.querySelector("input")?.value;
    const unit = select.getAttribute(`data-${system}`);
    if (!value && unit && select instanceof HTMLSelectElement) select.value = unit;
  }
}
