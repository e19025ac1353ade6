/* What runs in a page of a check. Each in a task of its own, so that one that fails stops no other. */

import { offerCopying } from "./advice.js";
import { offerSaving } from "./keep_answers.js";
import { keepOnPhone } from "./phone.js";
import { offerReadingAloud } from "./read_aloud.js";
import { openReadings } from "./reading.js";
import { openFinder } from "./start.js";
import { watchSteps } from "./step.js";
import { openTimer } from "./timer.js";
import { watchOutbox } from "./waiting.js";

const STARTS = [
  watchSteps,
  openFinder,
  offerCopying,
  openReadings,
  keepOnPhone,
  watchOutbox,
  offerReadingAloud,
  openTimer,
  offerSaving,
];

for (const start of STARTS) queueMicrotask(start);
