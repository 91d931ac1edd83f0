// @ts-check
/** The record on the practice page: topics with what was right, and the record as a file. */
import { byTopic, freshRecord, keepPractice, recordFrom } from "./practice-record.js";
import { saveFile } from "./save-file.js";

/** @typedef {import("./practice-record.js").PracticeRecord} PracticeRecord */
/** @typedef {import("./practice-record.js").Listed} Listed */

/** Sends "record" after the record on this device was replaced. */
export class PracticeProgress extends EventTarget {
  /** @type {PracticeRecord | undefined} */
  #record;

  /**
   * @param {HTMLElement} place
   * @param {Map<string, string>} topics their titles
   */
  constructor(place, topics) {
    super();
    this.topics = topics;
    this.line = element("p", "record-says");
    this.table = element("ul", "record-topics");
    this.file = /** @type {HTMLInputElement} */ (element("input", "file"));
    this.file.type = "file";
    this.file.accept = ".json";
    const label = element("label", "record-file");
    label.append("Open a saved record ", this.file);
    this.save = press("Save the record as a file", () => this.#save());
    this.forget = press("Forget it", () => this.#forget());
    this.says = element("p", "says");
    this.says.setAttribute("role", "status");
    const tools = element("div", "tools-row");
    tools.append(this.save, this.forget);
    this.file.addEventListener("change", () => this.#open());
    place.replaceChildren(heading("Your record"), this.line, this.table, tools, label, this.says);
  }

  /**
   * @param {PracticeRecord} record
   * @param {Listed[]} bank
   */
  show(record, bank) {
    this.#record = record;
    const started = record.count > 0;
    this.save.hidden = this.forget.hidden = this.table.hidden = !started;
    this.forget.textContent = "Forget it";
    this.line.textContent = started
      ? `${record.count} problem${record.count === 1 ? "" : "s"} so far.`
      : "Nothing yet. What you do here is kept on this device, and nowhere else.";
    const rows = [];
    for (const [topic, sum] of byTopic(record, bank)) {
      if (!sum.tried) continue;
      const row = element("li", "record-topic");
      const name = element("span", "record-name");
      name.textContent = this.topics.get(topic) ?? topic;
      const bar = document.createElement("meter");
      bar.max = sum.tried;
      bar.value = sum.right;
      const says = element("span", "record-count");
      says.textContent = `${sum.right} of ${sum.tried} right`;
      bar.setAttribute("aria-label", `${name.textContent}: ${says.textContent}`);
      if (sum.due) says.textContent += `, ${sum.due} to come back`;
      row.append(name, bar, says);
      rows.push(row);
    }
    this.table.replaceChildren(...rows);
  }

  #save() {
    saveFile("practice-record.json", JSON.stringify(this.#record, null, 1), "application/json");
    this.says.textContent = "Saved. Open it on another device to go on there.";
  }

  /** A second press forgets; the first one only asks. */
  #forget() {
    if (this.forget.textContent === "Forget it") {
      this.forget.textContent = "Forget every problem? Press again";
      return;
    }
    keepPractice(freshRecord());
    this.says.textContent = "Forgotten.";
    this.dispatchEvent(new Event("record"));
  }

  async #open() {
    const file = this.file.files?.[0];
    if (!file) return;
    const { record, complaint } = await recordFrom(file);
    this.file.value = "";
    if (!record) {
      this.says.textContent = complaint ?? "";
      return;
    }
    keepPractice(record);
    this.says.textContent = `The record of ${record.count} problems is open.`;
    this.dispatchEvent(new Event("record"));
  }
}

/**
 * @param {string} tag
 * @param {string} kind
 */
function element(tag, kind) {
  const made = document.createElement(tag);
  made.className = kind;
  return made;
}

/** @param {string} text */
function heading(text) {
  const made = document.createElement("h2");
  made.textContent = text;
  return made;
}

/**
 * @param {string} text
 * @param {() => void} does
 */
function press(text, does) {
  const made = document.createElement("button");
  made.type = "button";
  made.textContent = text;
  made.addEventListener("click", does);
  return made;
}
