// @ts-check
/**
 * What the reader typed, as it lies on this device: by kind, how much, and how to clear it.
 *
 * @typedef {{ kind: string, label: string, holds: string }} Kind
 */

const OURS = "dry-tight";

/** Kinds of what localStorage holds, by how its keys begin; the last takes the rest. */
const KINDS = [
  { kind: "entries", label: "What you typed in calculators", starts: "dry-tight:entries:", one: "calculator", many: "calculators" },
  { kind: "steps", label: "Steps you ticked", starts: "dry-tight:steps:", one: "page", many: "pages" },
  { kind: "live-decay", label: "The running decay test", starts: "dry-tight:live-decay", one: "test", many: "tests" },
  { kind: "learn", label: "Your answers in the lessons", starts: "dry-tight:learn", one: "set", many: "sets" },
  { kind: "bench", label: "Your case on the practice bench", starts: "dry-tight:bench", one: "case", many: "cases" },
  { kind: "needle", label: "Your score at the needle", starts: "dry-tight:needle", one: "score", many: "scores" },
  { kind: "choices", label: "Your choice of units and colors", starts: "dry-tight:", one: "choice", many: "choices" },
];

/** @returns {Promise<Kind[]>} only those that hold something */
export async function kindsKept() {
  const stored = KINDS.map(({ kind, label, one, many }) => {
    const keys = keysOf(kind);
    const bytes = keys.reduce((sum, key) => sum + key.length + (localStorage.getItem(key) ?? "").length, 0);
    return { kind, label, holds: `${keys.length} ${keys.length === 1 ? one : many}, ${size(bytes)}`, count: keys.length };
  });
  return [...stored.filter(({ count }) => count), ...(await recordsKept())];
}

/**
 * @param {string} kind one of kindsKept, or "" for all of them
 * @returns {Promise<string>} what to tell the reader
 */
export async function clearKind(kind) {
  for (const each of KINDS) {
    if (kind && kind !== each.kind) continue;
    for (const key of keysOf(each.kind)) localStorage.removeItem(key);
  }
  const databases = (await ourDatabases()).filter((name) => !kind || kind === `database:${name}`);
  const cleared = await Promise.all(databases.map(removeDatabase));
  return cleared.every(Boolean) ? "Cleared." : "Another tab has the job records open. Close it and press again.";
}

/** @param {string} kind */
function keysOf(kind) {
  try {
    return Object.keys(localStorage).filter((key) => KINDS.find(({ starts }) => key.startsWith(starts))?.kind === kind);
  } catch {
    return []; // storage is closed to us: nothing is kept
  }
}

/** @returns {Promise<(Kind & { count: number })[]>} */
async function recordsKept() {
  const found = [];
  for (const name of await ourDatabases()) {
    const count = await countRecords(name);
    if (count) found.push({ kind: `database:${name}`, label: "Job records", holds: `${count} ${count === 1 ? "record" : "records"}`, count });
  }
  return found;
}

async function ourDatabases() {
  const all = (await globalThis.indexedDB?.databases?.().catch(() => [])) ?? [];
  return all.map(({ name }) => name ?? "").filter((name) => name.startsWith(OURS));
}

/**
 * @param {string} name
 * @returns {Promise<number>}
 */
function countRecords(name) {
  return new Promise((settle) => {
    const opening = indexedDB.open(name);
    opening.onerror = () => settle(0);
    opening.onsuccess = () => {
      const database = opening.result;
      const stores = [...database.objectStoreNames];
      if (!stores.length) {
        database.close();
        settle(0);
        return;
      }
      const reading = database.transaction(stores);
      const counts = stores.map((store) => reading.objectStore(store).count());
      reading.oncomplete = () => {
        database.close();
        settle(counts.reduce((sum, { result }) => sum + result, 0));
      };
      reading.onabort = () => settle(0);
    };
  });
}

/**
 * @param {string} name
 * @returns {Promise<boolean>} false when another tab holds it open
 */
function removeDatabase(name) {
  return new Promise((settle) => {
    const removing = indexedDB.deleteDatabase(name);
    removing.onsuccess = () => settle(true);
    removing.onblocked = removing.onerror = () => settle(false);
  });
}

/** @param {number} characters */
const size = (characters) => (characters < 1000 ? `${characters} characters` : `${(characters / 1000).toFixed(1)} thousand characters`);
