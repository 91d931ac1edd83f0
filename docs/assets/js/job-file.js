// @ts-check
/**
 * A job as it is kept and saved to a file. calculators/job/schema.py has the rules.
 *
 * @typedef {import("./entries.js").Entries} Entries
 * @typedef {{ id: string, card: string, entries: Entries, system: "us" | "si", when: string, said: string, note?: string }} Result
 * @typedef {{ format: string, version: number, id: string, created: string, changed: string,
 *   facts: Record<string, string>, results: Result[] }} Job
 */

const FORMAT = "dry-and-tight-job";
const VERSION = 1;
const LONGEST_SAID = 1000;

/** @returns {Job} */
export function newJob() {
  const now = moment();
  return { format: FORMAT, version: VERSION, id: newId(), created: now, changed: now, facts: {}, results: [] };
}

/**
 * @param {Pick<Result, "card" | "entries" | "system" | "said">} answer
 * @returns {Result}
 */
export function newResult({ card, entries, system, said }) {
  return { id: newId(), card, entries, system, when: moment(), said: said.slice(0, LONGEST_SAID) };
}

/** What a job is called where it is listed. @param {Job} job */
export function titleOf(job) {
  return job.facts.system || job.facts.site || `the job of ${shown(job.created)}`;
}

/** @param {Job} job */
export const asText = (job) => `${JSON.stringify(job, null, 2)}\n`;

/**
 * @param {Job} job
 * @param {string} ending
 */
export function fileName(job, ending) {
  const name = (job.facts.system || job.facts.site || "job").normalize("NFKD").toLowerCase();
  const plain = name.replace(/[^a-z0-9]+/g, "-").replace(/^-|-$/g, "").slice(0, 40) || "job";
  return `${plain}-${job.created.slice(0, 10)}.${ending}`;
}

/** A moment as its own clock showed it, to the minute. @param {string} text */
export const shown = (text) => text.slice(0, 16).replace("T", " ");

/** Now, by the clock on the wall and with its zone, so that a record shows the hour of the job. */
export function moment(now = new Date()) {
  const zone = -now.getTimezoneOffset();
  const two = (/** @type {number} */ n) => String(Math.floor(Math.abs(n))).padStart(2, "0");
  const wall = new Date(now.getTime() + zone * 60_000).toISOString().slice(0, -1);
  return `${wall}${zone < 0 ? "-" : "+"}${two(zone / 60)}:${two(zone % 60)}`;
}

/** Not crypto.randomUUID, which a plain file server without TLS does not have. */
export function newId() {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return [...bytes].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}
