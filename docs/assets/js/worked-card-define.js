// @ts-check
import { WorkedCard } from "./worked-card.js";

WorkedCard.define();
