// @ts-check
/** Reads a log that the reader chose from the device. */

const LARGEST = 5e6; // bytes; a day of readings every second has room to spare

/**
 * @param {File} file
 * @returns {Promise<{ text?: string, complaint?: string }>} the text, or why there is none
 */
export async function readingsFrom(file) {
  if (file.size > LARGEST) {
    const size = (file.size / 1e6).toFixed(1);
    return { complaint: `That file is ${size} MB; a log of up to ${LARGEST / 1e6} MB is read. Choose a shorter one.` };
  }
  if (file.size === 0) return { complaint: "That file is empty. Choose one with times and pressures." };
  try {
    return { text: await file.text() };
  } catch {
    return { complaint: "That file could not be read. Choose it again, or paste the readings." };
  }
}
