// @ts-check
/** The record of a job as pages: made by Python, put in section by section. */
import { engine } from "./engine.js";
import { shown } from "./job-file.js";
import { keep, linkTo } from "./memory.js";

/** @typedef {import("./job-file.js").Job} Job */

export class JobSheet {
  /** What each section was last made from. @type {WeakMap<Element, string>} */
  #sources = new WeakMap();
  /** @type {Job | undefined} */
  #job;

  /** @param {HTMLElement} box */
  constructor(box) {
    this.box = box;
    engine.addEventListener("engine", () => this.#wait());
  }

  /**
   * @param {Job} job
   * @returns {Promise<void>} done when it is shown, or a newer one has taken its place
   */
  async show(job) {
    this.#job = job;
    this.#wait();
    const reply = await engine.ask({ do: "job", give: "sheet", job }, "job-sheet");
    if (!reply || this.#job !== job) return;
    if (!reply.ok) this.#plain(job, reply.complaints[0].text);
    else await this.#renew(job, reply);
  }

  clear() {
    this.#job = undefined;
    this.box.replaceChildren();
  }

  /** Until Python is up there is a line; if it never is, what the answers said. */
  #wait() {
    if (!this.#job || engine.state === "up") return;
    if (engine.state === "broken") this.#plain(this.#job, engine.says);
    else if (!this.box.querySelector("[data-part]")) {
      this.box.replaceChildren(paragraph("The record is written as soon as the calculator is up.", "job-missing"));
    }
  }

  /**
   * @param {Job} job
   * @param {string} why
   */
  #plain(job, why) {
    const list = document.createElement("ul");
    for (const { said, when } of job.results) {
      const item = document.createElement("li");
      item.textContent = `${shown(when)}: ${said}`;
      list.append(item);
    }
    this.box.replaceChildren(paragraph(why, "job-missing"), list);
  }

  /**
   * Put in the sections that changed; those that did not keep their charts.
   * @param {Job} job
   * @param {{ html: string, charts: any[] }} reply
   */
  async #renew(job, { html, charts }) {
    const old = new Map([...this.box.children].map((each) => [each.getAttribute("data-part"), each]));
    const parsed = new DOMParser().parseFromString(html, "text/html");
    const sections = [...parsed.body.children].map((part) => {
      const before = old.get(part.getAttribute("data-part"));
      if (before && this.#sources.get(before) === part.outerHTML) return before;
      const fresh = document.importNode(part, true);
      this.#sources.set(fresh, part.outerHTML);
      return fresh;
    });
    const changed = sections.filter((each) => !each.isConnected);
    this.box.replaceChildren(...sections);
    for (const section of changed) this.#link(section, job);
    const figures = changed.flatMap((each) => [.../** @type {NodeListOf<HTMLElement>} */ (each.querySelectorAll("[data-chart]"))]);
    if (!figures.length) return;
    const { drawChart } = await import("./chart.js");
    for (const figure of figures) if (figure.isConnected) drawChart(figure, charts[Number(figure.dataset.chart)]);
  }

  /**
   * Lead back to each card, filled in; what is too much for a link is handed over when pressed.
   * @param {Element} section
   * @param {Job} job
   */
  #link(section, job) {
    for (const article of section.querySelectorAll("article[data-result]")) {
      const result = job.results.find((each) => each.id === article.getAttribute("data-result"));
      const anchor = article.querySelector("a[data-job=reopen]");
      if (!result || !(anchor instanceof HTMLAnchorElement)) continue;
      const link = linkTo(result.card, result.entries);
      anchor.href = link || linkTo(result.card, {});
      if (!link) anchor.addEventListener("click", () => keep(result.card, result.entries));
    }
  }
}

/**
 * @param {string} text
 * @param {string} classes
 */
function paragraph(text, classes) {
  const made = document.createElement("p");
  made.className = classes;
  made.textContent = text;
  return made;
}
