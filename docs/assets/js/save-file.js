// @ts-check
/** Hands the reader a file that was made on this device. */

/**
 * @param {string} name
 * @param {BlobPart} content
 * @param {string} type
 */
export function saveFile(name, content, type) {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(new Blob([content], { type }));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
}

/** @param {string} text base64 @returns {Uint8Array<ArrayBuffer>} */
export function bytesOf(text) {
  return Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));
}
