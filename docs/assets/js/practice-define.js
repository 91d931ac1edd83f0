// @ts-check
import { ProblemPractice } from "./practice.js";

ProblemPractice.define();
