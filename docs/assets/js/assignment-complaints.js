// @ts-check
/** Puts each complaint under its own field. */

/**
 * @param {HTMLFormElement} form
 * @param {{ input: string, text: string }[]} complaints
 * @returns {string} what belongs to no field
 */
export function showComplaints(form, complaints) {
  for (const place of form.querySelectorAll(".complaint")) {
    const name = place.getAttribute("data-for") ?? "";
    const mine = complaints.find((each) => each.input === name);
    place.textContent = mine?.text ?? "";
    place.toggleAttribute("hidden", !mine);
    const field = form.elements.namedItem(name);
    if (!(field instanceof HTMLElement)) continue;
    if (mine) field.setAttribute("aria-invalid", "true");
    else field.removeAttribute("aria-invalid");
  }
  const first = form.querySelector("[aria-invalid=true]");
  if (first instanceof HTMLElement) first.focus();
  return complaints
    .filter((each) => !form.querySelector(`.complaint[data-for="${CSS.escape(each.input)}"]`))
    .map((each) => each.text)
    .join(" ");
}
