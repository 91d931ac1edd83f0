// @ts-check
/**
 * Python, in a worker of its own: starts Pyodide and hands each question to
 * calculators.outputs.browser.reply. Strings of JSON across; engine.js says what is sent.
 */

import manifest from "../runtime/manifest.js";

const RUNTIME = new URL("../runtime/", import.meta.url);
const at = (/** @type {string} */ name) => new URL(name, RUNTIME).href;

/** What reply() is once Python is up. @type {Promise<(ask: string) => string>} */
const awake = wake();

addEventListener("message", async ({ data: { id, ask } }) => {
  try {
    const reply = await awake;
    postMessage({ id, reply: reply(ask) });
  } catch (error) {
    postMessage({ broken: String(error) });
  }
});

awake.then(
  () => postMessage({ ready: true }),
  (error) => postMessage({ broken: String(error) }),
);

async function wake() {
  countBytes(manifest.bytes);
  const { loadPyodide } = await import(at(`${manifest.pyodide}pyodide.mjs`));
  const [python, calculators] = await Promise.all([
    loadPyodide({
      indexURL: at(manifest.pyodide),
      stdLibURL: at(manifest.stdlib),
      lockFileContents: manifest.lock,
    }),
    fetch(at(manifest.calculators)).then(whole),
  ]);
  python.unpackArchive(calculators, "zip", {
    extractDir: python.runPython("import site; site.getsitepackages()[0]"),
  });
  return python.pyimport("calculators.outputs.browser").reply;
}

/** @param {Response} response */
function whole(response) {
  if (!response.ok) throw new Error(`${response.url}: ${response.status}`);
  return response.arrayBuffer();
}

/**
 * Report what has arrived of the large files, whoever fetches them: Pyodide gets the
 * interpreter and the standard library by itself, through this worker's fetch.
 * @param {number} total
 */
function countBytes(total) {
  const plain = self.fetch;
  let loaded = 0;
  let told = 0;
  self.fetch = async (...request) => {
    const response = await plain(...request);
    if (!response.body || !response.url.startsWith(RUNTIME.href)) return response;
    const counted = response.body.pipeThrough(
      new TransformStream({
        transform(chunk, next) {
          loaded += chunk.byteLength;
          if (loaded - told > total / 100 || loaded >= total) {
            told = loaded;
            postMessage({ loaded, total });
          }
          next.enqueue(chunk);
        },
      }),
    );
    return new Response(counted, response);
  };
}
