// @ts-check
import { PracticeBench } from "./bench.js";

PracticeBench.define();
