// @ts-check
/**
 * The jobs on this device: IndexedDB, database "dry-tight", store "jobs", keyed by id.
 *
 * Every change reads and writes in one transaction, so that two tabs lose nothing; other
 * tabs are told. What goes wrong is a StoreError whose message is a sentence to show.
 *
 * @typedef {import("./job-file.js").Job} Job
 */
import { openDB } from "../vendor/idb.js";
import { moment } from "./job-file.js";

export class StoreError extends Error {}

/** Told on `jobs` when a job was changed, here or in another tab. */
export class JobsEvent extends Event {
  /** @param {string} id */
  constructor(id) {
    super("jobs");
    this.id = id;
  }
}

export const jobs = new EventTarget();

const SENTENCES = {
  full: "This device has no room left, so that was not kept: free some space, or save the job to a file now.",
  none: "This browser keeps no jobs here, as in a private window, so a job record needs another window or browser.",
  old: "Another tab runs a newer version of this guide: close the other tabs and reload this page.",
  gone: "This job was deleted in another tab, so that was not kept.",
  other: "This browser could not keep that: save the job to a file and reload the page.",
};

const channel = "BroadcastChannel" in globalThis ? new BroadcastChannel("dry-tight:jobs") : undefined;
channel?.addEventListener("message", ({ data }) => jobs.dispatchEvent(new JobsEvent(data)));

/** @type {Promise<any> | undefined} */
let opened;

/** @returns {Promise<any>} */
function database() {
  opened ??= open().catch((error) => {
    opened = undefined;
    if (error instanceof StoreError) throw error;
    const says = error?.name === "VersionError" ? "old" : full(error) ? "full" : "none";
    throw new StoreError(SENTENCES[says], { cause: error });
  });
  return opened;
}

async function open() {
  const forget = () => (opened = undefined);
  /** @type {(error: StoreError) => void} */
  let fail = () => {};
  const blocked = new Promise((_, reject) => (fail = reject));
  const database = openDB("dry-tight", 1, {
    upgrade: (db) => void db.createObjectStore("jobs", { keyPath: "id" }),
    blocked: () => fail(new StoreError(SENTENCES.old)),
    blocking: (_now, _wanted, event) => {
      forget();
      /** @type {IDBDatabase} */ (event.target).close();
    },
    terminated: forget,
  });
  return Promise.race([database, blocked]);
}

/** Newest first. @returns {Promise<Job[]>} */
export async function listJobs() {
  const found = await (await database()).getAll("jobs").catch(asSentence);
  return found.sort((/** @type {Job} */ a, /** @type {Job} */ b) => Date.parse(b.changed) - Date.parse(a.changed));
}

/**
 * @param {string} id
 * @returns {Promise<Job | undefined>}
 */
export async function readJob(id) {
  return id ? (await database()).get("jobs", id).catch(asSentence) : undefined;
}

/**
 * Change a job in one step: read, alter, write.
 * @param {string} id
 * @param {(job: Job) => boolean | void} alter changes it in place; false leaves the store alone
 * @returns {Promise<Job>} as it is now
 */
export function changeJob(id, alter) {
  return write(id, async (store) => {
    const job = await store.get(id);
    if (!job) throw new StoreError(SENTENCES.gone);
    if (alter(job) === false) return job;
    job.changed = moment();
    await store.put(job);
    return job;
  });
}

/** Keep a whole job, new or in the place of the one with its id. @param {Job} job */
export async function putJob(job) {
  const first = await write(job.id, async (store) => {
    await store.put(job);
    return (await store.count()) === 1;
  });
  // From now on there is something to lose: ask the browser not to clear it by itself.
  if (first) navigator.storage?.persist?.().catch(() => false);
}

/** @param {string} id */
export function removeJob(id) {
  return write(id, (store) => store.delete(id));
}

/**
 * @template T
 * @param {string} id
 * @param {(store: any) => Promise<T>} act
 * @returns {Promise<T>}
 */
async function write(id, act) {
  const db = await database();
  try {
    const transaction = db.transaction("jobs", "readwrite", { durability: "strict" });
    const [result] = await Promise.all([act(transaction.store), transaction.done]);
    jobs.dispatchEvent(new JobsEvent(id));
    channel?.postMessage(id);
    return result;
  } catch (error) {
    return asSentence(error);
  }
}

/**
 * @param {any} error
 * @returns {never}
 */
function asSentence(error) {
  if (error instanceof StoreError) throw error;
  if (error?.name === "InvalidStateError") opened = undefined; // closed under us: open anew next time
  throw new StoreError(full(error) ? SENTENCES.full : SENTENCES.other, { cause: error });
}

/** @param {any} error */
const full = (error) => error?.name === "QuotaExceededError";
