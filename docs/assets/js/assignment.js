// @ts-check
/**
 * <assignment-maker state="…">: choose, then make a set of its own for every learner: links,
 * sheets and keys to print, files to download. Python makes all of it, on this device.
 *
 * state: static  as built     waking  the calculator is starting    making   variants are made
 *        made    they are there    wrong   an entry can't be used   broken
 */
import { showComplaints } from "./assignment-complaints.js";
import { AssignmentSets } from "./assignment-sets.js";
import { engine } from "./engine.js";
import { currentSystem } from "./system.js";

const KEY = "dry-tight:assignment";
const MOST_HERE = 200; // variants; more are for the shell
const TEXTS = ["title", "problems", "variants", "seed", "names"];

/**
 * @typedef {import("./assignment-sets.js").Chosen} Chosen
 * @typedef {import("./assignment-sets.js").Made} Made
 */

export class AssignmentMaker extends HTMLElement {
  static define(tag = "assignment-maker", registry = customElements) {
    registry.define(tag, this);
    return this;
  }

  /** @type {AbortController | undefined} */
  #listening;
  /** What was made last. @type {AssignmentSets | undefined} */
  #sets;
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
    else if (event.type === "afterprint") this.#sets?.printed();
    else if (event.type === "focusin") engine.wake();
    else if (event.type === "submit") {
      event.preventDefault();
      this.#make();
    } else if (event.type === "input") this.#changed();
    else this.#sets?.press(target.closest("button[data-do]")?.getAttribute("data-do"));
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

  // --- making -------------------------------------------------------------------

  async #make() {
    const turn = ++this.#turn;
    const chosen = this.#chosen();
    const { help: _, ...given } = chosen;
    const assignment = { ...given, system: currentSystem() };
    /** @type {Made[]} */
    const made = [];
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
      made.push(reply);
    }
    this.#show(chosen, check, made);
  }

  /** @param {{ input: string, text: string }[]} complaints */
  #refuse(complaints) {
    this.#become("wrong");
    const rest = showComplaints(this.#form, complaints);
    this.#say(rest || "Look at what is marked above.");
  }

  /**
   * @param {Chosen} chosen
   * @param {{ count: number, different: number }} check
   * @param {Made[]} made
   */
  #show(chosen, check, made) {
    const place = /** @type {HTMLElement} */ (this.querySelector(".assignment-made"));
    this.#sets = new AssignmentSets(place, chosen, made, (text) => this.#say(text));
    this.#sets.show();
    history.replaceState(history.state, "", `#${this.#sets.address()}`);
    const repeated = check.different < Number(chosen.problems);
    const kinds = `${check.different} kinds of problem`;
    this.#say(repeated ? `${check.count} sets, from ${kinds}: some are asked twice.` : `${check.count} sets are ready.`);
    this.#become("made");
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
