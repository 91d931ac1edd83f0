// @ts-check
/**
 * Steps that are ticked off. Ticks are kept on this device, under the page that the steps
 * belong to, so that the page and the whole procedure show the same ones.
 */
export class JobSteps extends HTMLElement {
  static define(tag = "job-steps", registry = customElements) {
    registry.define(tag, this);
    return this;
  }

  /** @type {AbortController | undefined} */
  #listening;
  /** @type {HTMLButtonElement | undefined} */
  #clear;

  connectedCallback() {
    this.#listening = new AbortController();
    const { signal } = this.#listening;
    this.#clear ??= this.#button();
    this.#show(this.#recall());
    this.addEventListener("change", this, { signal });
    this.#clear.addEventListener("click", this, { signal });
    addEventListener("storage", this, { signal }); // another tab has ticked
  }

  disconnectedCallback() {
    this.#listening?.abort();
  }

  /** @param {Event} event */
  handleEvent(event) {
    if (event.type === "storage") this.#show(this.#recall());
    else if (event.type === "change") this.#keep(this.#ticked());
    else {
      this.#keep([]);
      this.#boxes[0]?.focus();
    }
  }

  get #key() {
    return `dry-tight:steps:${this.getAttribute("page")}`;
  }

  get #boxes() {
    return [.../** @type {NodeListOf<HTMLInputElement>} */ (this.querySelectorAll("[type=checkbox]"))];
  }

  #ticked() {
    return this.#boxes.flatMap((box, index) => (box.checked ? [index] : []));
  }

  /** @returns {number[]} */
  #recall() {
    try {
      const kept = JSON.parse(localStorage.getItem(this.#key) ?? "[]");
      return Array.isArray(kept) ? kept : [];
    } catch {
      return [];
    }
  }

  /** @param {number[]} ticked */
  #keep(ticked) {
    try {
      if (ticked.length) localStorage.setItem(this.#key, JSON.stringify(ticked));
      else localStorage.removeItem(this.#key);
    } catch {
      // Without storage the ticks last as long as the page.
    }
    this.#show(ticked);
  }

  /** @param {number[]} ticked */
  #show(ticked) {
    this.#boxes.forEach((box, index) => {
      box.checked = ticked.includes(index);
    });
    if (this.#clear) this.#clear.hidden = !ticked.length;
  }

  #button() {
    const button = document.createElement("button");
    button.type = "button";
    button.className = "steps-clear";
    button.textContent = "Clear the ticks";
    this.append(button);
    return button;
  }
}
