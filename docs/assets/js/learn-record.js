// @ts-check
/**
 * What a learner has answered, kept on this device.
 *
 * `done` stays once an answer was right, whatever is typed there later.
 *
 * @typedef {{ answer: string, correct: boolean | null, message: string, done?: boolean }} Given
 * @typedef {Record<string, Record<string, Given>>} LearnRecord lesson, then question
 */

const KEY = "dry-tight:learn";

/** @returns {LearnRecord} */
export function readRecord() {
  try {
    const kept = JSON.parse(localStorage.getItem(KEY) ?? "{}");
    return kept && typeof kept === "object" && !Array.isArray(kept) ? kept : {};
  } catch {
    return {};
  }
}

/**
 * @param {string} lesson
 * @param {string} question
 * @param {Given} given
 * @returns {boolean} false when this device keeps nothing
 */
export function keepGiven(lesson, question, given) {
  const record = readRecord();
  const done = given.correct === true || record[lesson]?.[question]?.done === true;
  record[lesson] = { ...record[lesson], [question]: { ...given, done } };
  try {
    localStorage.setItem(KEY, JSON.stringify(record));
    return true;
  } catch {
    return false;
  }
}

export function forgetAll() {
  try {
    localStorage.removeItem(KEY);
  } catch {
    // Nothing was kept, then.
  }
}

/**
 * How many of these questions have been answered right.
 * @param {Record<string, Given> | undefined} lesson
 * @param {string[]} questions
 */
export function countRight(lesson, questions) {
  return questions.filter((name) => lesson?.[name]?.done === true).length;
}
