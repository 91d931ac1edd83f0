// @ts-check
/**
 * Python, in a worker of its own: hands each question to calculators.outputs.browser.reply.
 * Strings of JSON across; engine.js says what is sent.
 *
 * It has two ways to get there. restored() puts back the memory of a Python that has answered
 * already, in engines that tests have run; started() starts Python from its archives, with
 * nothing but Pyodide's public functions. What goes wrong in the first ends in the second.
 */

import { UnfitSnapshot, restore, verify } from "./snapshot.js";

// build_runtime.py says here what it made, and makes one file of all this, to stand beside it.
const manifest = __MANIFEST__;
const RUNTIME = new URL("./", import.meta.url);
const at = (/** @type {string} */ name) => new URL(name, RUNTIME).href;
const WASM = `${manifest.pyodide}pyodide.asm.wasm`;
const NOTHING = at("nothing.zip"); // for Pyodide, which wants a library even to restore; never sent
const EMPTY_ZIP = new Uint8Array([0x50, 0x4b, 5, 6, ...Array(18).fill(0)]);
const plainFetch = self.fetch.bind(self);

// The largest file is on its way before Pyodide is there to ask for it.
/** @type {Promise<Response> | undefined} */
let wasm = plainFetch(at(WASM));
wasm.catch(() => {}); // whoever takes it hears of that

/** @typedef {(ask: string) => string | Promise<string>} Reply */

/** The pages that talk with this Python: one, or in a SharedWorker any number. @type {Set<any>} */
const pages = new Set();
const isShared = "onconnect" in self;
const tell = (/** @type {object} */ said) => pages.forEach((page) => page.postMessage(said));

/** What answers once Python is up. @type {Promise<Reply>} */
const awake = wake();

if (isShared) {
  self.addEventListener("connect", (event) => hear(/** @type {any} */ (event).ports[0]));
  // The copy of the guide on this device can't be removed while this one still uses it.
  new BroadcastChannel("dry-tight:python").addEventListener("message", () => {
    tell({ ended: true });
    self.close();
  });
} else hear(self);

/** @param {any} page a port, or in a worker of one page that worker's own scope */
function hear(page) {
  pages.add(page);
  page.addEventListener("message", async (/** @type {MessageEvent} */ { data: { id, ask } }) => {
    try {
      const reply = await awake;
      page.postMessage({ id, reply: await reply(ask) });
    } catch (error) {
      broken(error);
    }
  });
  page.start?.();
  awake.then(() => page.postMessage({ ready: true }), broken);
}

/**
 * Say so to every page, and make room for a Python that a reload may start.
 * @param {unknown} error
 */
function broken(error) {
  tell({ broken: String(error) });
  if (isShared) self.close();
}

async function wake() {
  if (!isTested()) return started();
  try {
    return await restored();
  } catch (error) {
    console.warn(`Python is started, not restored: ${error}`);
    return started();
  }
}

/** Chromium's engine, which tests/browser runs; it says so only where the page came safely. */
function isTested() {
  const { userAgentData } = /** @type {any} */ (navigator);
  return Boolean(userAgentData?.brands.some((/** @type {any} */ { brand }) => brand === "Chromium"));
}

// --- the ordinary way ----------------------------------------------------------

/** @returns {Promise<Reply>} */
async function started() {
  countBytes([WASM, manifest.stdlib, manifest.calculators]);
  const app = fetched(manifest.calculators);
  app.catch(() => {}); // it is awaited below, but may fail before
  const { loadPyodide } = await import(at(`${manifest.pyodide}pyodide.mjs`));
  const python = await loadPyodide({
    indexURL: at(manifest.pyodide),
    stdLibURL: at(manifest.stdlib),
    lockFileContents: manifest.lock,
  });
  unpack(python, await app);
  return python.pyimport("calculators.outputs.browser").reply;
}

/**
 * @param {any} python
 * @param {ArrayBuffer} app
 */
function unpack(python, app) {
  const extractDir = python.runPython("import site; site.getsitepackages()[0]");
  python.unpackArchive(app, "zip", { extractDir });
}

// --- the short way ---------------------------------------------------------------

