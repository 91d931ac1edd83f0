// @ts-check
/**
 * The memory of a Python that has started, stored as its difference from one that has not.
 *
 * scripts/make_snapshot.mjs writes it. Little-endian, in this order:
 *   4 words    MAGIC, bytes of the heap, bytes of the settings, number of runs
 *   settings   JSON for Pyodide, filled up with spaces to a whole word
 *   runs       2 words each: where in the heap, how many bytes
 *   contents   of the runs, one after another
 */

export const MAGIC = 0x31_54_26_44; // D&T1

/** The content is not what was made, or does not belong to this Pyodide. */
export class UnfitSnapshot extends Error {
  name = "UnfitSnapshot";
}

/**
 * Refuse a snapshot that is not, to the bit, the one that was built. Nothing else would notice:
 * a heap with a few bits turned over starts, and answers.
 * @param {ArrayBuffer} content
 * @param {string} sha256 hex
 */
export async function verify(content, sha256) {
  const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", content));
  const hex = Array.from(digest, (byte) => byte.toString(16).padStart(2, "0")).join("");
  if (hex !== sha256) throw new UnfitSnapshot("the snapshot is damaged");
}

/**
 * Put the snapshot into the heap of a fresh interpreter.
 * @param {any} module Pyodide's Emscripten module
 * @param {ArrayBuffer} content
 * @param {string} buildId of the Pyodide that the snapshot was taken from
 * @returns {object} the settings that Pyodide wants with it
 */
export function restore(module, content, buildId) {
  const [magic, heapBytes, settingsBytes, runs] = new Uint32Array(content, 0, 4);
  if (magic !== MAGIC) throw new UnfitSnapshot("this is no snapshot");
  if (module.API.config.BUILD_ID !== buildId) {
    throw new UnfitSnapshot("the snapshot is from another build of Pyodide");
  }
  if (module.HEAPU8.length < heapBytes) throw new UnfitSnapshot("the heap is smaller than the snapshot");
  const settings = JSON.parse(new TextDecoder().decode(new Uint8Array(content, 16, settingsBytes)));
  const table = new Uint32Array(content, 16 + settingsBytes, runs * 2);
  const at = trampoline(module);
  const own = module.HEAP32[at];
  let from = table.byteOffset + table.byteLength;
  for (let run = 0; run < table.length; run += 2) {
    module.HEAPU8.set(new Uint8Array(content, from, table[run + 1]), table[run]);
    from += table[run + 1];
  }
  module.HEAP32[at] = own;
  return settings;
}

/**
 * Where the heap keeps how this engine calls C functions with a wrong number of arguments: a
 * place in a table that each engine fills in its own way, so it must not be overwritten.
 * @param {any} module
 * @returns {number} an index into HEAP32
 */
export function trampoline(module) {
  return (module.__PyRuntime + module.HEAP32[module.__PyEM_EMSCRIPTEN_TRAMPOLINE_OFFSET >> 2]) >> 2;
}
