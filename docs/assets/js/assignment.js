// @ts-check
/**
 * <assignment-maker state="…">: choose, then make a set of its own for every learner: links,
 * sheets and keys to print, files to download. Python makes all of it, on this device.
 *
 * state: static  as built     waking  the calculator is starting    making   variants are made
 *        made    they are there    wrong   an entry can't be used   broken
 */
import { showComplaints } from "./assignment-complaints.js";
import { engine } from "./engine.js";
import { bytesOf, saveFile } from "./save-file.js";
import { currentSystem } from "./system.js";

const KEY = "dry-tight:assignment";
const MOST_HERE = 200; // variants; more are for the shell
const TEXTS = ["title", "problems", "variants", "seed", "names"];

/**
 * @typedef {{ title: string, problems: string, variants: string, seed: string, names: string,
 *   levels: string[], objectives: string[], help: boolean }} Chosen
 * @typedef {{ sheet: string, key: string, csv: string, qti: string }} Made
 */

export class AssignmentMaker extends HTMLElement {
  static define(tag = "assignment-maker", registry = customElements) {
    registry.define(tag, this);
    return this;
  }

  /** @type {AbortController | undefined} */
  #listening;
  /** @type {Made[]} */
  #made = [];
  /** A newer press of the button makes an older one stop. */
  #turn = 0;

  connectedCallback() {
    this.#listening = new AbortController();
    const { signal } = this.#listening;
    for (const type of ["submit", "input", "click", "focusin"]) this.addEventListener(type, this, { signal });
    engine.addEventListener("engine", this, { signal });
    window.addEventListener("afterprint", this, { signal });
    this.#fill(this.#recalled());
    this.#count();
  }

  disconnectedCallback() {
    this.#listening?.abort();
  }

  /** @param {Event} event */
  handleEvent(event) {
    const target = /** @type {HTMLElement} */ (event.target);
    if (event.type === "engine") this.#hearEngine();
    else if (event.type === "afterprint") delete document.documentElement.dataset.printsOnly;
    else if (event.type === "focusin") engine.wake();
    else if (event.type === "submit") {
      event.preventDefault();
      this.#make();
    } else if (event.type === "input") this.#changed();
    else this.#press(target.closest("button[data-do]"));
  }

  // --- what is chosen -----------------------------------------------------------

