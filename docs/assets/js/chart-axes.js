// @ts-check
/**
 * Axes of a chart: where they start and end, which numbers stand on them, how those are set.
 *
 * @typedef {import("./chart.js").Chart} Chart
 * @typedef {import("./chart.js").Axis} Axis
 */
import { font } from "./chart-palette.js";

const FORMAT = new Intl.NumberFormat("en-US", { maximumSignificantDigits: 4 });
const DECADE = 62; // CSS pixels that the number of a decade needs across
const HAIRSPACE = 40; // CSS pixels that two numbers on an axis keep between them

/** @param {number} value */
export const number = (value) => FORMAT.format(value).replace("-", "−");

/** @param {Axis} axis */
export const titleOf = ({ label, unit }) => (unit ? `${label}, ${unit}` : label);

/**
 * @param {Axis} axis
 * @param {import("./chart-palette.js").Palette} palette
 * @param {number} size
 */
export function axisOptions(axis, palette, size) {
  return {
    size,
    gap: 6,
    space: axis.log ? 18 : HAIRSPACE,
    font: font(),
    stroke: palette.quiet,
    grid: { stroke: palette.hair, width: 1, ...(axis.log && { filter: readable }) },
    ticks: { show: false },
    border: { show: true, stroke: palette.quiet, width: 1 },
    ...(axis.log && { splits: logSplits, filter: readable }),
    values: (/** @type {any} */ _, /** @type {(number | null)[]} */ splits) =>
      splits.map((each) => (each === null ? "" : number(each))),
  };
}

/**
 * On a log axis: one to nine of every decade, wherever the axis starts.
 * @param {any} plot
 * @param {number} index
 * @param {number} low
 * @param {number} high
 */
function logSplits(plot, index, low, high) {
  const splits = [];
  for (let power = Math.floor(Math.log10(low)); 10 ** power <= high; power++) {
    for (let lead = 1; lead <= 9; lead++) splits.push(lead * 10 ** power);
  }
  return splits.filter((each) => each >= low * (1 - 1e-9) && each <= high * (1 + 1e-9));
}

/**
 * On a log axis: decades; the twos and fives between them too when there are few. Across a
 * narrow chart only every second or third decade has its number.
 * @param {any} plot
 * @param {number[]} splits
 * @param {number} index
 */
function readable(plot, splits, index) {
  const span = splits[splits.length - 1] / splits[0];
  const leads = span > 150 ? [1] : [1, 2, 5];
  const wide = plot.bbox.width / devicePixelRatio / Math.max(1, Math.log10(span));
  const every = index === 0 ? Math.ceil(DECADE / wide) : 1;
  return splits.map((each) => {
    const power = Math.floor(Math.log10(each) + 1e-9);
    const stands = leads.some((one) => Math.abs(each / 10 ** power - one) < 1e-6);
    return stands && power % every === 0 ? each : null;
  });
}

/**
 * The range of an axis: all series and marks in it, with a little air.
 * @param {Chart} chart
 * @param {"x" | "y"} axis
 * @param {boolean} log
 * @returns {[number, number]}
 */
export function rangeWith(chart, axis, log) {
  let [low, high] = [Infinity, -Infinity];
  const take = (/** @type {number} */ value) => {
    if (log && value <= 0) return;
    low = Math.min(low, value);
    high = Math.max(high, value);
  };
  for (const series of chart.series) {
    series[axis].forEach(take);
    if (axis === "y") series.upper?.forEach(take);
  }
  for (const mark of chart.marks) if (mark.axis === axis) take(mark.at);
  if (low > high) return [0, 1];
  if (log) return axis === "x" ? [low, high] : [low / 1.25, high * 1.25];
  const air = (high - low || Math.abs(high) || 1) * (axis === "x" ? 0.02 : 0.08);
  const start = low >= 0 && low - air < 0 ? 0 : low - air;
  return [axis === "x" && low === 0 ? 0 : start, high + air];
}
