// @ts-check
import { LessonProgress } from "./lesson-progress.js";
import { LessonQuiz } from "./lesson-quiz.js";

LessonQuiz.define();
LessonProgress.define();
