// @ts-check
import { JobSteps } from "./job-steps.js";

JobSteps.define();
