// @ts-check
/**
 * Draws a card's chart in the place of the one from the build: data in ink, fit in the
 * verdict's color, limits dashed and named on the line. uPlot does the drawing.
 *
 * @typedef {{ label: string, unit: string, log: boolean }} Axis
 * @typedef {{ label: string, role: string, x: number[], y: number[], upper: number[] | null, name_at: number }} Series
 * @typedef {{ axis: "x" | "y", at: number, label: string, below?: boolean }} Mark
 * @typedef {{ title: string, summary: string, x: Axis, y: Axis, series: Series[], marks: Mark[] }} Chart
 */
import uPlot from "../vendor/uPlot.js";
import { BESIDE, axisOptions, number, rangeWith, titleOf } from "./chart-axes.js";
import { drawMarks, drawNames, drawTitles } from "./chart-words.js";
import { paletteAt } from "./chart-palette.js";

const ORDER = ["band", "curve", "fit", "reading"]; // from the back to the front
const MOST_POINTS = 400; // more readings than this are drawn as a line

/** @type {WeakMap<HTMLElement, LiveChart>} */
const charts = new WeakMap();

/**
 * @param {HTMLElement} figure
 * @param {Chart} chart
 */
export function drawChart(figure, chart) {
  const live = charts.get(figure) ?? new LiveChart(figure);
  charts.set(figure, live);
  live.show(chart);
}

class LiveChart {
  /** @type {Chart | undefined} */
  #chart;
  /** @type {any} */
  #plot;
  /** Log or linear as the reader chose, if they did. @type {boolean | undefined} */
  #log;
  /** The series the cursor walks along: its index, and where it has values. */
  #walk = { series: 1, at: /** @type {number[]} */ ([]) };

