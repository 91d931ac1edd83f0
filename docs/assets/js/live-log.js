// @ts-check
/**
 * A log of readings against the device's clock, kept on the device as times of day, not as
 * counted seconds: a locked screen, a reload or a day without signal loses nothing.
 *
 * @typedef {{ at: number, reading: string, unit: string }} Reading  at: ms since 1970
 * @typedef {{ start: number, readings: Reading[] }} Log
 */

const KEY = "dry-tight:live-decay";

/** @returns {Log | null} */
export function recallLog() {
  try {
    const log = JSON.parse(localStorage.getItem(KEY) ?? "null");
    return log && Number.isFinite(log.start) && Array.isArray(log.readings) ? log : null;
  } catch {
    return null;
  }
}

/**
 * @param {Log | null} log
 * @returns {boolean} false when the device keeps nothing
 */
export function keepLog(log) {
  try {
    if (log) localStorage.setItem(KEY, JSON.stringify(log));
    else localStorage.removeItem(KEY);
    return true;
  } catch {
    return false;
  }
}

/** @param {StorageEvent} event */
export const isLogEvent = (event) => event.key === KEY || event.key === null;

/**
 * The log as the decay card reads it: minutes since the valve was shut, and the reading.
 * @param {Log} log
 */
export function asText(log) {
  const rows = log.readings.map(({ at, reading, unit }) => `${((at - log.start) / 60_000).toFixed(3)},${reading} ${unit}`);
  return ["minutes,pressure", ...rows].join("\n");
}

/**
 * A length of time as a clock shows it: 4:05, 1:04:05.
 * @param {number} milliseconds
 */
export function asClock(milliseconds) {
  const seconds = Math.max(0, Math.floor(milliseconds / 1000));
  const two = (/** @type {number} */ n) => String(n).padStart(2, "0");
  const hours = Math.floor(seconds / 3600);
  const minutes = Math.floor(seconds / 60) % 60;
  return hours ? `${hours}:${two(minutes)}:${two(seconds % 60)}` : `${minutes}:${two(seconds % 60)}`;
}

/**
 * What stands on a gauge, as a number Python reads; empty if it is not one.
 * @param {string} typed
 */
export function asReading(typed) {
  const text = typed.trim().replace(/^(\d{1,3}),(\d{3})$/, "$1$2").replace(",", ".");
  return /^(\d+\.?\d*|\.\d+)$/.test(text) && Number(text) > 0 ? text : "";
}
