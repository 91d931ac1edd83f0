// @ts-check
/** Puts a new answer in the place of the old one, touching only the parts that changed. */

/** What each part was last made from. @type {WeakMap<Element, string>} */
const sources = new WeakMap();

/** The chart is left to whatever draws it; its caption is not. */
const isChart = (/** @type {Element} */ part) => part.matches("[data-part=chart]");

/**
 * @param {Element} output
 * @param {string} html the parts of the new answer
 */
export function renewAnswer(output, html) {
  const old = new Map(partsOf(output).map((part) => [nameOf(part), part]));
  const wanted = parse(html).map((part) => renewed(old.get(nameOf(part)), part));
  for (const part of old.values()) if (!wanted.includes(part)) part.remove();
  let place = output.firstElementChild;
  for (const part of wanted) {
    if (part === place) place = place.nextElementSibling;
    else output.insertBefore(part, place);
  }
}

/**
 * @param {Element | undefined} old
 * @param {Element} fresh
 * @returns {Element} the one to show
 */
function renewed(old, fresh) {
  if (!old) return fresh;
  const source = fresh.outerHTML;
  if ((sources.get(old) ?? old.outerHTML) === source) return old;
  if (isChart(old)) {
    const caption = old.querySelector("figcaption");
    if (caption) caption.textContent = fresh.querySelector("figcaption")?.textContent ?? "";
    return old;
  }
  if (old instanceof HTMLDetailsElement) {
    fresh.toggleAttribute("open", old.open);
    sources.set(fresh, source);
  }
  return fresh;
}

/**
 * The steps of the working, renewed inside their <details>, which stays open or shut.
 * @param {Element} details
 * @param {string} html
 */
export function renewWorking(details, html) {
  const [fresh] = parse(html);
  const old = details.querySelector(".work");
  if (fresh && old && fresh.outerHTML !== old.outerHTML) old.replaceWith(fresh);
}

/** @param {string} html */
function parse(html) {
  const made = new DOMParser().parseFromString(html, "text/html");
  return [...made.body.children].map((each) => document.importNode(each, true));
}

/** @param {Element} output */
const partsOf = (output) => [...output.children].filter((each) => each.hasAttribute("data-part"));

/** @param {Element} part */
const nameOf = (part) => part.getAttribute("data-part");
