// @ts-check
/**
 * What is typed in a card's form, as the texts that Python reads ("500 micron"), and back.
 *
 * @typedef {string | Record<string, string>[]} Entry a text, or a list of rows of texts
 * @typedef {Record<string, Entry>} Entries
 */

/**
 * @param {Element} form
 * @returns {Entries}
 */
export function readEntries(form) {
  /** @type {Entries} */
  const entries = {};
  for (const [name, field] of inputs(form)) {
    entries[name] = field.matches(".rows")
      ? [...field.querySelectorAll(":scope > ol > .row")].map((row) =>
          Object.fromEntries([...row.querySelectorAll(".ask-row")].map((cell) => [column(cell), textOf(cell)])),
        )
      : textOf(field);
  }
  return entries;
}

/**
 * Put texts into the form; inputs that are not named are left alone. Rows must be there.
 * @param {Element} form
 * @param {Entries} entries
 */
export function fillEntries(form, entries) {
  for (const [name, field] of inputs(form)) {
    const entry = entries[name];
    if (typeof entry === "string") fillField(field, entry);
    else if (entry && field.matches(".rows")) {
      const rows = field.querySelectorAll(":scope > ol > .row");
      entry.forEach((texts, i) => {
        for (const cell of rows[i]?.querySelectorAll(".ask-row") ?? []) {
          const text = texts[column(cell)];
          if (text !== undefined) fillField(cell, text);
        }
      });
    }
  }
}

/**
 * The inputs of a card: name and the element that holds all of one.
 * @param {Element} form
 * @returns {[string, Element][]}
 */
export function inputs(form) {
  return [...form.querySelectorAll("[data-input]")]
    .filter((field) => !field.parentElement?.closest("[data-input]"))
    .map((field) => [field.getAttribute("data-input") ?? "", field]);
}

/**
 * @param {Entry | undefined} one
 * @param {Entry | undefined} other
 */
export function sameEntry(one, other) {
  return JSON.stringify(one) === JSON.stringify(other);
}

/**
 * The entries that are not what the card came with.
 * @param {Entries} entries
 * @param {Entries} defaults
 * @returns {Entries}
 */
export function changedEntries(entries, defaults) {
  return Object.fromEntries(Object.entries(entries).filter(([name, entry]) => !sameEntry(entry, defaults[name])));
}

/**
 * Open what is folded away where something in it is not what the card came with.
 * @param {Element} form
 */
export function unfold(form) {
  for (const fold of form.querySelectorAll("details.fold")) {
    const changed = [...fold.querySelectorAll("input")].some((each) => each.value !== each.defaultValue);
    const chosen = [...fold.querySelectorAll("option:checked")].some((each) => !each.matches("[selected], :first-child"));
    fold.toggleAttribute("open", changed || chosen || fold.matches("[open]"));
  }
}

/** @param {Element} cell */
function column(cell) {
  return (cell.getAttribute("data-input") ?? "").split(".").at(-1) ?? "";
}

/** @param {Element} field */
function textOf(field) {
  const [value, unit] = controls(field);
  const text = value.value.trim();
  if (!unit || !text || namesUnit(text)) return text;
  return `${text} ${unit.value}`;
}

/**
 * A number with letters behind it brings a unit of its own ("66 Pa"); 1e-3 does not.
 * @param {string} text
 */
function namesUnit(text) {
  return /[\p{L}°%"]/u.test(text.replace(/(\d\.?)e([+\-−]?\d)/i, "$1$2"));
}

/**
 * @param {Element} field
 * @param {string} text
 */
function fillField(field, text) {
  const [value, unit] = controls(field);
  const named = [...(unit?.options ?? [])]
    .map((option) => option.value)
    .filter((name) => text.endsWith(` ${name}`))
    .sort((a, b) => b.length - a.length)[0];
  if (unit && named) {
    value.value = text.slice(0, -named.length).trim();
    unit.value = named;
  } else {
    value.value = text;
  }
}

/**
 * The control that holds the value, and the unit's, if it has one.
 * @param {Element} field
 * @returns {[HTMLInputElement | HTMLSelectElement | HTMLTextAreaElement, HTMLSelectElement | null]}
 */
function controls(field) {
  const value = /** @type {HTMLInputElement} */ (
    field.querySelector("input:not([type=file]), textarea, select:not([name$='.unit'])")
  );
  return [value, field.querySelector("select[name$='.unit']")];
}
