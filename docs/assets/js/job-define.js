// @ts-check
import { startJobCards } from "./job-card.js";

startJobCards();
if (document.querySelector("job-record")) {
  const { JobRecord } = await import("./job-record.js");
  JobRecord.define();
}