  /** @param {HTMLElement} figure */
  constructor(figure) {
    this.figure = figure;
    this.box = /** @type {HTMLElement} */ (figure.querySelector(".plot"));
    this.readout = document.createElement("p");
    this.readout.setAttribute("role", "status");
    this.button = document.createElement("button");
    this.button.type = "button";
    this.button.textContent = "Log scale";
    this.button.addEventListener("click", () => {
      this.#log = !this.#isLog();
      this.#draw();
    });
    const tools = document.createElement("div");
    tools.className = "chart-tools";
    tools.append(this.readout, this.button);
    figure.append(tools);
    addStyles();
    this.box.tabIndex = 0;
    this.box.setAttribute("role", "img");
    this.box.addEventListener("keydown", (event) => this.#key(event));
    this.box.addEventListener("blur", () => this.#rest());
    new ResizeObserver(() => this.#resize()).observe(this.box);
    document.addEventListener("theme", () => this.#draw());
    document.fonts.ready.then(() => this.#draw());
    addEventListener("beforeprint", () => this.#print(true));
    addEventListener("afterprint", () => this.#print(false));
  }

  /** @param {Chart} chart */
  show(chart) {
    const drawn = { ...chart, series: [...chart.series].sort((a, b) => ORDER.indexOf(a.role) - ORDER.indexOf(b.role)) };
    this.#chart = drawn;
    this.box.setAttribute("aria-label", `${chart.summary || chart.title} Left and right arrow keys read it out.`);
    this.#draw();
  }

  #isLog() {
    return this.#log ?? this.#chart?.y.log ?? false;
  }

  #draw() {
    const chart = this.#chart;
    if (!chart || !this.box.clientWidth) return;
    const palette = paletteAt(this.figure);
    const y = { ...chart.y, log: this.#isLog() };
    const { data, series, bands } = lines(chart.series, palette);
    this.#walk = walkAlong(chart.series, data);
    const plot = new uPlot(
      {
        width: this.box.clientWidth,
        height: this.box.clientHeight,
        padding: [30, BESIDE, 0, 0],
        pxAlign: 0,
        legend: { show: false },
        cursor: {
          y: false,
          drag: { x: false, y: false },
          points: { size: 11, width: 2, stroke: palette.ink, fill: palette.sheet },
          dataIdx: (/** @type {any} */ _, /** @type {number} */ one, /** @type {number} */ index) =>
            one === this.#walk.series ? nearest(this.#walk.at, index) : null,
        },
        scales: {
          x: { time: false, distr: chart.x.log ? 3 : 1, range: rangeWith(chart, "x", chart.x.log) },
          y: { distr: y.log ? 3 : 1, range: rangeWith(chart, "y", y.log) },
        },
        axes: [axisOptions(chart.x, palette, 46), axisOptions(y, palette, 70)],
        series: [{}, ...series],
        bands,
        hooks: {
          draw: [
            (/** @type {any} */ u) => {
              drawTitles(u, titleOf(chart.x), titleOf(y), palette);
              drawMarks(u, chart.marks, palette);
              drawNames(u, chart.series, palette);
            },
          ],
          setCursor: [(/** @type {any} */ u) => this.#read(u.cursor.idx)],
        },
      },
      data,
      document.createElement("div"),
    );
    this.#plot?.destroy();
    this.#plot = plot;
    this.box.replaceChildren(plot.root);
    const canBeLog = chart.series.every((each) => each.y.every((value) => value > 0));
    this.button.hidden = !canBeLog;
    this.button.setAttribute("aria-pressed", String(y.log));
  }

  #resize() {
    if (!this.#plot || !this.box.clientWidth) return;
    this.#plot.setSize({ width: this.box.clientWidth, height: this.box.clientHeight });
  }

  // --- reading it out -----------------------------------------------------------

  /** @param {number | null | undefined} index */
  #read(index) {
    const chart = this.#chart;
    if (index == null || !chart || !this.#plot) {
      this.readout.textContent = "";
      return;
    }
    const at = nearest(this.#walk.at, index);
    const [x, y] = [this.#plot.data[0][at], this.#plot.data[this.#walk.series][at]];
    this.readout.textContent = `${number(x)} ${chart.x.unit}: ${number(y)} ${chart.y.unit}`;
  }

  /** @param {KeyboardEvent} event */
  #key(event) {
    const { at } = this.#walk;
    const step = { ArrowLeft: -1, ArrowRight: 1, Home: -Infinity, End: Infinity }[event.key];
    if (event.key === "Escape") this.#rest();
    if (step === undefined || !this.#plot || !at.length) return;
    event.preventDefault();
    const now = this.#plot.cursor.idx;
    const from = now == null ? (step > 0 ? -1 : at.length) : at.indexOf(nearest(at, now));
    const to = at[Math.min(Math.max(from + step, 0), at.length - 1)];
    const { data } = this.#plot;
    const left = this.#plot.valToPos(data[0][to], "x");
    this.#plot.setCursor({ left, top: this.#plot.valToPos(data[this.#walk.series][to], "y") });
  }

  #rest() {
    this.#plot?.setCursor({ left: -10, top: -10 });
  }

  /** @param {boolean} starts */
  #print(starts) {
    document.documentElement.toggleAttribute("data-printing", starts); // handbook.css: light
    this.#draw();
  }
}

/**
 * All series on one x axis, as uPlot wants them.
 * @param {Series[]} all
 * @param {import("./chart-palette.js").Palette} palette
 */
function lines(all, palette) {
  const tables = [];
  const series = [];
  const bands = [];
  for (const { role, x, y, upper } of all) {
    if (!x.length) continue;
    if (role === "band" && upper) {
      tables.push([x, upper, y]);
      const edge = { stroke: "transparent", points: { show: false }, spanGaps: true };
      series.push(edge, edge);
      bands.push({ series: [series.length - 1, series.length], fill: palette.faint });
      continue;
    }
    tables.push([x, y]);
    if (role === "reading" && x.length <= MOST_POINTS) {
      series.push({
        paths: () => null,
        points: { show: true, size: 8, width: 0, fill: palette.ink, stroke: palette.ink },
      });
    } else {
      const stroke = role === "fit" ? palette.verdict : palette.ink;
      const width = role === "reading" ? 1 : 2.5;
      series.push({ stroke, width, pxAlign: 0, points: { show: false }, spanGaps: true });
    }
  }
  return { data: uPlot.join(tables), series, bands };
}

/**
 * What the cursor follows: the readings, or else the first line.
 * @param {Series[]} all
 * @param {number[][]} data
 */
function walkAlong(all, data) {
  const columns = all.filter((each) => each.x.length).flatMap((each) => (each.role === "band" ? ["band", "band"] : [each.role]));
  const wanted = columns.includes("reading") ? columns.indexOf("reading") : columns.findIndex((role) => role !== "band");
  const series = Math.max(wanted, 0) + 1;
  const at = [];
  for (let i = 0; i < data[0].length; i++) if (data[series]?.[i] != null) at.push(i);
  return { series, at };
}

/**
 * @param {number[]} sorted
 * @param {number} wanted
 */
function nearest(sorted, wanted) {
  let [low, high] = [0, sorted.length - 1];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (sorted[middle] < wanted) low = middle + 1;
    else high = middle;
  }
  const before = sorted[low - 1];
  return before !== undefined && wanted - before <= sorted[low] - wanted ? before : sorted[low];
}

function addStyles() {
  if (document.querySelector("link[data-chart]")) return;
  const link = document.createElement("link");
  link.rel = "stylesheet";
  link.href = new URL("../vendor/uPlot.css", import.meta.url).href;
  link.dataset.chart = "";
  document.head.append(link);
}
