// @ts-check
import { NeedlePractice } from "./needle.js";

NeedlePractice.define();
