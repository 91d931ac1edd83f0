// @ts-check
/**
 * Entries in the other system's units, worked out by Python.
 *
 * @typedef {import("./entries.js").Entries} Entries
 * @typedef {{ value: string, unit: string }} Given
 */

/**
 * What can't be read is left as typed.
 * @param {Entries} entries
 * @param {(readable: Entries) => Promise<any>} ask
 * @returns {Promise<Entries | null>} null when there was no answer
 */
export async function convertEntries(entries, ask) {
  const readable = { ...entries };
  for (;;) {
    const reply = await ask(readable);
    if (!reply) return null;
    if (reply.ok) return { ...entries, ...asEntries(reply.entries, readable) };
    const before = Object.keys(readable).length;
    for (const { input } of reply.complaints) delete readable[String(input).split(".")[0]];
    if (Object.keys(readable).length === before) return null;
  }
}

/**
 * @param {Record<string, Given | Record<string, Given>[]>} given
 * @param {Entries} entries
 * @returns {Entries}
 */
function asEntries(given, entries) {
  return Object.fromEntries(
    Object.entries(given).map(([name, each]) => {
      const rows = entries[name];
      if (!Array.isArray(each) || !Array.isArray(rows)) return [name, text(/** @type {Given} */ (each))];
      const texts = each.map((row) => Object.fromEntries(Object.entries(row).map(([k, cell]) => [k, text(cell)])));
      return [name, rows.map((row, i) => ({ ...row, ...texts[i] }))];
    }),
  );
}

/** @param {Given} given */
const text = ({ value, unit }) => `${value} ${unit}`;
