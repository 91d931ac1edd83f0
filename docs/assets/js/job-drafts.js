// @ts-check
/**
 * What is being typed into a job and is not in the store yet. It is written at once, with
 * each keystroke, so that neither a crash nor a full disk takes it.
 */

/** @param {string} id of the job */
const prefix = (id) => `dry-tight:draft:${id}:`;

/**
 * @param {string} id
 * @param {string} fact
 * @param {string} text
 */
export function keepDraft(id, fact, text) {
  try {
    localStorage.setItem(prefix(id) + fact, text);
  } catch {
    // The store has its turn next; it says when there is no room.
  }
}

/**
 * Forget drafts that the store now has, unless more was typed since.
 * @param {string} id
 * @param {Record<string, string>} saved
 */
export function dropDrafts(id, saved) {
  try {
    for (const [fact, text] of Object.entries(saved)) {
      if (localStorage.getItem(prefix(id) + fact) === text) localStorage.removeItem(prefix(id) + fact);
    }
  } catch {
    // There are none, then.
  }
}

/**
 * @param {string} id
 * @returns {Record<string, string>}
 */
export function drafts(id) {
  try {
    const keys = Object.keys(localStorage).filter((key) => key.startsWith(prefix(id)));
    return Object.fromEntries(keys.map((key) => [key.slice(prefix(id).length), localStorage.getItem(key) ?? ""]));
  } catch {
    return {};
  }
}
