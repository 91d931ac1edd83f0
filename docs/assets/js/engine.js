// @ts-check
/**
 * The page's one line to Python: a promise per question, strings of JSON across.
 *
 * Where the browser can share a worker, every page of the guide asks the same Python, and the
 * next page finds it up: it lives for a while after the last page that asked.
 *
 * To the worker:   { id, ask }          ask is a question of the protocol, as JSON
 * From the worker: { id, reply }        reply is JSON
 *                  { loaded, total }    bytes fetched so far, while it wakes
 *                  { ready: true }      it answers from now on
 *                  { broken: "why" }    it will never answer
 *                  { ended: true }      it was told to go; another may be started
 *
 * One question is with Python at a time. A newer question on the same topic takes
 * the place of one still waiting, whose promise then gives null: latest wins.
 *
 * @typedef {{ topic: string, question: object, settle: (reply: any) => void }} Waiting
 */

/** Told whenever `engine.state` or `engine.says` changes. */
export class EngineEvent extends Event {
  constructor() {
    super("engine");
  }
}

const SORRY =
  "The calculator could not start in this browser, so it can't answer here. What you typed is kept; reload the page to try again.";

export class Engine extends EventTarget {
  /** @type {"asleep" | "waking" | "up" | "broken"} */
  state = "asleep";
  /** A line for the reader while it wakes, or why it never will. */
  says = "";

  /** @type {Worker | MessagePort | undefined} */
  #line;
  /** @type {Waiting[]} */
  #waiting = [];
  /** @type {(Waiting & { id: number }) | undefined} */
  #asked;
  #count = 0;

  /** @param {() => Worker | SharedWorker} open */
  constructor(open) {
    super();
    this.open = open;
  }

  /** Start Python, once. */
  wake() {
    if (this.state !== "asleep") return;
    this.#become("waking", "Starting the calculator.");
    try {
      const worker = this.open();
      worker.addEventListener("error", () => this.#break());
      this.#line = "port" in worker ? worker.port : worker;
      this.#line.addEventListener("message", (event) => this.#hear(/** @type {MessageEvent} */ (event).data));
      if ("start" in this.#line) this.#line.start();
    } catch {
      this.#break();
    }
  }

  /**
   * Ask; the promise gives the reply, or null when a newer question took its place.
   * @param {object} question
   * @param {string} topic
   * @returns {Promise<any>}
   */
  ask(question, topic) {
    this.wake();
    return new Promise((settle) => {
      const older = this.#waiting.findIndex((each) => each.topic === topic);
      if (older >= 0) this.#waiting.splice(older, 1)[0].settle(null);
      this.#waiting.push({ topic, question, settle });
      this.#next();
    });
  }

  #next() {
    if (this.state !== "up" || this.#asked) return;
    const next = this.#waiting.shift();
    if (!next) return;
    this.#asked = { ...next, id: ++this.#count };
    this.#line?.postMessage({ id: this.#asked.id, ask: JSON.stringify(next.question) });
  }

  /** @param {any} data */
  #hear(data) {
    if (data.id !== undefined && data.id === this.#asked?.id) {
      const { settle } = this.#asked;
      this.#asked = undefined;
      settle(JSON.parse(data.reply));
      this.#next();
    } else if (data.ready) {
      this.#become("up", "");
      this.#next();
    } else if (data.ended) {
      this.#end();
    } else if (data.broken !== undefined) {
      console.error(data.broken);
      this.#break();
    } else if (data.total && this.state === "waking") {
      this.#become("waking", progress(data.loaded, data.total));
    }
  }

  /** Let go of a Python that ends; whoever asks next starts another. */
  #end() {
    this.#line = undefined;
    this.#become("asleep", "");
    if (this.#asked) this.#waiting.unshift(this.#asked);
    this.#asked = undefined;
    if (this.#waiting.length) setTimeout(() => this.wake(), 1000); // when the old one has gone
  }

  #break() {
    if (this.state === "broken") return;
    if (this.#line instanceof MessagePort) this.#line.close();
    else this.#line?.terminate();
    this.#become("broken", SORRY);
  }

  /**
   * @param {Engine["state"]} state
   * @param {string} says
   */
  #become(state, says) {
    this.state = state;
    this.says = says;
    this.dispatchEvent(new EngineEvent());
  }
}

/**
 * @param {number} loaded
 * @param {number} total
 */
function progress(loaded, total) {
  if (loaded >= total) return "Starting the calculator.";
  const megabytes = (/** @type {number} */ bytes) => (bytes / 1e6).toFixed(1);
  return `Fetching the calculator: ${megabytes(loaded)} of ${megabytes(total)} MB.`;
}

/** Have every shared Python end, as whatever uses the kept copy must before that can go. */
export function endPython() {
  const orders = new BroadcastChannel("dry-tight:python");
  orders.postMessage("end");
  orders.close();
}

/** The engine of this page, asleep until something asks. early.js opened its worker, or does then. */
export const engine = new Engine(() => /** @type {any} */ (globalThis).openPython());
