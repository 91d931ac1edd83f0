// @ts-check
/** The clock of the practice bench: it runs by the page's frames, and says when what is due. */

const LONGEST_FRAME = 0.25; // s; after a longer pause the clock goes on from where it was
const EVERY = { reading: 50, trace: 100, keep: 5000, tell: 30_000 }; // ms
const CALM = { ...EVERY, reading: 500, trace: 1000 }; // ms, for who wants little motion

/** @typedef {keyof typeof EVERY} Due */

export class BenchClock {
  #frame = 0;
  #calm = matchMedia("(prefers-reduced-motion: reduce)");
  /** When the last frame was, and when each thing was last done, on the page's clock [ms]. */
  #last = { frame: 0, reading: 0, trace: 0, keep: 0, tell: 0 };

  /**
   * @param {(seconds: number) => void} pass called every frame with the time since the one before
   * @param {Record<Due, () => void>} does what to do when it is due
   */
  constructor(pass, does) {
    this.pass = pass;
    this.does = does;
  }

  start() {
    this.stop();
    this.#last.frame = this.#last.tell = performance.now();
    this.#frame = requestAnimationFrame((now) => this.#tick(now));
  }

  stop() {
    cancelAnimationFrame(this.#frame);
  }

  /** @param {number} now */
  #tick(now) {
    this.#frame = requestAnimationFrame((next) => this.#tick(next));
    const since = Math.min(Math.max((now - this.#last.frame) / 1000, 0), LONGEST_FRAME);
    this.#last.frame = now;
    this.pass(since);
    // One thing to a frame, so that none of them takes longer than a frame on a slow phone.
    const every = this.#calm.matches ? CALM : EVERY;
    const due = /** @type {Due[]} */ (Object.keys(every)).find((what) => now - this.#last[what] >= every[what]);
    if (!due) return;
    this.#last[due] = now;
    this.does[due]();
  }
}

/** A time on the bench's clock. @param {number} seconds */
export function clockText(seconds) {
  const whole = Math.floor(seconds + 1e-6);
  const two = (/** @type {number} */ value) => String(value).padStart(2, "0");
  return `${Math.floor(whole / 3600)}:${two(Math.floor(whole / 60) % 60)}:${two(whole % 60)}`;
}
