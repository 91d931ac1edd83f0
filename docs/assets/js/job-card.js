// @ts-check
/**
 * What ties every card to the open job: "Add to job" in its tools, and "Use the job's
 * numbers" when the job knows something that the card asks for. A button elsewhere with
 * data-job-add="slug" adds the card of that slug.
 *
 * @typedef {import("./worked-card.js").WorkedCard} WorkedCard
 * @typedef {import("./entries.js").Entry} Entry
 * @typedef {{ entries: import("./entries.js").Entries, names: string, title: string }} Known
 */
import { engine } from "./engine.js";
import { readEntries, sameEntry } from "./entries.js";
import { isOpenJobEvent, openJobId, setOpenJob } from "./job-open.js";
import { currentSystem } from "./system.js";

const RECORD = new URL("../../on-the-job/job/", import.meta.url).href;

/** What the open job knows for a card, until the job changes. @type {Map<WorkedCard, Known | null>} */
const known = new Map();
let watching = false;

export function startJobCards() {
  document.addEventListener("click", (event) => {
    const button = event.target instanceof Element ? event.target.closest("button") : null;
    if (button?.dataset.tool === "job" || button?.dataset.jobAdd) add(button);
    else if (button?.dataset.tool === "use") use(button);
  });
  document.addEventListener("answered", ({ target }) => offer(/** @type {WorkedCard} */ (target)));
  addEventListener("storage", (event) => isOpenJobEvent(event) && offerAgain());
}

/** The store is loaded when there is a job, or when there is about to be one. */
async function store() {
  const module = await import("./job-store.js");
  if (!watching) module.jobs.addEventListener("jobs", offerAgain);
  watching = true;
  return module;
}

// --- adding ------------------------------------------------------------------------

/** @param {HTMLButtonElement} button */
async function add(button) {
  const card = cardOf(button);
  if (!card) return;
  const place = button.closest("worked-card, live-decay") ?? card;
  const sorry = "The calculator could not start, so there is no answer to add. What you typed is kept.";
  if (engine.state === "broken") return say(place, sorry);
  if (engine.state !== "up") say(place, "Adding it as soon as the calculator is up.");
  const [entries, system] = [readEntries(card.form), currentSystem()];
  const reply = await engine.ask({ do: "answer", card: card.slug, entries, system }, "job-add");
  if (!reply) return; // pressed again meanwhile
  if (!reply.ok) return say(place, "Only an answer goes into the job: put the entries right first.");
  try {
    const { job, isNew } = await keep({ card: card.slug, entries, system, said: reply.say });
    const { titleOf } = await import("./job-file.js");
    say(place, `${isNew ? "Added to" : "It is already in"} ${titleOf(job)}.`, "Open the job record");
  } catch (error) {
    say(place, /** @type {Error} */ (error).message);
  }
}

/** @param {Parameters<typeof import("./job-file.js").newResult>[0]} answer */
async function keep(answer) {
  const { changeJob, putJob, readJob } = await store();
  const { newJob, newResult } = await import("./job-file.js");
  const result = newResult(answer);
  if (!(await readJob(openJobId()))) {
    const job = { ...newJob(), results: [result] };
    await putJob(job);
    setOpenJob(job.id);
    offerAgain();
    return { job, isNew: true };
  }
  let isNew = true;
  const job = await changeJob(openJobId(), ({ results }) => {
    const last = results.filter((each) => each.card === answer.card).at(-1);
    isNew = !last || JSON.stringify(last.entries) !== JSON.stringify(answer.entries);
    if (isNew) results.push(result);
    return isNew;
  });
  return { job, isNew };
}

// --- using what the job knows ---------------------------------------------------------

/** @param {HTMLButtonElement} button */
function use(button) {
  const card = cardOf(button);
  const knows = card && known.get(card);
  if (!card || !knows) return;
  card.enter(knows.entries);
  say(card, `From ${knows.title}: ${knows.names}.`);
  const other = button.parentElement?.querySelector("[data-tool=job]");
  if (other instanceof HTMLElement) other.focus(); // this button goes away
}

/**
 * Show the button while the job knows something that the form does not say.
 * @param {WorkedCard} card
 */
async function offer(card) {
  if (openJobId() && !known.has(card)) {
    known.set(card, null);
    known.set(card, await whatIsKnown(card));
  }
  lineOf(card); // there before it has anything to say, so that it is heard
  const { entries } = known.get(card) ?? { entries: {} };
  const now = readEntries(card.form);
  const tells = Object.entries(entries).some(([name, entry]) => !holds(now[name], entry));
  const row = card.querySelector(".tools-row");
  const button = row?.querySelector("[data-tool=use]");
  if (!tells) button?.remove();
  else if (!button && row) {
    const made = document.createElement("button");
    made.type = "button";
    made.dataset.tool = "use";
    made.textContent = "Use the job's numbers";
    row.append(made);
  }
}

function offerAgain() {
  const cards = [...known.keys(), ...document.querySelectorAll("worked-card[state=done]")];
  known.clear();
  for (const card of new Set(cards)) offer(/** @type {WorkedCard} */ (card));
}

/**
 * @param {WorkedCard} card
 * @returns {Promise<Known | null>}
 */
async function whatIsKnown(card) {
  try {
    const job = await (await store()).readJob(openJobId());
    if (!job) return null;
    const reply = await engine.ask({ do: "job", give: "feeds", card: card.slug, job }, `job-feeds-${card.slug}`);
    const { titleOf } = await import("./job-file.js");
    return reply?.ok ? { ...reply, title: titleOf(job) } : null;
  } catch {
    return null; // adding says what is wrong with the store; here there is just nothing to offer
  }
}

/**
 * @param {Entry | undefined} now
 * @param {Entry} entry rows may have columns that this card does not
 */
function holds(now, entry) {
  if (!Array.isArray(now) || !Array.isArray(entry)) return sameEntry(now, entry);
  const same = (/** @type {Record<string, string>} */ row, /** @type {number} */ i) =>
    Object.entries(row).every(([name, text]) => (entry[i][name] ?? text) === text);
  return now.length === entry.length && now.every(same);
}

// --- the page ---------------------------------------------------------------------------

/**
 * @param {HTMLButtonElement} button
 * @returns {WorkedCard | null}
 */
function cardOf(button) {
  const slug = button.dataset.jobAdd;
  return slug ? document.querySelector(`worked-card[card="${slug}"]`) : button.closest("worked-card");
}

/**
 * @param {Element} place
 * @param {string} text
 * @param {string} [link] to the job record
 */
function say(place, text, link) {
  const line = lineOf(place);
  line.textContent = text;
  if (!link) return;
  const anchor = document.createElement("a");
  anchor.href = RECORD;
  anchor.textContent = link;
  line.append(" ", anchor);
}

/** @param {Element} place */
function lineOf(place) {
  const there = place.querySelector(".job-says");
  if (there) return there;
  const line = document.createElement("p");
  line.className = "job-says";
  line.setAttribute("role", "status");
  place.querySelector(".tools-row")?.after(line);
  return line;
}