  get #form() {
    return /** @type {HTMLFormElement} */ (this.querySelector("form"));
  }

  /** @param {string} name */
  #boxes(name) {
    return [.../** @type {NodeListOf<HTMLInputElement>} */ (this.querySelectorAll(`input[name=${name}]`))];
  }

  /** @returns {Chosen} */
  #chosen() {
    const data = new FormData(this.#form);
    const texts = Object.fromEntries(TEXTS.map((name) => [name, String(data.get(name) ?? "").trim()]));
    const ticked = (/** @type {string} */ name) => {
      const boxes = this.#boxes(name);
      const on = boxes.filter((box) => box.checked).map((box) => box.value);
      return on.length === boxes.length ? [] : on.length ? on : ["none"];
    };
    return /** @type {Chosen} */ ({
      ...texts,
      levels: ticked("level"),
      objectives: ticked("objective"),
      help: data.has("help"),
    });
  }

  /** @param {Partial<Chosen>} chosen */
  #fill(chosen) {
    for (const name of TEXTS) {
      const field = /** @type {HTMLInputElement | null} */ (this.#form.elements.namedItem(name));
      const text = chosen[/** @type {"title"} */ (name)];
      if (field && typeof text === "string") field.value = text;
    }
    for (const [name, on] of /** @type {const} */ ([["level", chosen.levels], ["objective", chosen.objectives]])) {
      if (Array.isArray(on) && on.length) for (const box of this.#boxes(name)) box.checked = on.includes(box.value);
    }
    for (const box of this.#boxes("help")) box.checked = chosen.help === true;
  }

  /** What the address asks for, or else what was chosen here before. @returns {Partial<Chosen>} */
  #recalled() {
    const asked = new URLSearchParams(location.hash.slice(1));
    if (asked.has("set")) {
      const listed = (/** @type {string} */ name) => (asked.get(name) ?? "").split(",").filter(Boolean);
      return {
        seed: asked.get("set") ?? undefined,
        title: asked.get("title") ?? undefined,
        problems: asked.get("problems") ?? undefined,
        variants: asked.get("of") ?? undefined,
        levels: listed("levels"),
        objectives: listed("objectives"),
        help: asked.has("help"),
      };
    }
    try {
      const kept = JSON.parse(localStorage.getItem(KEY) ?? "{}");
      return kept && typeof kept === "object" ? kept : {};
    } catch {
      return {};
    }
  }

  #changed() {
    this.#turn += 1;
    try {
      localStorage.setItem(KEY, JSON.stringify(this.#chosen()));
    } catch {
      // Not kept, then; the page in hand still has it.
    }
    showComplaints(this.#form, []);
    this.#count();
    if (this.getAttribute("state") === "made") this.#say("Something has changed: make the sets again.");
  }

  /** Say how many objectives are chosen. */
  #count() {
    const boxes = this.#boxes("objective");
    const on = boxes.filter((box) => box.checked).length;
    const says = this.querySelector(".chosen");
    if (says) says.textContent = on === boxes.length ? `all ${on}` : `${on} of ${boxes.length}`;
  }

  /** The set in an address: no names in it. @param {Chosen} chosen */
  #address(chosen, variant = 0) {
    const parts = new URLSearchParams({ set: chosen.seed, problems: chosen.problems });
    if (chosen.levels.length) parts.set("levels", chosen.levels.join(","));
    if (chosen.objectives.length) parts.set("objectives", chosen.objectives.join(","));
    if (chosen.title) parts.set("title", chosen.title);
    parts.set("of", String(this.#made.length || Number(chosen.variants) || 1));
    if (chosen.help) parts.set("help", "1");
    if (variant) parts.set("variant", String(variant));
    return parts.toString().replaceAll("%2C", ",");
  }

  // --- making -------------------------------------------------------------------

  async #make() {
    const turn = ++this.#turn;
    const chosen = this.#chosen();
    const { help: _, ...given } = chosen;
    const assignment = { ...given, system: currentSystem() };
    this.#made = [];
    this.#become(engine.state === "up" ? "making" : "waking");
    this.#hearEngine();
    const check = await engine.ask({ do: "assignment", give: "check", assignment }, "check");
    if (!check || turn !== this.#turn) return;
    if (!check.ok) {
      this.#refuse(check.complaints);
      return;
    }
    if (check.count > MOST_HERE) {
      const text = `Up to ${MOST_HERE} sets are made on a page. For more, use the shell: the foot of this page tells how.`;
      this.#refuse([{ input: chosen.names ? "names" : "variants", text }]);
      return;
    }
    showComplaints(this.#form, []);
    for (let variant = 1; variant <= check.count; variant += 1) {
      this.#become("making");
      this.#say(`Making set ${variant} of ${check.count}.`, variant / check.count);
      const question = { do: "assignment", give: "sheets", assignment, variant };
      const reply = await engine.ask(question, "make");
      if (!reply?.ok || turn !== this.#turn) return;
      this.#made.push(reply);
    }
    this.#show(chosen, check);
  }

  /** @param {{ input: string, text: string }[]} complaints */
  #refuse(complaints) {
    this.#become("wrong");
    const rest = showComplaints(this.#form, complaints);
    this.#say(rest || "Look at what is marked above.");
  }

  /**
   * @param {Chosen} chosen
   * @param {{ count: number, different: number, levels: number[] }} check
   */
  #show(chosen, check) {
    history.replaceState(history.state, "", `#${this.#address(chosen)}`);
    const repeated = check.different < Number(chosen.problems);
    const kinds = `${check.different} kinds of problem`;
    this.#say(repeated ? `${check.count} sets, from ${kinds}: some are asked twice.` : `${check.count} sets are ready.`);
    const names = chosen.names.split("\n").map((name) => name.trim()).filter(Boolean);
    const made = this.querySelector(".assignment-made");
    if (!(made instanceof HTMLElement)) return;
    const tools = part("div", "tools-row");
    for (const [does, text] of [
      ["print-sheets", "Print the sheets"],
      ["print-keys", "Print the keys"],
      ["save-sheets", "Sheets as a file"],
      ["save-keys", "Keys as a file"],
      ["save-csv", "Answers as a table (CSV)"],
      ["save-qti", "Packages for a learning system (QTI)"],
      ["copy-links", "Copy all links"],
    ]) {
      const button = part("button", "", text);
      button.setAttribute("type", "button");
      button.dataset.do = does;
      tools.append(button);
    }
    const links = part("ol", "set-links");
    for (let variant = 1; variant <= check.count; variant += 1) {
      const link = part("a", "", names[variant - 1] || `Set ${variant}`);
      link.setAttribute("href", this.#link(chosen, variant));
      const item = part("li", "");
      item.append(link);
      links.append(item);
    }
    const lists = part("details", "more");
    lists.append(part("summary", "", `A link for each set (${check.count})`), links);
    made.replaceChildren(
      part("h2", "", "Your sets"),
      tools,
      lists,
      part("h3", "", "The first set, and its key"),
      this.#sheets("sheet", 1),
      this.#sheets("key", 1),
    );
    made.hidden = false;
    this.#become("made");
  }

  /**
   * @param {Chosen} chosen
   * @param {number} variant
   */
  #link(chosen, variant) {
    return new URL(`../../practice/#${this.#address(chosen, variant)}`, location.href).href;
  }

  /**
   * @param {"sheet" | "key"} kind
   * @param {number} [count] how many; all by default
   */
  #sheets(kind, count = this.#made.length) {
    const holder = part("div", `made ${kind}s`);
    for (const one of this.#made.slice(0, count)) {
      const page = new DOMParser().parseFromString(one[kind], "text/html");
      holder.append(...document.adoptNode(page.body).childNodes);
    }
    return holder;
  }

  // --- what is done with them -------------------------------------------------------

  /** @param {Element | null} button */
  async #press(button) {
    const does = button?.getAttribute("data-do");
    const name = `set-${this.#chosen().seed || "1"}`;
    if (does === "print-sheets") this.#print("sheet");
    else if (does === "print-keys") this.#print("key");
    else if (does === "save-sheets") this.#saveDocument("sheet", `${name}-sheets.html`);
    else if (does === "save-keys") this.#saveDocument("key", `${name}-keys.html`);
    else if (does === "save-csv") {
      // The mark at the start lets a spreadsheet know that this is UTF-8.
      saveFile(`${name}-key.csv`, `\ufeff${this.#made.map((one) => one.csv).join("")}`, "text/csv");
    } else if (does === "save-qti") this.#savePackages(`${name}-qti.zip`);
    else if (does === "copy-links") this.#copyLinks();
  }

  /** @param {"sheet" | "key"} kind */
  #print(kind) {
    this.querySelector(`.assignment-made .made.${kind}s`)?.replaceWith(this.#sheets(kind));
    document.documentElement.dataset.printsOnly = `${kind}s`;
    window.print();
  }

  /**
   * @param {"sheet" | "key"} kind
   * @param {string} name
   */
  async #saveDocument(kind, name) {
    const parts = this.#made.map((one) => one[kind]);
    const title = this.#chosen().title || "Evacuation problems";
    const reply = await engine.ask({ do: "pack", title, parts }, "pack");
    if (reply?.ok) saveFile(name, reply.html, "text/html");
  }

  /** @param {string} name */
  async #savePackages(name) {
    const width = String(this.#made.length).length;
    const files = Object.fromEntries(
      this.#made.map((one, index) => [`variant-${String(index + 1).padStart(width, "0")}.zip`, one.qti]),
    );
    const reply = await engine.ask({ do: "pack", files }, "pack");
    if (reply?.ok) saveFile(name, bytesOf(reply.zip), "application/zip");
  }

  async #copyLinks() {
    const chosen = this.#chosen();
    const names = chosen.names.split("\n").map((name) => name.trim()).filter(Boolean);
    const lines = this.#made.map((_, index) => {
      const link = this.#link(chosen, index + 1);
      return names[index] ? `${names[index]}\t${link}` : link;
    });
    try {
      await navigator.clipboard.writeText(lines.join("\n"));
      this.#say(`${lines.length} links are copied, one on each line.`);
    } catch {
      this.#say("This browser does not let a page copy. Open the list of links below.");
    }
  }

  // --- the rest -----------------------------------------------------------------

  #hearEngine() {
    if (engine.state === "broken") this.#become("broken");
    const waits = ["waking", "broken"].includes(this.getAttribute("state") ?? "");
    if (waits && engine.state !== "up") this.#say(engine.says);
  }

  /** @param {string} state */
  #become(state) {
    this.setAttribute("state", engine.state === "broken" ? "broken" : state);
  }

  /**
   * @param {string} text
   * @param {number} [share] of the work that is done
   */
  #say(text, share) {
    const line = this.querySelector(".assignment-says");
    if (!line) return;
    line.textContent = text;
    if (share === undefined) return;
    const bar = document.createElement("progress");
    bar.value = share;
    bar.setAttribute("aria-label", text);
    line.append(bar);
  }
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
