// @ts-check
import { startJobCards } from "./job-card.js";

startJobCards();
if (document.querySelector("job-record")) import("./job-record.js").then(({ JobRecord }) => JobRecord.define());
