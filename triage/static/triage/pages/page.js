/* What runs in a page of a check. Each in a task of its own, so that one that fails stops no other. */

import { offerCopying } from "./advice.js";
import { fillBlankForm } from "./blank_form.js";
import { startOffline } from "./offline.js";
import { watchOutbox } from "./outbox_list.js";
import { offerReadingAloud } from "./read_aloud.js";
import { openReadings } from "./reading.js";
import { offerSaving } from "./save_answers.js";
import { openFinder } from "./start.js";
import { watchSteps } from "./step.js";
import { openTimer } from "./timer.js";

const STARTS = [
  watchSteps,
  openFinder,
  offerCopying,
  openReadings,
  fillBlankForm,
  startOffline,
  watchOutbox,
  offerReadingAloud,
  openTimer,
  offerSaving,
];

for (const start of STARTS) queueMicrotask(start);
