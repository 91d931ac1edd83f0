// @ts-check
/**
 * A job file from elsewhere: read, held to the schema by Python, and kept.
 *
 * @typedef {import("./job-file.js").Job} Job
 */
import { engine } from "./engine.js";
import { askReader } from "./job-ask.js";
import { asText, newId, titleOf } from "./job-file.js";
import { putJob, readJob } from "./job-store.js";

const LARGEST = 50_000_000; // bytes

/**
 * @param {File} file
 * @returns {Promise<{ job?: Job, says: string }>} no job when nothing was kept
 */
export async function importJob(file) {
  if (file.size > LARGEST) return { says: "That file is over 50 MB: choose a job file that was saved from this guide." };
  /** @type {any} */
  let job;
  try {
    job = JSON.parse(await file.text());
  } catch {
    return { says: "That is not a job file: choose one that was saved from this guide; its name ends in .json." };
  }
  if (engine.state === "broken") return { says: "The calculator could not start, so the file can't be checked or opened." };
  const checked = await engine.ask({ do: "job", give: "check", job }, "job-check");
  if (!checked) return { says: "" };
  if (!checked.ok) return { says: checked.complaints[0].text };
  const here = await readJob(job.id);
  if (here && asText(here) !== asText(job)) {
    const about = `${titleOf(here)} is on this device already, and is not the same as in the file.`;
    const answer = await askReader(`${about} Keep both, or replace it with the file?`, [
      ["replace", "Replace it"],
      ["", "Leave it"],
      ["both", "Keep both"],
    ]);
    if (!answer) return { says: "Nothing was changed." };
    if (answer === "both") job.id = newId();
  }
  await putJob(job);
  return { job, says: here && asText(here) === asText(job) ? `${titleOf(job)} was here already, the same.` : `Opened ${titleOf(job)}.` };
}
