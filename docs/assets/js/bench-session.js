// @ts-check
/**
 * A session at the practice bench, as the page keeps it: the case's number, what was done and
 * when, the readings so far. Python moves it on from the last moment it gave; the same case and
 * the same actions give the same readings, so nothing but this has to be kept.
 *
 * @typedef {import("./system.js").System} System
 * @typedef {{ tick: number, state: number[], step: number, froze: boolean }} Moment
 * @typedef {{ tick: number, us: string, si: string }} Said
 * @typedef {[number, string, string]} Action tick, control, value
 * @typedef {{ at: number, label: string }} Target
 */
import { engine } from "./engine.js";
import { currentSystem } from "./system.js";

const KEY = "dry-tight:bench";
const AHEAD = 0.6; // s of the page's time that are worked out before they are shown
const MOST = 240; // ticks asked for at a time, so that an action never waits long

/** Told when something else than the clock has changed. */
export class BenchEvent extends Event {
  /** @param {string} what "case", "done", "refused", "complaint" or "end" */
  constructor(what, text = "") {
    super("bench");
    this.what = what;
    this.text = text;
  }
}

export class BenchSession extends EventTarget {
  number = 0;
  /** @type {string[]} */
  says = [];
  /** @type {Record<System, Target> | undefined} */
  target;
  /** @type {Action[]} */
  actions = [];
  /** @type {Said[]} */
  said = [];
  /** What the gauge showed at every tick, in both systems. @type {Record<System, number[]>} */
  readings = { us: [], si: [] };
  /** @type {Record<string, string>} */
  known = {};
  /** Seconds on the bench's clock. */
  at = 0;
  /** Bench seconds per second; 0 stands still. */
  speed = 0;

  /** Where Python can go on from, oldest first. @type {Moment[]} */
  #moments = [];
  /** Counts what has made earlier questions pointless. */
  #turn = 0;
  #asking = false;
  /** An action is on its way: what comes after it is not known yet. */
  #acting = false;
  /** Actions wait for each other. @type {Promise<void>} */
  #queue = Promise.resolve();

  /**
   * @param {number} tick seconds
   * @param {number} longest seconds
   */
  constructor(tick, longest) {
    super();
    this.tick = tick;
    this.longest = longest;
  }

  /** The tick that is shown. */
  get now() {
    return Math.min(Math.floor(this.at / this.tick + 1e-9), this.readings.us.length - 1);
  }

  get froze() {
    return this.#moments.some((each) => each.froze);
  }

  // --- a case ----------------------------------------------------------------------

  /**
   * @param {string | number} number as typed
   * @returns {Promise<boolean>} whether there is such a case
   */
  async setUp(number) {
    const reply = await this.#ask({ give: "case", case: number }, "bench case");
    if (!reply) return false;
    this.#turn += 1;
    Object.assign(this, { number: reply.case, says: reply.says, target: reply.target, known: reply.known });
    Object.assign(this, { actions: [], said: [], at: 0, speed: 0 });
    this.readings = { us: reply.us, si: reply.si };
    this.#moments = [reply.moment];
    this.keep();
    this.dispatchEvent(new BenchEvent("case"));
    return true;
  }

  /** The case's words again, after the reader has chosen other units. */
  async reword() {
    const reply = this.number && (await this.#ask({ give: "case", case: this.number }, "bench case"));
    if (!reply) return;
    Object.assign(this, { says: reply.says, target: reply.target });
    this.dispatchEvent(new BenchEvent("case"));
  }

  // --- time ------------------------------------------------------------------------

  /** @param {number} seconds of the page's time that have passed */
  pass(seconds) {
    const worked = (this.readings.us.length - 1) * this.tick;
    this.at = Math.max(this.at, Math.min(this.at + seconds * this.speed, worked));
    this.#fill();
    if (this.at >= this.longest - this.tick && this.speed) {
      this.speed = 0;
      this.dispatchEvent(new BenchEvent("end"));
    }
  }

  #ahead() {
    return Math.min(Math.ceil((AHEAD * Math.max(this.speed, 1)) / this.tick) + 1, MOST);
  }

