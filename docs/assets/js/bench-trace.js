// @ts-check
/**
 * The bench's trace: a line that grows, drawn by uPlot. Unlike a card's chart it is not made
 * anew for each answer, so that it keeps up with a clock that runs hundreds of times too fast.
 */
import uPlot from "../vendor/uPlot.js";
import { axisOptions, number } from "./chart-axes.js";
import { drawMarks, drawTitles } from "./chart-words.js";
import { font, paletteAt } from "./chart-palette.js";

/** @typedef {{ readings: number[], count: number, tick: number, unit: string, actions: number[], target?: import("./bench-session.js").Target }} Drawn */

const SPANS = [5, 10, 20, 30, 45, 60, 90, 120, 180, 240, 300, 360]; // minutes across
const LEAST = 2; // minutes across, since the last action
const NUMBER_GAP = 15; // CSS pixels between the numbers of two actions
const LOW = 260; // CSS pixels: on a plot not higher, the unit of time stands at the last number

export class BenchTrace {
  /** @type {any} */
  #plot;
  /** @type {Drawn | undefined} */
  #drawn;
  /** @type {number[]} */
  #minutes = [];
  /** "whole", or "last": since the last action, evenly scaled. */
  view = "whole";
  #range = { x: [0, 10], y: [10, 9e5] };

