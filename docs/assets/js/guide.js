// @ts-check
/** All that a page brings to life. The build makes one file of this and what it imports. */
import "./frame.js";
import "./worked-card-define.js";
import "./job-steps-define.js";
import "./lesson-quiz-define.js";
import "./live-decay-define.js";
import "./practice-define.js";
import "./assignment-define.js";
import "./kept-here-define.js";
import "./bench-define.js";
import "./needle-define.js";
import "./job-define.js";

export { engine } from "./engine.js";
