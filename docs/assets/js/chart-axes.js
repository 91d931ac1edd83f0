// @ts-check
/**
 * Axes of a chart: where they start and end, which numbers stand on them, how those are set.
 *
 * @typedef {import("./chart.js").Chart} Chart
 * @typedef {import("./chart.js").Axis} Axis
 */
import { font } from "./chart-palette.js";

const FORMAT = new Intl.NumberFormat("en-US", { maximumSignificantDigits: 4 });
const FIGURE = 7.8; // CSS pixels that a figure is wide
const HAIRSPACE = 40; // CSS pixels that two numbers on an axis keep between them
const LINE = 15; // CSS pixels that numbers above each other need
const LEADS = [[1, 2, 5], [1, 3], [1]]; // what numbers of a decade start with, the most first

/** CSS pixels right of the plot, into which a number may reach. */
export const BESIDE = 18;

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
 * On a log axis: as many numbers of each decade as there is room for, at most 1, 2, 5; across a
 * narrow chart only every second or third decade has one.
 * @param {any} plot
 * @param {number[]} splits
 * @param {number} index
 */
function readable(plot, splits, index) {
  const across = index === 0;
  const [low, high] = [splits[0], splits[splits.length - 1]];
  const long = (across ? plot.bbox.width : plot.bbox.height) / devicePixelRatio;
  const decade = long / Math.max(1, Math.log10(high / low));
  const width = (/** @type {number} */ value) => FIGURE * number(value).length;
  const need = across ? Math.max(width(low), width(high)) + 8 : LINE;
  const leads = high / low > 150 ? [1] : LEADS.find((some) => closest(some) * decade >= need) ?? [1];
  const every = across ? Math.ceil(need / decade) : 1;
  return splits.map((each) => {
    const power = Math.floor(Math.log10(each) + 1e-9);
    const stands = leads.some((one) => Math.abs(each / 10 ** power - one) < 1e-6) && power % every === 0;
    const right = Math.log10(high / each) * decade + BESIDE; // from its middle to the chart's edge
    return stands && (!across || width(each) / 2 <= right) ? each : null;
  });
}

/** The least step between the numbers of a decade, as a part of it. @param {number[]} leads */
function closest(leads) {
  const steps = leads.map((lead, i) => Math.log10((leads[i + 1] ?? 10) / lead));
  return Math.min(...steps);
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
