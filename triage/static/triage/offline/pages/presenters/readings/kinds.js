/* The five kinds of reading: how what was typed is read, written as a reading, and drawn, each from its own module. As
   `triage/check_pages/presenters/readings/kinds.py`. */

import { GASKET } from "./gasket.js";
import { METER } from "./meter.js";
import { PREHEAT } from "./preheat.js";
import { RUN_ON } from "./run_on.js";
import { THERMOMETER } from "./thermometer.js";

/** `limits` are those of the fields, `parseMore` reads what is not one figure in one field, `write` makes the written
 * reading, `drawing` what comes of it: the picture and the facts about it. */
export const READING_KINDS = new Map([
  ["meter", METER],
  ["thermometer", THERMOMETER],
  ["run-on", RUN_ON],
  ["preheat", PREHEAT],
  ["gasket", GASKET],
]);
