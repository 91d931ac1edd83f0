// @ts-check
/** While something is being pressed, nothing moves away from under the finger. */

const LONGEST = 600; // ms; a list that opens may keep the end of a press to itself

let press = Promise.resolve();
let end = () => {};

addEventListener("pointerdown", begin, { capture: true });
for (const type of ["pointerup", "pointercancel"]) {
  addEventListener(type, () => setTimeout(end), { capture: true }); // after the click
}

function begin() {
  end();
  press = new Promise((done) => (end = done));
  setTimeout(end, LONGEST);
}

/**
 * Wait for something, and for the end of a press.
 * @template T
 * @param {T | Promise<T>} [wanted]
 * @returns {Promise<T>}
 */
export async function afterPress(wanted) {
  const given = await wanted;
  await press;
  return /** @type {T} */ (given);
}
