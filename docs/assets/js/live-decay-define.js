// @ts-check
import { LiveDecay } from "./live-decay.js";

LiveDecay.define();