  /** @param {HTMLElement} figure */
  constructor(figure) {
    this.figure = figure;
    this.box = /** @type {HTMLElement} */ (figure.querySelector(".plot"));
    this.readout = /** @type {HTMLElement} */ (figure.querySelector(".bench-readout"));
    this.box.tabIndex = 0;
    this.box.setAttribute("role", "img");
    this.box.setAttribute("aria-label", "Pressure over time. It is drawn once the bench runs.");
    this.box.addEventListener("keydown", (event) => this.#key(event));
    this.box.addEventListener("blur", () => this.#rest());
    addStyles();
    new ResizeObserver(() => this.#resize()).observe(this.box);
    document.addEventListener("theme", () => this.#make());
    document.fonts.ready.then(() => this.#make());
  }

  /** @param {Drawn} drawn */
  show(drawn) {
    const before = this.#drawn;
    this.#drawn = drawn;
    if (!this.#plot || before?.unit !== drawn.unit || this.#log !== this.#isLog()) this.#make();
    else if (this.#grown(before)) this.#renew();
  }

  /** Whether there is a pixel more to draw, or something else is new. @param {Drawn} before */
  #grown(before) {
    const drawn = /** @type {Drawn} */ (this.#drawn);
    const [low, high] = this.#range.x;
    const pixel = ((high - low) * 60) / this.box.clientWidth / drawn.tick;
    const fewer = drawn.count < this.#count || drawn.actions.length !== before.actions.length;
    return fewer || drawn.readings !== before.readings || drawn.count - this.#count >= pixel;
  }

  /** @param {string} view */
  look(view) {
    this.view = view;
    this.#make();
  }

  /** Said for whoever does not see it. @param {string} text */
  describe(text) {
    this.box.setAttribute("aria-label", `${text} Left and right arrow keys read it out.`);
  }

  #log = true;
  /** Readings that stand on the plot. */
  #count = 0;

  #isLog() {
    return this.view === "whole";
  }

  #renew() {
    this.#plot?.setData(this.#data(), true);
  }

  /** @returns {[number[], number[]]} */
  #data() {
    const { readings, count, tick, actions } = /** @type {Drawn} */ (this.#drawn);
    while (this.#minutes.length < count) this.#minutes.push((this.#minutes.length * tick) / 60);
    this.#count = count;
    const first = this.view === "last" ? Math.min(actions[actions.length - 1] ?? 0, count - 1) : 0;
    const x = this.#minutes.slice(first, count);
    const y = readings.slice(first, count);
    this.#range = this.view === "last" ? near(x, y) : whole(x[x.length - 1], this.#drawn?.unit === "Pa");
    return [x, y];
  }

  #make() {
    if (!this.#drawn || !this.box.clientWidth) return;
    const { unit } = this.#drawn;
    const palette = paletteAt(this.figure);
    const log = this.#isLog();
    this.#log = log;
    const axes = { x: { label: "Bench time", unit: "min", log: false }, y: { label: "Gauge", unit, log } };
    const data = this.#data();
    const flat = this.box.clientHeight <= LOW;
    const plot = new uPlot(
      {
        width: this.box.clientWidth,
        height: this.box.clientHeight,
        padding: flat ? [28, 30, 0, 0] : [32, 16, 0, 0],
        pxAlign: 0,
        legend: { show: false },
        cursor: { y: false, drag: { x: false, y: false }, points: { size: 9, fill: palette.sheet, stroke: palette.ink } },
        scales: {
          x: { time: false, range: () => this.#range.x },
          y: { distr: log ? 3 : 1, range: () => this.#range.y },
        },
        axes: [flat ? minutesAxis(axes.x, palette) : axisOptions(axes.x, palette, 46), axisOptions(axes.y, palette, 66)],
        series: [{}, { stroke: palette.ink, width: 2, pxAlign: 0, points: { show: false } }],
        hooks: {
          draw: [
            (/** @type {any} */ u) => {
              drawTitles(u, flat ? "" : "Bench time, min", `Gauge, ${unit}`, palette);
              this.#drawActions(u, palette);
              const mark = this.#drawn?.target;
              const [low, high] = this.#range.y;
              if (mark && mark.at > low && mark.at < high) drawMarks(u, [{ axis: "y", ...mark, below: true }], palette);
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
  }

  /**
   * A hairline where something was done, with its number in the list.
   * @param {any} plot
   * @param {import("./chart-palette.js").Palette} palette
   */
  #drawActions(plot, palette) {
    const { actions, tick } = /** @type {Drawn} */ (this.#drawn);
    const { ctx, bbox } = plot;
    const ratio = devicePixelRatio;
    const [top, bottom] = [bbox.top / ratio, (bbox.top + bbox.height) / ratio];
    let free = -Infinity;
    ctx.save();
    ctx.scale(ratio, ratio);
    ctx.font = font(600);
    ctx.textAlign = "center";
    ctx.strokeStyle = palette.quiet;
    ctx.fillStyle = palette.ink;
    ctx.lineWidth = 1;
    actions.forEach((at, index) => {
      const minute = (at * tick) / 60;
      if (minute < this.#range.x[0] - 1e-9 || minute > this.#range.x[1]) return;
      const x = plot.valToPos(minute, "x") + bbox.left / ratio;
      ctx.globalAlpha = 0.55;
      ctx.beginPath();
      ctx.moveTo(x, top);
      ctx.lineTo(x, bottom);
      ctx.stroke();
      ctx.globalAlpha = 1;
      if (x < free) return;
      ctx.fillText(String(index + 1), Math.max(x, bbox.left / ratio + 5), top + 12);
      free = x + NUMBER_GAP;
    });
    ctx.restore();
  }

  #resize() {
    if (!this.#plot || this.#plot.height <= LOW !== this.box.clientHeight <= LOW) this.#make();
    else if (this.box.clientWidth) this.#plot.setSize({ width: this.box.clientWidth, height: this.box.clientHeight });
  }

  /** @param {number | null | undefined} index */
  #read(index) {
    const value = index == null ? null : this.#plot?.data[1][index];
    if (value == null || !this.#drawn) this.readout.textContent = "";
    else this.readout.textContent = `${number(this.#plot.data[0][index])} min: ${number(value)}`;
  }

  /** @param {KeyboardEvent} event */
  #key(event) {
    const step = { ArrowLeft: -1, ArrowRight: 1, Home: -Infinity, End: Infinity }[event.key];
    if (event.key === "Escape") this.#rest();
    if (step === undefined || !this.#plot) return;
    event.preventDefault();
    const [x, y] = this.#plot.data;
    const stride = Math.max(Math.round(x.length / 60), 1);
    const now = this.#plot.cursor.idx ?? (step > 0 ? -stride : x.length - 1 + stride);
    const to = Math.min(Math.max(now + step * stride, 0), x.length - 1);
    this.#plot.setCursor({ left: this.#plot.valToPos(x[to], "x"), top: this.#plot.valToPos(y[to], "y") });
  }

  #rest() {
    this.#plot?.setCursor({ left: -10, top: -10 });
  }
}

/**
 * An axis of one line, with the unit at its last number.
 * @param {import("./chart-axes.js").Axis} axis
 * @param {import("./chart-palette.js").Palette} palette
 */
function minutesAxis(axis, palette) {
  const options = axisOptions(axis, palette, 26);
  return {
    ...options,
    space: 46,
    values: (/** @type {any} */ plot, /** @type {number[]} */ splits) =>
      options.values(plot, splits).map((each, index) => (index === splits.length - 1 ? `${each} min` : each)),
  };
}

/**
 * @param {number} minutes
 * @param {boolean} pascal
 */
function whole(minutes, pascal) {
  const span = SPANS.find((each) => each >= minutes * 1.02) ?? SPANS[SPANS.length - 1];
  return { x: [0, span], y: pascal ? [1, 1.2e5] : [10, 9e5] };
}

/**
 * @param {number[]} x
 * @param {number[]} y
 */
function near(x, y) {
  let [low, high] = [Infinity, -Infinity];
  for (const value of y) {
    if (value < low) low = value;
    if (value > high) high = value;
  }
  const air = Math.max((high - low) * 0.12, high * 0.03, 1);
  const wide = Math.max(x[x.length - 1] - x[0], LEAST);
  return { x: [x[0], x[0] + wide * 1.05], y: [Math.max(low - air, 0), high + air] };
}

function addStyles() {
  if (document.querySelector("link[data-chart]")) return;
  const link = document.createElement("link");
  link.rel = "stylesheet";
  link.href = new URL("../vendor/uPlot.css", import.meta.url).href;
  link.dataset.chart = "";
  document.head.append(link);
}
