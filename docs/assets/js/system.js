// @ts-check
/** Which units the reader is shown first: kept on this device, told to whoever listens. */

/** @typedef {"us" | "si"} System */

const KEY = "dry-tight:system";

/** Told on `document` after the reader has chosen. */
export class SystemEvent extends Event {
  /** @param {System} system */
  constructor(system) {
    super("system");
    this.system = system;
  }
}

/** @returns {System} */
export function currentSystem() {
  return document.documentElement.dataset.system === "si" ? "si" : "us";
}

/** @param {System} system */
export function chooseSystem(system) {
  if (system === currentSystem()) return;
  document.documentElement.dataset.system = system;
  try {
    localStorage.setItem(KEY, system);
  } catch {
    // Not kept, then; the page in hand still follows.
  }
  document.dispatchEvent(new SystemEvent(system));
}
