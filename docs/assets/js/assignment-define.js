// @ts-check
import { AssignmentMaker } from "./assignment.js";

AssignmentMaker.define();
