// @ts-check
/**
 * What is typed is kept on this device and in the address, so that neither a reload nor a
 * link loses it. What a card came with is not written.
 *
 * @typedef {import("./entries.js").Entries} Entries
 */

const LONGEST_LINK = 6000; // characters; some programs that pass links on cut longer ones

/** @param {string} slug */
const key = (slug) => `dry-tight:entries:${slug}`;

/**
 * What the address fills in, or else what was typed here before.
 * @param {string} slug
 * @param {Entries} defaults
 * @returns {Entries}
 */
export function recall(slug, defaults) {
  const linked = ownsAddress() ? fromQuery(location.search, defaults) : {};
  if (Object.keys(linked).length) return linked;
  try {
    const kept = JSON.parse(localStorage.getItem(key(slug)) ?? "{}");
    return Object.fromEntries(Object.entries(kept).filter(([name]) => name in defaults));
  } catch {
    return {};
  }
}

/**
 * @param {string} slug
 * @param {Entries} changed
 * @returns {boolean} false when the device has no room for it
 */
export function keep(slug, changed) {
  if (ownsAddress()) {
    const query = toQuery(changed);
    const address = new URL(location.href);
    address.search = query.length <= LONGEST_LINK ? query : "";
    if (address.href !== location.href) history.replaceState(history.state, "", address);
  }
  try {
    if (Object.keys(changed).length) localStorage.setItem(key(slug), JSON.stringify(changed));
    else localStorage.removeItem(key(slug));
    return true;
  } catch {
    return false;
  }
}

/**
 * A link to the card's own page, filled in; empty when there is too much for a link.
 * @param {string} slug
 * @param {Entries} changed
 */
export function linkTo(slug, changed) {
  const query = toQuery(changed);
  if (query.length > LONGEST_LINK) return "";
  return new URL(`../../calculators/${slug}/${query && `?${query}`}`, import.meta.url).href;
}

/** One card to a page can have the address to itself. */
function ownsAddress() {
  return document.querySelectorAll("worked-card").length === 1;
}

/** @param {Entries} entries */
function toQuery(entries) {
  const texts = Object.entries(entries).map(([name, entry]) => [
    name,
    typeof entry === "string" ? entry : JSON.stringify(entry),
  ]);
  return new URLSearchParams(texts).toString();
}

/**
 * @param {string} query
 * @param {Entries} defaults
 * @returns {Entries}
 */
function fromQuery(query, defaults) {
  /** @type {Entries} */
  const entries = {};
  for (const [name, text] of new URLSearchParams(query)) {
    if (typeof defaults[name] === "string") entries[name] = text;
    else if (defaults[name]) {
      const rows = rowsOf(text);
      if (rows) entries[name] = rows;
    }
  }
  return entries;
}

/** @param {string} text */
function rowsOf(text) {
  try {
    const rows = JSON.parse(text);
    const fits = Array.isArray(rows) && rows.length < 1000 && rows.every((row) => row && typeof row === "object");
    return fits ? rows.map((row) => Object.fromEntries(Object.entries(row).map(([k, v]) => [k, String(v)]))) : null;
  } catch {
    return null;
  }
}
