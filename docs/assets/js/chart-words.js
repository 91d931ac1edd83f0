// @ts-check
/** Words on a chart, drawn on uPlot's canvas: titles of axes, names on lines, marks. */
import { font } from "./chart-palette.js";

/** @typedef {import("./chart-palette.js").Palette} Palette */

const DASH = [6, 5];
const LINE = 16; // CSS pixels from one line of words to the next
const NEAR = 36; // CSS pixels: a limit nearer to the top than that has its words there

/**
 * Draw in CSS pixels, whatever the screen's own.
 * @param {any} plot
 * @param {(ink: CanvasRenderingContext2D, box: { left: number, top: number, right: number, bottom: number }) => void} draw
 */
function onCanvas(plot, draw) {
  const { ctx, bbox } = plot;
  const ratio = devicePixelRatio;
  ctx.save();
  ctx.scale(ratio, ratio);
  ctx.font = font();
  const [left, top] = [bbox.left / ratio, bbox.top / ratio];
  draw(ctx, { left, top, right: left + bbox.width / ratio, bottom: top + bbox.height / ratio });
  ctx.restore();
}

/**
 * @param {any} plot
 * @param {string} x
 * @param {string} y
 * @param {Palette} palette
 */
export function drawTitles(plot, x, y, palette) {
  onCanvas(plot, (ink, box) => {
    ink.fillStyle = palette.quiet;
    ink.textBaseline = "alphabetic";
    ink.textAlign = "left";
    ink.fillText(y, 8, box.top - 12);
    ink.textAlign = "right";
    ink.fillText(x, box.right, box.bottom + 38);
  });
}

/**
 * @param {any} plot
 * @param {import("./chart.js").Mark[]} marks
 * @param {Palette} palette
 */
export function drawMarks(plot, marks, palette) {
  onCanvas(plot, (ink, box) => {
    ink.strokeStyle = palette.leak;
    ink.fillStyle = palette.leak;
    ink.lineWidth = 1.5;
    const places = marks.map(({ axis, at }) => plot.valToPos(at, axis) + (axis === "y" ? box.top : box.left));
    ink.setLineDash(DASH);
    marks.forEach(({ axis }, i) => {
      ink.beginPath();
      if (axis === "y") {
        ink.moveTo(box.left, places[i]);
        ink.lineTo(box.right, places[i]);
      } else {
        ink.moveTo(places[i], box.top);
        ink.lineTo(places[i], box.bottom);
      }
      ink.stroke();
    });
    let free = box.top + 14; // the first line that no limit near the top needs
    marks.forEach(({ axis }, i) => {
      if (axis === "y" && places[i] - box.top < NEAR) free = Math.max(free, places[i] + 2 * LINE);
    });
    marks.forEach(({ axis, label, below }, i) => {
      const place = places[i];
      if (axis === "y") {
        const under = below ? box.bottom - place > 20 : place - box.top < 20;
        ink.textAlign = "right";
        write(ink, label, box.right - 4, under ? place + LINE : place - 6, palette);
      } else {
        const needed = ink.measureText(label).width + 10;
        const others = marks.map((mark, j) => (mark.axis === "x" && places[j] > place ? places[j] : box.right));
        const fits = Math.min(...others) - place >= needed || place - box.left < needed;
        ink.textAlign = fits ? "left" : "right";
        write(ink, label, place + (fits ? 6 : -6), free, palette);
      }
    });
  });
}

/**
 * Write on a ground of its own, so that no line runs through the word.
 * @param {CanvasRenderingContext2D} ink
 * @param {string} word
 * @param {number} x
 * @param {number} y
 * @param {Palette} palette
 */
function write(ink, word, x, y, palette) {
  ink.save();
  ink.setLineDash([]);
  ink.strokeStyle = palette.sheet;
  ink.lineWidth = 5;
  ink.lineJoin = "round";
  ink.strokeText(word, x, y);
  ink.restore();
  ink.fillText(word, x, y);
}

/**
 * Names of lines, each at the point that Python chose: right of a line that falls, before one
 * that climbs.
 * @param {any} plot
 * @param {import("./chart.js").Series[]} all
 * @param {Palette} palette
 */
export function drawNames(plot, all, palette) {
  const named = all.filter((each) => ["fit", "curve"].includes(each.role) && each.label && each.x.length);
  onCanvas(plot, (ink, box) => {
    for (const { role, label, x, y, name_at: i } of named) {
      const across = plot.valToPos(x[i], "x") + box.left;
      const down = plot.valToPos(y[i], "y") + box.top;
      ink.fillStyle = role === "fit" ? palette.verdict : palette.ink;
      if (y[y.length - 1] < y[0]) {
        ink.textAlign = "left";
        const most = box.right - 4 - ink.measureText(label).width;
        write(ink, label, Math.min(across + 12, most), Math.max(down - 6, box.top + 12), palette);
      } else {
        ink.textAlign = "right";
        const least = box.left + 4 + ink.measureText(label).width;
        const place = Math.max(least, Math.min(across, box.right - 4));
        write(ink, label, place, down + (down - box.top < 24 ? 20 : -10), palette);
      }
    }
  });
}
