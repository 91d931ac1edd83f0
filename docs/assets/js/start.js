// @ts-check
/**
 * Starts the shared Python while the rest of the page is still on its way, on pages that will
 * ask it at once. engine.js joins it there: the address and the settings are the same.
 */
import manifest from "../runtime/manifest.js";

if ("SharedWorker" in globalThis) {
  const settings = { type: "module", name: manifest.version, extendedLifetime: true };
  new SharedWorker(new URL("worker.js", import.meta.url), /** @type {WorkerOptions} */ (settings));
}
