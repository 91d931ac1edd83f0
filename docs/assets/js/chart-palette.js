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
  // With forced colors a canvas is left to us: the reader's own two, then.
  const forced = matchMedia("(forced-colors: active)").matches;
  const probe = document.createElement("span");
  probe.hidden = true;
  probe.style.setProperty("forced-color-adjust", "none");
  place.append(probe);
  const color = (/** @type {string} */ value, theirs = "CanvasText") => {
    probe.style.color = forced ? theirs : value;
    return getComputedStyle(probe).color;
  };
  const palette = {
    ink: color("var(--ink)"),
    quiet: color("var(--quiet)"),
    hair: color("var(--hair)", "GrayText"),
    sheet: color("var(--sheet)", "Canvas"),
    leak: color("var(--leak)"),
    verdict: color("var(--v)"),
    faint: color("color-mix(in srgb, var(--v) 18%, transparent)", "color-mix(in srgb, CanvasText 18%, transparent)"),
  };
  probe.remove();
  return palette;
}

/** @param {number} [weight] */
export const font = (weight = 500) => `${weight} 13px "Guide Figures", monospace`;
