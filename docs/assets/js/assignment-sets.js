// @ts-check
/** The sets that were made: what is shown of them, printed, saved, and linked to. */
import { engine } from "./engine.js";
import { bytesOf, saveFile } from "./save-file.js";

/**
 * @typedef {{ title: string, problems: string, variants: string, seed: string, names: string,
 *   levels: string[], objectives: string[], help: boolean }} Chosen
 * @typedef {{ sheet: string, key: string, csv: string, qti: string }} Made
 */

/** What is done with the sets: words, then the buttons. @type {[string, [string, string][]][]} */
const TOOLS = [
  ["On paper", [["print-sheets", "Print the sheets"], ["print-keys", "Print the keys"]]],
  ["As files", [["save-sheets", "Sheets"], ["save-keys", "Keys"], ["save-csv", "Table of answers (CSV)"]]],
  ["Learning system", [["save-qti", "Packages (QTI)"]]],
  ["Online", [["copy-links", "Copy all links"]]],
];

export class AssignmentSets {
  /**
   * @param {HTMLElement} place
   * @param {Chosen} chosen what they were made from, which the form may no longer show
   * @param {Made[]} made
   * @param {(text: string) => void} say
   */
  constructor(place, chosen, made, say) {
    this.place = place;
    this.chosen = chosen;
    this.made = made;
    this.say = say;
    this.names = chosen.names.split("\n").map((name) => name.trim()).filter(Boolean);
  }

  show() {
    const links = part("ol", "set-links");
    this.made.forEach((_, index) => {
      const link = part("a", "", this.names[index] || `Set ${index + 1}`);
      link.setAttribute("href", this.#link(index + 1));
      const item = part("li", "");
      item.append(link);
      links.append(item);
    });
    this.place.replaceChildren(
      part("h2", "", "Your sets"),
      ...TOOLS.map(([words, buttons]) => toolRow(words, buttons)),
      fold(`A link for each set (${this.made.length})`, links),
      fold("Look at the first set", this.#sheets("sheet", 1)),
      fold("Look at its key", this.#sheets("key", 1)),
    );
    this.place.hidden = false;
  }

  /** The sets in an address, or one of them: no names in it. */
  address(variant = 0) {
    const { seed, problems, levels, objectives, title, help } = this.chosen;
    const parts = new URLSearchParams({ set: seed, problems });
    if (levels.length) parts.set("levels", levels.join(","));
    if (objectives.length) parts.set("objectives", objectives.join(","));
    if (title) parts.set("title", title);
    parts.set("of", String(this.made.length));
    if (help) parts.set("help", "1");
    if (variant) parts.set("variant", String(variant));
    return parts.toString().replaceAll("%2C", ",");
  }

  /** @param {number} variant */
  #link(variant) {
    return new URL(`../../practice/#${this.address(variant)}`, location.href).href;
  }

  /**
   * @param {"sheet" | "key"} kind
   * @param {number} [count] how many; all by default
   */
  #sheets(kind, count = this.made.length) {
    const holder = part("div", `made ${kind}s`);
    for (const one of this.made.slice(0, count)) {
      const page = new DOMParser().parseFromString(one[kind], "text/html");
      holder.append(...document.adoptNode(page.body).childNodes);
    }
    return holder;
  }

  /** @param {string | null | undefined} does */
  press(does) {
    const name = `set-${this.chosen.seed || "1"}`;
    if (does === "print-sheets") this.#print("sheet");
    else if (does === "print-keys") this.#print("key");
    else if (does === "save-sheets") this.#saveDocument("sheet", `${name}-sheets.html`);
    else if (does === "save-keys") this.#saveDocument("key", `${name}-keys.html`);
    else if (does === "save-csv") {
      // The mark at the start lets a spreadsheet know that this is UTF-8.
      saveFile(`${name}-key.csv`, `\ufeff${this.made.map((one) => one.csv).join("")}`, "text/csv");
    } else if (does === "save-qti") this.#savePackages(`${name}-qti.zip`);
    else if (does === "copy-links") this.#copyLinks();
  }

  /** All of them are on the page only while they are printed. @param {"sheet" | "key"} kind */
  #print(kind) {
    this.printed();
    this.place.append(this.#sheets(kind));
    document.documentElement.dataset.printsOnly = `${kind}s`;
    window.print();
  }

  printed() {
    for (const one of this.place.querySelectorAll(":scope > .made")) one.remove();
    delete document.documentElement.dataset.printsOnly;
  }

  /**
   * @param {"sheet" | "key"} kind
   * @param {string} name
   */
  async #saveDocument(kind, name) {
    const parts = this.made.map((one) => one[kind]);
    const title = this.chosen.title || "Evacuation problems";
    const reply = await engine.ask({ do: "pack", title, parts }, "pack");
    if (reply?.ok) saveFile(name, reply.html, "text/html");
  }

  /** @param {string} name */
  async #savePackages(name) {
    const width = String(this.made.length).length;
    const files = Object.fromEntries(
      this.made.map((one, index) => [`variant-${String(index + 1).padStart(width, "0")}.zip`, one.qti]),
    );
    const reply = await engine.ask({ do: "pack", files }, "pack");
    if (reply?.ok) saveFile(name, bytesOf(reply.zip), "application/zip");
  }

  async #copyLinks() {
    const lines = this.made.map((_, index) => {
      const link = this.#link(index + 1);
      return this.names[index] ? `${this.names[index]}\t${link}` : link;
    });
    try {
      await navigator.clipboard.writeText(lines.join("\n"));
      this.say(`${lines.length} links are copied, one on each line.`);
    } catch {
      this.say("This browser does not let a page copy. Open the list of links below.");
    }
  }
}

/**
 * @param {string} words
 * @param {[string, string][]} buttons
 */
function toolRow(words, buttons) {
  const [row, group] = [part("div", "made-for"), part("div", "")];
  for (const [does, text] of buttons) {
    const button = part("button", "", text);
    button.setAttribute("type", "button");
    button.dataset.do = does;
    group.append(button);
  }
  group.setAttribute("role", "group");
  group.setAttribute("aria-label", words);
  row.append(part("p", "", words), group);
  return row;
}

/**
 * @param {string} words
 * @param {HTMLElement} content
 */
function fold(words, content) {
  const details = part("details", "more");
  details.append(part("summary", "", words), content);
  return details;
}

/**
 * @param {string} tag
 * @param {string} kind
 * @param {string} [text]
 */
function part(tag, kind, text) {
  const made = document.createElement(tag);
  if (kind) made.className = kind;
  if (text) made.textContent = text;
  return made;
}
