// @ts-check
import { chooseSystem, currentSystem } from "./system.js";

/** Two buttons, US and SI; the pressed one is in force. */
export class SystemSwitch extends HTMLElement {
  static define(tag = "system-switch", registry = customElements) {
    registry.define(tag, this);
    return this;
  }

  /** @type {AbortController | undefined} */
  #listening;

  connectedCallback() {
    this.#listening = new AbortController();
    const { signal } = this.#listening;
    this.addEventListener("click", this, { signal });
    document.addEventListener("system", this, { signal });
    this.#show();
  }

  disconnectedCallback() {
    this.#listening?.abort();
  }

  /** @param {Event} event */
  handleEvent(event) {
    const button = event.target instanceof Element && event.target.closest("button");
    if (event.type === "click" && button) chooseSystem(button.value === "si" ? "si" : "us");
    this.#show();
  }

  #show() {
    for (const button of this.querySelectorAll("button")) {
      button.setAttribute("aria-pressed", String(button.value === currentSystem()));
    }
  }
}
