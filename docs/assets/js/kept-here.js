// @ts-check
/**
 * <kept-here>: what is kept on this device, how big it is, and buttons to refresh or clear it.
 * First the guide itself, then what the reader typed, by kind.
 */
import { keepOffline } from "./offline.js";
import { clearKind, kindsKept } from "./kept-entries.js";
import { copyOfGuide, fillGaps, removeCopy } from "./kept-copy.js";

const SURE = 5000; // ms in which a second press clears

export class KeptHere extends HTMLElement {
  static define(tag = "kept-here", registry = customElements) {
    registry.define(tag, this);
    return this;
  }

  /** @type {AbortController | undefined} */
  #listening;
  #looking = 0;

  connectedCallback() {
    this.#listening = new AbortController();
    const { signal } = this.#listening;
    this.addEventListener("click", this, { signal });
    document.addEventListener("offline-copy", this, { signal });
    addEventListener("storage", this, { signal });
    this.#showCopy();
    this.#showKinds();
  }

  disconnectedCallback() {
    this.#listening?.abort();
    clearTimeout(this.#looking);
  }

  /** @param {Event} event */
  handleEvent(event) {
    if (event.type === "click") {
      const button = /** @type {Element} */ (event.target).closest("button");
      if (button) this.#press(button);
    } else if (event.type === "storage") this.#showKinds();
    else this.#showCopy();
  }

  /** @param {HTMLButtonElement} button */
  async #press(button) {
    const { kept: job = "", kind = "" } = button.dataset;
    if (["remove", "kind", "all"].includes(job) && !this.#sure(button)) return;
    button.disabled = true;
    if (job === "refresh") await this.#refresh();
    else if (job === "change") (await keepOffline()).messageSkipWaiting(); // and the page reloads
    else if (job === "persist") await navigator.storage.persist();
    else if (job === "remove") await this.#remove();
    else this.#say("typed-says", await clearKind(kind));
    button.disabled = false;
    await this.#showCopy();
    await this.#showKinds();
    if (!button.isConnected || button.hidden) this.#part("typed-says").focus();
  }

  /**
   * The first press only asks.
   * @param {HTMLButtonElement} button
   */
  #sure(button) {
    if (button.hasAttribute("data-sure")) return true;
    const label = button.textContent;
    button.setAttribute("data-sure", "");
    button.textContent = `${label}? Press again`;
    setTimeout(() => {
      button.removeAttribute("data-sure");
      button.textContent = label;
    }, SURE);
    return false;
  }

  // --- the guide -------------------------------------------------------------

  async #showCopy() {
    clearTimeout(this.#looking);
    const copy = await copyOfGuide();
    this.setAttribute("copy", copy.state);
    this.#part("copy").textContent = copy.says;
    this.#part("space").textContent = await spaceSays();
    const change = this.querySelector("[data-kept=change]");
    if (change instanceof HTMLElement) change.hidden = !copy.waiting;
    const persist = this.querySelector("[data-kept=persist]");
    if (persist instanceof HTMLElement) persist.hidden = !navigator.storage?.persisted || (await navigator.storage.persisted());
    if (copy.state === "fetching") this.#looking = setTimeout(() => this.#showCopy(), 1000);
  }

  async #refresh() {
    this.#say("copy-says", "Looking.");
    try {
      const workbox = await keepOffline();
      await workbox.update();
      const filled = await fillGaps(workbox);
      this.#say("copy-says", filled);
    } catch {
      this.#say("copy-says", "There is no signal, or the site does not answer. The copy here stays as it is.");
    }
  }

  async #remove() {
    await removeCopy();
    this.#say("copy-says", "Removed. It is kept again when you next open a page of the guide with a signal.");
  }

  // --- what was typed ---------------------------------------------------------

  async #showKinds() {
    const list = this.#part("typed");
    const kinds = await kindsKept();
    const rows = kinds.map(({ kind, label, holds }) => {
      const row = document.createElement("li");
      const [name, much] = [document.createElement("b"), document.createElement("span")];
      name.id = `kept-${kind.replace(/\W/g, "-")}`;
      name.textContent = label;
      much.textContent = holds;
      const button = document.createElement("button");
      button.type = "button";
      Object.assign(button.dataset, { kept: "kind", kind });
      button.textContent = "Clear";
      button.setAttribute("aria-describedby", name.id);
      row.append(name, much, button);
      return row;
    });
    list.replaceChildren(...rows);
    this.#part("nothing").hidden = kinds.length > 0;
    const all = this.querySelector("[data-kept=all]");
    if (all instanceof HTMLElement) all.hidden = kinds.length < 2;
  }

  /** @param {string} name */
  #part(name) {
    return /** @type {HTMLElement} */ (this.querySelector(`[data-part="${name}"]`));
  }

  /**
   * @param {string} part
   * @param {string} text
   */
  #say(part, text) {
    this.#part(part).textContent = text;
  }
}

/** What the browser says of room on this device. */
async function spaceSays() {
  if (!navigator.storage?.estimate) return "";
  const { quota = 0 } = await navigator.storage.estimate();
  const lasts = (await navigator.storage.persisted?.())
    ? "The browser has agreed to keep it until you remove it."
    : "When the device runs short of space the browser may remove it without asking.";
  return `${quota ? `The browser gives this guide up to ${(quota / 1e9).toFixed(1)} GB. ` : ""}${lasts}`;
}