  /** Work out what comes next, before the clock is there. */
  async #fill() {
    const from = this.#moments[this.#moments.length - 1];
    const left = Math.floor(this.longest / this.tick) - (from?.tick ?? 0);
    if (this.#asking || this.#acting || !from || left < 1 || from.tick - this.now > this.#ahead()) return;
    this.#asking = true;
    const turn = this.#turn;
    const ticks = Math.min(Math.max(this.now - from.tick, 0) + this.#ahead(), left);
    const reply = await this.#ask(this.#run(from, ticks), "bench time");
    this.#asking = false;
    if (reply && turn === this.#turn) this.#take(from, reply);
  }

  // --- what the learner does ---------------------------------------------------------

  /**
   * @param {string} control
   * @param {string} value
   */
  act(control, value) {
    this.#queue = this.#queue.then(() => this.#act(control, value));
    return this.#queue;
  }

  /**
   * @param {string} control
   * @param {string} value
   */
  async #act(control, value) {
    const tick = Math.min(Math.ceil(this.at / this.tick - 1e-9), this.readings.us.length - 1);
    const from = this.#moments.filter((each) => each.tick <= tick).pop();
    if (!from) return;
    const turn = ++this.#turn; // what was worked out beyond this moment no longer holds
    for (const list of Object.values(this.readings)) list.length = tick + 1;
    const left = Math.floor(this.longest / this.tick) - from.tick;
    const ticks = Math.min(tick - from.tick + this.#ahead(), left);
    const question = { ...this.#run(from, ticks), act: [tick, control, value] };
    this.#acting = true;
    const reply = await this.#ask(question, "bench action");
    this.#acting = false;
    if (!reply || turn !== this.#turn) return;
    this.#take(from, reply);
    this.keep();
    this.dispatchEvent(reply.refused ? new BenchEvent("refused", reply.refused) : new BenchEvent("done"));
  }

  /**
   * @param {Moment} from
   * @param {number} ticks
   */
  #run(from, ticks) {
    return { give: "run", case: this.number, moment: from, actions: this.actions, act: null, ticks };
  }

  /**
   * @param {Moment} from
   * @param {any} reply
   */
  #take(from, reply) {
    for (const system of /** @type {System[]} */ (["us", "si"])) {
      const list = this.readings[system];
      list.length = from.tick + 1;
      for (const value of reply[system]) list.push(value);
    }
    this.actions = reply.actions;
    this.known = reply.known;
    this.said = [...this.said.filter((each) => each.tick < from.tick), ...reply.said];
    this.#moments = [...this.#moments.filter((each) => each.tick <= from.tick), reply.moment];
    // Only moments that an action could still start from are wanted.
    const last = this.#moments.findLastIndex((each) => each.tick <= this.now);
    this.#moments.splice(0, Math.max(last, 0));
  }

  /**
   * @param {string} named
   * @returns {Promise<any>} the mark
   */
  mark(named) {
    const readings = this.readings.us.slice(0, this.now + 1);
    const question = { give: "mark", case: this.number, actions: this.actions, readings, named, froze: this.froze };
    return this.#ask(question, "bench mark");
  }

  /**
   * @param {object} question
   * @param {string} topic
   * @returns {Promise<any>} null when it was refused or came too late
   */
  async #ask(question, topic) {
    const reply = await engine.ask({ do: "bench", system: currentSystem(), ...question }, topic);
    if (reply?.ok === false) {
      this.dispatchEvent(new BenchEvent("complaint", reply.complaints[0].text));
      return null;
    }
    return reply;
  }

  // --- kept on this device -----------------------------------------------------------

  keep() {
    const [from] = this.#moments;
    if (!from) return;
    const { number, says, target, actions, said, known, at } = this;
    const readings = { us: this.readings.us.slice(0, this.now + 1), si: this.readings.si.slice(0, this.now + 1) };
    try {
      localStorage.setItem(KEY, JSON.stringify({ number, says, target, actions, said, known, at, readings, from }));
    } catch {
      // Not kept, then; the page in hand goes on.
    }
  }

  /** @returns {boolean} whether a session was kept here */
  recall() {
    try {
      const { from, ...kept } = JSON.parse(localStorage.getItem(KEY) ?? "null") ?? {};
      if (!from || !Array.isArray(kept.readings?.us) || kept.readings.us.length <= from.tick) return false;
      Object.assign(this, kept, { speed: 0 });
      this.#moments = [from]; // from here on Python gives the same readings again, and more
      return true;
    } catch {
      return false;
    }
  }
}
