// Make the memory snapshot that a browser restores instead of starting Python.
//
//   node scripts/make_snapshot.mjs --stdlib ZIP --app ZIP --out FILE SCRIPT.py
//
// Starts Pyodide from the two shipped archives, runs SCRIPT.py in it, and stores its memory as
// the difference from a Python not yet started: what that has, the .wasm file brings along.
// The format is in docs/assets/js/snapshot.js. Prints Pyodide's build id.
//
// Pyodide does this under names that are not public (_makeSnapshot, _loadSnapshot). So it is
// pinned, and the worker starts Python the ordinary way when anything is not as expected here.
import nodeCrypto, { createHash } from "node:crypto";
import fs from "node:fs";
import os from "node:os";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { MAGIC, trampoline } from "../docs/assets/js/snapshot.js";
import create from "../node_modules/pyodide/pyodide.asm.mjs";
import { loadPyodide } from "../node_modules/pyodide/pyodide.mjs";

const MOST_USED = 29_000_000; // bytes; a heap over 31,457,280 cannot be restored (pyodide#6254)
const GRAIN = 64; // bytes: changed memory is stored in units of this
const NEAR = 256; // bytes: runs nearer to each other than this become one
const AROUND = 4096; // bytes stored around what start-up writes, which may differ by engine

const root = path.dirname(path.dirname(fileURLToPath(import.meta.url)));
const { values: options, positionals: [script] } = parseArgs({
  allowPositionals: true,
  options: { stdlib: { type: "string" }, app: { type: "string" }, out: { type: "string" } },
});
const pyodide = path.join(root, "node_modules/pyodide/");
const at = (/** @type {string} */ name) => path.resolve(root, name);

// The same bytes every time: no clock of this machine, no chance, and an environment that is said here.
let clock = Date.UTC(1980, 0, 1);
Date.now = () => clock;
performance.now = () => 0;
crypto.getRandomValues = nodeCrypto.randomFillSync = (array) => array.fill(0);
const settings = {
  indexURL: pyodide,
  lockFileContents: {
    info: JSON.parse(fs.readFileSync(path.join(pyodide, "pyodide-lock.json"), "utf8")).info,
    packages: {},
  },
  stdLibURL: at(options.stdlib),
  env: { HOME: "/home/pyodide", LANG: "C.UTF-8", PYTHONHASHSEED: "0", _: "python" },
  _sysExecutable: "python",
};

/** Memory as the .wasm file makes it, and as it is when Python is about to start. */
async function freshHeap() {
  const heap = {};
  const seen = new Error("That is all.");
  await loadPyodide({
    ...settings,
    _loadSnapshot: new Uint8Array(0), // so that Python does not start
    createPyodideModule: async (given) => {
      const instantiate = given.instantiateWasm;
      given.instantiateWasm = (imports, use) =>
        instantiate(imports, (instance, module) => {
          heap.born = new Uint8Array(instance.exports.memory.buffer).slice();
          use(instance, module);
        });
      heap.fresh = (await create(given)).HEAPU8.slice();
      throw seen;
    },
  }).catch((error) => {
    if (error !== seen) throw error;
  });
  return heap;
}

/** Overwrite what is free, so that leftovers are neither stored nor told. */
function wipe(module) {
  const end = module._sbrk(0);
  const taken = [];
  for (let size = 1 << 18; size >= 8; size = size > 512 ? Math.floor(size * 0.9) : size - 4) {
    for (;;) {
      const place = module._malloc(size);
      if (place && place + size <= end) {
        module.HEAPU8.fill(0, place, place + size);
        taken.push(place);
      } else {
        if (place) module._free(place);
        break;
      }
    }
  }
  for (const place of taken.reverse()) module._free(place);
  module.HEAPU8.fill(0, module._sbrk(0));
  const stack = [module._emscripten_stack_get_end(), module._emscripten_stack_get_current()];
  module.HEAPU8.fill(0, ...stack);
}

/** The runs of memory to store, as [start, end]. */
function changed(heap, { born, fresh }) {
  const words = [heap, born, fresh].map((bytes) => new Uint32Array(bytes.buffer, bytes.byteOffset, heap.length / 4));
  const [now, first, then] = words;
  const wanted = new Uint8Array(heap.length / GRAIN);
  for (let i = 0; i < now.length; i++) {
    if (now[i] !== then[i]) wanted[(i * 4) / GRAIN | 0] = 1;
    if (first[i] === then[i]) continue;
    // Start-up wrote here; in another engine it may have written a little further.
    const near = [i * 4 - AROUND, i * 4 + AROUND].map((byte) => Math.floor(byte / GRAIN));
    wanted.fill(1, Math.max(near[0], 0), near[1] + 1);
  }
  const runs = [];
  for (let grain = 0; grain < wanted.length; grain++) {
    if (!wanted[grain]) continue;
    const start = grain * GRAIN;
    const last = runs.at(-1);
    if (last && start - last[1] <= NEAR) last[1] = start + GRAIN;
    else runs.push([start, start + GRAIN]);
  }
  return runs;
}

/** The file: see snapshot.js. */
function packed(heap, config, runs) {
  const json = config + " ".repeat(-config.length & 3);
  const table = 16 + json.length;
  const contents = runs.reduce((sum, [start, end]) => sum + end - start, 0);
  const file = new Uint8Array(table + runs.length * 8 + contents);
  new Uint32Array(file.buffer, 0, 4).set([MAGIC, heap.length, json.length, runs.length]);
  file.set(new TextEncoder().encode(json), 16);
  new Uint32Array(file.buffer, table, runs.length * 2).set(runs.flatMap(([a, b]) => [a, b - a]));
  let place = table + runs.length * 8;
  for (const [start, end] of runs) {
    file.set(heap.subarray(start, end), place);
    place += end - start;
  }
  return file;
}

// Without this, node prints the line of an error: the whole of Pyodide, which is one line.
process.on("uncaughtException", (error) => {
  console.error(String(error.stack).slice(-2000));
  process.exit(1);
});
const fresh = await freshHeap();
const python = await loadPyodide({ ...settings, _makeSnapshot: true });
clock += 60_000; // or the folder that this fills would look unchanged to Python
python.unpackArchive(new Uint8Array(fs.readFileSync(at(options.app))), "zip", {
  extractDir: python.runPython("import site; site.getsitepackages()[0]"),
});
python.runPython(fs.readFileSync(at(script), "utf8"));
const module = python._module;
wipe(module);
module.HEAP32[trampoline(module)] = 0;
const used = module._sbrk(0);
if (used > MOST_USED) throw new Error(`The heap uses ${used} bytes; ${MOST_USED} is the most.`);
const whole = python.makeMemorySnapshot();
const [, offset, configBytes] = new Uint32Array(whole.buffer, whole.byteOffset, 3);
const config = new TextDecoder().decode(whole.subarray(48, 48 + configBytes));
const heap = whole.slice(offset);
const file = packed(heap, config, changed(heap, fresh));
const text = Buffer.from(file.buffer).toString("latin1");
for (const word of [root, os.homedir(), os.hostname(), os.userInfo().username, process.execPath]) {
  const known = word.length < 6 || ["/", "python"].includes(word);
  if (!known && text.includes(word)) throw new Error(`The snapshot holds a word of this machine: ${word}`);
}
fs.writeFileSync(at(options.out), file);
const digest = (bytes) => createHash("sha256").update(bytes).digest("hex");
console.log(JSON.stringify({ build: module.API.config.BUILD_ID, heap: digest(heap), sha256: digest(file) }));
process.exit(0);