/** @returns {Promise<Reply>} */
async function restored() {
  const { file, sha256, build, ask, says } = manifest.snapshot;
  countBytes([WASM, file]);
  const arriving = fetched(file).then(async (content) => {
    await verify(content, sha256);
    return content;
  });
  arriving.catch(() => {}); // it is awaited below, but may fail before
  const [{ loadPyodide }, { default: create }] = await Promise.all([
    import(at(`${manifest.pyodide}pyodide.mjs`)),
    import(at(`${manifest.pyodide}pyodide.asm.mjs`)),
  ]);
  const python = await loadPyodide({
    indexURL: at(manifest.pyodide),
    stdLibURL: NOTHING,
    lockFileContents: manifest.lock,
    _loadSnapshot: new Uint8Array(0),
    createPyodideModule: async (/** @type {object} */ settings) => {
      const [module, content] = await Promise.all([create(settings), arriving]);
      module.API.restoreSnapshot = () => restore(module, content, build);
      return module;
    },
  });
  python.runPython("import random; random.seed()"); // or every visit would draw the same numbers
  const { reply } = python.pyimport("calculators.outputs.browser");
  if (JSON.parse(reply(ask)).say !== says) throw new UnfitSnapshot("it does not answer as it did");
  return withFiles(python, reply);
}

/**
 * A restored Python has in memory what answering needs, and none of its files. Whatever else a
 * question wants to import is fetched when one first fails for it, and the question asked again.
 * @param {any} python
 * @param {(ask: string) => string} reply
 * @returns {Reply}
 */
function withFiles(python, reply) {
  /** @type {Promise<void> | undefined} */
  let written;
  const write = async () => {
    const [stdlib, app] = await Promise.all([manifest.stdlib, manifest.calculators].map(fetched));
    const [major, minor] = python.runPython("import sys; sys.version_info[:2]").toJs();
    python.FS.writeFile(`/lib/python${major}${minor}.zip`, new Uint8Array(stdlib));
    unpack(python, app);
  };
  return async (ask) => {
    try {
      return reply(ask);
    } catch (error) {
      if (written) throw error;
      written = write();
      await written;
      return reply(ask);
    }
  };
}

// --- fetching ----------------------------------------------------------------------

/** @param {string} name */
async function fetched(name) {
  const response = await fetch(at(name));
  if (!response.ok) throw new Error(`${response.url}: ${response.status}`);
  return response.arrayBuffer();
}

/**
 * Report what has arrived of these files, whoever fetches them: Pyodide gets the interpreter
 * by itself, through this worker's fetch. Counted as sent, which is what a phone pays for.
 * @param {string[]} names
 */
function countBytes(names) {
  /** @type {Map<string, { sent: number, share: number }>} */
  const files = new Map(names.map((name) => [at(name), { sent: 0, share: 0 }]));
  let told = -1;
  const report = () => {
    const all = [...files.values()];
    if (!all.every(({ sent }) => sent)) return; // until then there is no total
    const total = all.reduce((sum, { sent }) => sum + sent, 0);
    const loaded = Math.round(all.reduce((sum, { sent, share }) => sum + sent * share, 0));
    if (loaded - told < total / 100 && loaded < total) return;
    told = loaded;
    tell({ loaded, total });
  };
  self.fetch = async (...request) => {
    const asked = String(request[0]);
    if (asked === NOTHING) return new Response(EMPTY_ZIP);
    const early = asked === at(WASM) ? wasm : undefined;
    if (early) wasm = undefined; // a response is read once
    const response = await (early ?? plainFetch(...request));
    const file = files.get(response.url);
    if (!response.body || !response.ok || !file) return response;
    const whole = /** @type {Record<string, number>} */ (manifest.bytes)[response.url.slice(RUNTIME.href.length)];
    file.sent = Number(response.headers.get("Content-Length")) || whole;
    file.share = 0;
    const counted = response.body.pipeThrough(
      new TransformStream({
        transform(chunk, next) {
          file.share += chunk.byteLength / whole;
          report();
          next.enqueue(chunk);
        },
        flush() {
          file.share = 1;
          report();
        },
      }),
    );
    return new Response(counted, response);
  };
}
