// @ts-check
/**
 * The page's colors as a canvas can use them.
 *
 * @typedef {Record<"ink" | "quiet" | "hair" | "sheet" | "leak" | "verdict" | "faint", string>} Palette
 */

/**
 * @param {HTMLElement} place where the colors hold: a card may set its own --v
 * @returns {Palette}
 */
export function paletteAt(place) {
  const probe = document.createElement("span");
  probe.hidden = true;
  place.append(probe);
  const color = (/** @type {string} */ value) => {
    probe.style.color = value;
    return getComputedStyle(probe).color;
  };
  const palette = {
    ink: color("var(--ink)"),
    quiet: color("var(--quiet)"),
    hair: color("var(--hair)"),
    sheet: color("var(--sheet)"),
    leak: color("var(--leak)"),
    verdict: color("var(--v)"),
    faint: color("color-mix(in srgb, var(--v) 18%, transparent)"),
  };
  probe.remove();
  return palette;
}

/** @param {number} [weight] */
export const font = (weight = 500) => `${weight} 13px "Guide Figures", monospace`;
