// @ts-check
/**
 * What a learner has practiced, kept on this device, and what comes next.
 *
 * The schedule: a kind of problem that was missed comes back with new numbers after 3 others.
 * Right then, it comes back after 8 more, then after 20; right three times, it rests. Missed
 * again, it starts over. Nothing is due by the clock, so nobody falls behind by a holiday.
 *
 * @typedef {{ tried: number, right: number, stage?: number, due?: number }} Kind
 *   `stage`: how often right since it was missed; `due`: the count at which it comes back
 * @typedef {{ version: 1, count: number, salt: number, kinds: Record<string, Kind> }} PracticeRecord
 *   `count`: problems finished; `salt`: where this device's own numbers start
 * @typedef {[name: string, topic: string, level: number]} Listed
 */

const KEY = "dry-tight:practice";
const AFTER = [3, 8, 20];
const LARGEST_FILE = 1e6; // bytes

/** @returns {PracticeRecord} */
export function freshRecord() {
  return { version: 1, count: 0, salt: Math.floor(Math.random() * 9000) + 1000, kinds: {} };
}

/** @returns {PracticeRecord} */
export function readPractice() {
  try {
    return checked(JSON.parse(localStorage.getItem(KEY) ?? "null")) ?? freshRecord();
  } catch {
    return freshRecord();
  }
}

/**
 * @param {PracticeRecord} record
 * @returns {boolean} false when this device keeps nothing
 */
export function keepPractice(record) {
  try {
    localStorage.setItem(KEY, JSON.stringify(record));
    return true;
  } catch {
    return false;
  }
}

/**
 * Count a finished problem and set when its kind comes back.
 * @param {PracticeRecord} record
 * @param {string} name
 * @param {boolean} right at the first try and without the answer
 */
export function finish(record, name, right) {
  const kind = (record.kinds[name] ??= { tried: 0, right: 0 });
  record.count += 1;
  kind.tried += 1;
  if (right) kind.right += 1;
  if (!right) kind.stage = 0;
  else if (kind.stage !== undefined) kind.stage += 1;
  if (kind.stage === undefined) return;
  if (kind.stage < AFTER.length) kind.due = record.count + AFTER[kind.stage];
  else {
    delete kind.stage;
    delete kind.due;
  }
}

/**
 * The next kind of problem: what is due first, then what was tried least.
 * @param {PracticeRecord} record
 * @param {Listed[]} listed those that fit the reader's choice
 * @param {string} last not the same kind twice running, if there is another
 */
export function nextKind(record, listed, last) {
  const others = listed.filter(([name]) => name !== last);
  const among = others.length ? others : listed;
  const due = among
    .filter(([name]) => (record.kinds[name]?.due ?? Infinity) <= record.count)
    .sort(([a], [b]) => (record.kinds[a].due ?? 0) - (record.kinds[b].due ?? 0));
  if (due.length) return due[0][0];
  const waiting = among.filter(([name]) => record.kinds[name]?.due === undefined);
  const from = waiting.length ? waiting : among;
  const least = Math.min(...from.map(([name]) => record.kinds[name]?.tried ?? 0));
  const fresh = from.filter(([name]) => (record.kinds[name]?.tried ?? 0) === least);
  return fresh[Math.floor(Math.random() * fresh.length)]?.[0] ?? "";
}

/**
 * How far the learner is in each topic.
 * @param {PracticeRecord} record
 * @param {Listed[]} bank
 * @returns {Map<string, { kinds: number, met: number, tried: number, right: number, due: number }>}
 */
export function byTopic(record, bank) {
  const topics = new Map();
  for (const [name, topic] of bank) {
    const sum = topics.get(topic) ?? { kinds: 0, met: 0, tried: 0, right: 0, due: 0 };
    const kind = record.kinds[name];
    sum.kinds += 1;
    sum.met += kind?.tried ? 1 : 0;
    sum.tried += kind?.tried ?? 0;
    sum.right += kind?.right ?? 0;
    sum.due += kind?.due === undefined ? 0 : 1;
    topics.set(topic, sum);
  }
  return topics;
}

/**
 * A record from a file, or why there is none.
 * @param {File} file
 * @returns {Promise<{ record?: PracticeRecord, complaint?: string }>}
 */
export async function recordFrom(file) {
  if (file.size > LARGEST_FILE) return { complaint: "That file is too large for a practice record." };
  try {
    const record = checked(JSON.parse(await file.text()));
    if (record) return { record };
  } catch {
    // Not JSON, then: said below.
  }
  return { complaint: "That file is not a practice record of this guide. Choose one that was saved here." };
}

/**
 * @param {any} given
 * @returns {PracticeRecord | null}
 */
function checked(given) {
  const whole = (/** @type {any} */ n) => Number.isInteger(n) && n >= 0 && n < 1e9;
  if (given?.version !== 1 || !whole(given.count) || !whole(given.salt)) return null;
  if (!given.kinds || typeof given.kinds !== "object" || Array.isArray(given.kinds)) return null;
  const sound = Object.values(given.kinds).every(
    (kind) =>
      kind &&
      whole(kind.tried) &&
      whole(kind.right) &&
      (kind.stage === undefined || whole(kind.stage)) &&
      (kind.due === undefined || whole(kind.due)),
  );
  return sound ? given : null;
}
