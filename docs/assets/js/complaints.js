// @ts-check
/**
 * Complaints stand under the fields they are about.
 *
 * @typedef {{ input: string, text: string }} Complaint
 */

/** @param {Element} form */
export function hasComplaints(form) {
  return form.querySelector(".complaint:not([hidden])") !== null;
}

/**
 * Write these under their fields and clear all others.
 * @param {Element} form
 * @param {Complaint[]} complaints
 * @returns {string} those that belong to no field
 */
export function writeComplaints(form, complaints) {
  /** @type {Map<Element, string>} */
  const lines = new Map();
  const homeless = [];
  for (const { input, text } of complaints) {
    const field = input && form.querySelector(`[data-input="${CSS.escape(input)}"]`);
    const line = field && field.querySelector(field.matches(".rows") ? ":scope > .complaint" : ".complaint");
    if (line) lines.set(line, text);
    else homeless.push(text);
  }
  for (const line of form.querySelectorAll(".complaint")) {
    const text = lines.get(line);
    if (text !== undefined && line.textContent !== text) line.textContent = text;
    line.toggleAttribute("hidden", text === undefined);
    if (text !== undefined) line.closest("details")?.toggleAttribute("open", true);
    for (const control of form.querySelectorAll(`[aria-describedby~="${CSS.escape(line.id)}"]`)) {
      if (text === undefined) control.removeAttribute("aria-invalid");
      else control.setAttribute("aria-invalid", "true");
    }
  }
  return homeless.join(" ");
}
