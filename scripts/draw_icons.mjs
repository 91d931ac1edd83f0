/**
 * The icon as the PNGs that phones want, drawn from docs/assets/icon.svg.
 *
 *     node scripts/draw_icons.mjs FOLDER
 *
 * A maskable icon fills its square and keeps the drawing within the middle, since a phone
 * may cut it to a circle.
 */
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { Resvg } from "@resvg/resvg-js";

const svg = readFileSync(new URL("../docs/assets/icon.svg", import.meta.url), "utf8");
const ground = /<rect[^>]* fill="(#[0-9A-Fa-f]{6})"/.exec(svg)[1];
const whole = svg.replace('viewBox="0 0 32 32"', 'viewBox="-3 -3 38 38"');
const folder = process.argv[2];

function draw(name, drawing, size, options = {}) {
  const picture = new Resvg(drawing, { fitTo: { mode: "width", value: size }, font: { loadSystemFonts: false }, ...options });
  writeFileSync(join(folder, name), picture.render().asPng());
}

mkdirSync(folder, { recursive: true });
draw("192.png", svg, 192);
draw("512.png", svg, 512);
draw("maskable-512.png", whole, 512, { background: ground });
draw("touch-180.png", whole, 180, { background: ground });
