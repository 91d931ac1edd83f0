// @ts-check
/** Which job is open on this device: just its id, so that a page without one loads no store. */

const KEY = "dry-tight:job";

/** @returns {string} empty when no job is open */
export function openJobId() {
  try {
    return localStorage.getItem(KEY) ?? "";
  } catch {
    return "";
  }
}

/** @param {string} id empty to close the job */
export function setOpenJob(id) {
  try {
    if (id) localStorage.setItem(KEY, id);
    else localStorage.removeItem(KEY);
  } catch {
    // Not kept, then: the job itself is in the store and can be opened there.
  }
}

/** @param {StorageEvent} event another tab has opened or closed a job */
export const isOpenJobEvent = (event) => event.key === KEY || event.key === null;
