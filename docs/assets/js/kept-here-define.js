// @ts-check
import { KeptHere } from "./kept-here.js";

KeptHere.define();
