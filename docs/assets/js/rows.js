// @ts-check
/** Lists of like things in a form: add one, remove one, change their order. */

/**
 * Act on a press of one of a list's buttons.
 * @param {Element} button with data-row: add, remove, up or down
 * @returns {boolean} whether something changed
 */
export function pressRow(button) {
  const field = button.closest(".rows");
  const list = field?.querySelector(":scope > ol");
  if (!field || !list) return false;
  const row = button.closest(".row");
  const action = button.getAttribute("data-row");
  /** @type {Element | null | undefined} */
  let focus = button;
  if (action === "add") focus = append(field, list)?.querySelector("input, select");
  else if (action === "up") row?.previousElementSibling?.before(row);
  else if (action === "down") row?.nextElementSibling?.after(row);
  else if (action === "remove") {
    const next = row?.nextElementSibling ?? row?.previousElementSibling;
    row?.remove();
    focus = next?.querySelector("[data-row=remove]");
  }
  renumber(field, list);
  if (focus instanceof HTMLButtonElement && focus.disabled) {
    focus = focus.parentElement?.querySelector("button:enabled") ?? field.querySelector("[data-row=add]");
  }
  if (focus instanceof HTMLElement) focus.focus();
  return true;
}

/**
 * Make a list this long, before it is filled.
 * @param {Element} field
 * @param {number} count
 */
export function setRowCount(field, count) {
  const list = field.querySelector(":scope > ol");
  if (!list) return;
  while (list.children.length > count) list.lastElementChild?.remove();
  while (list.children.length < count && append(field, list));
  renumber(field, list);
}

/** @param {ParentNode} form */
export function startRows(form) {
  for (const field of form.querySelectorAll(".rows")) {
    const list = field.querySelector(":scope > ol");
    if (list) renumber(field, list);
  }
}

/**
 * @param {Element} field
 * @param {Element} list
 * @returns {Element | null} the new row
 */
function append(field, list) {
  const template = field.querySelector(":scope > template");
  if (!(template instanceof HTMLTemplateElement)) return null;
  list.append(document.importNode(template.content, true));
  return list.lastElementChild;
}

/**
 * Give each row the names that its place asks for, and each button what it can do there.
 * @param {Element} field
 * @param {Element} list
 */
function renumber(field, list) {
  const name = field.getAttribute("data-input") ?? "";
  const noun = field.getAttribute("data-row-name") ?? "row";
  const minimum = Number(field.getAttribute("data-minimum"));
  const maximum = Number(field.getAttribute("data-maximum"));
  const rows = [...list.children];
  rows.forEach((row, i) => {
    for (const element of row.querySelectorAll("*")) {
      for (const attribute of ["id", "name", "for", "data-input", "data-for", "aria-describedby"]) {
        const value = element.getAttribute(attribute);
        if (value === null) continue;
        const inPlace = value
          .replace(new RegExp(`^${name}\\.\\d+\\.`), `${name}.${i}.`)
          .replace(new RegExp(`-${name.replaceAll(".", "-")}-\\d+-`, "g"), `-${name}-${i}-`);
        if (inPlace !== value) element.setAttribute(attribute, inPlace);
      }
    }
    const can = { up: i > 0, down: i < rows.length - 1, remove: rows.length > minimum };
    const says = { up: "Move up", down: "Move down", remove: "Remove" };
    for (const button of row.querySelectorAll("button")) {
      const action = /** @type {keyof can} */ (button.getAttribute("data-row"));
      button.disabled = !can[action];
      button.setAttribute("aria-label", `${says[action]} ${noun} ${i + 1}`);
    }
  });
  const add = field.querySelector(":scope > [data-row=add]");
  if (add instanceof HTMLButtonElement) add.hidden = rows.length >= maximum;
}
