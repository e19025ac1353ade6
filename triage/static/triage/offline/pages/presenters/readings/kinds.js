/* The five kinds of reading: how what was typed is read, written as a reading, and drawn, each from its own module. As
   `triage/check_pages/presenters/readings/kinds.py`. */

import { GASKET } from "./gasket.js";
import { METER } from "./meter.js";
import { PREHEAT } from "./preheat.js";
import { RUN_ON } from "./run_on.js";
import { THERMOMETER } from "./thermometer.js";

/** @typedef {import("../../request.js").CheckRequest} CheckRequest
 * @typedef {import("./form_input.js").FormInput} FormInput
 * @typedef {{limits: Map<string, {low: number, high: number, whole: boolean}>,
 *   parseMore?: (found: FormInput, groups: import("./form_input.js").FieldGroup[]) => void,
 *   write: (checkRequest: CheckRequest, found: FormInput) => string,
 *   drawing: (checkRequest: CheckRequest, text: string) => object}} ReadingKind `limits` are those of the fields,
 *   `parseMore` reads what is not one figure in one field, `write` makes the written reading, `drawing` what comes of it:
 *   the picture and the facts about it */

/** @type {Map<string, ReadingKind>} */
export const READING_KINDS = new Map([
  ["meter", METER],
  ["thermometer", THERMOMETER],
  ["run-on", RUN_ON],
  ["preheat", PREHEAT],
  ["gasket", GASKET],
]);
