/* The five kinds of reading as people meet them: name, form and result, each from its own module. As
   `triage/check_pages/presenters/readings/kinds.py`. */

import { GASKET } from "./gasket.js";
import { METER } from "./meter.js";
import { PREHEAT } from "./preheat.js";
import { RUN_ON } from "./run_on.js";
import { THERMOMETER } from "./thermometer.js";

/** `read` takes what was typed, `groups` are the fields, `write` the written reading, `told` what comes of it. */
export const READING_KINDS = new Map([
  ["meter", METER],
  ["thermometer", THERMOMETER],
  ["run-on", RUN_ON],
  ["preheat", PREHEAT],
  ["gasket", GASKET],
]);

/** What each kind is called, as a heading and as a link. */
export function kindNames(visit) {
  return {
    meter: visit.say("Power from the home’s meter"),
    thermometer: visit.say("Heat from an oven thermometer"),
    "run-on": visit.say("How long the fan runs on"),
    preheat: visit.say("How long the oven takes to get hot"),
    gasket: visit.say("Where the door seal lets heat out"),
  };
}

/** How the form is filled, in one or two sentences. */
export function formIntros(visit) {
  return {
    meter: visit.say("Fill in one of the three ways. Everything else is optional and makes it surer."),
    thermometer: visit.say("One reading is enough to begin with. Three or more tell far more."),
    "run-on": visit.say("Say when you last heard the fan and when you first found it still. Listen from a step away."),
    preheat: visit.say("The more you can say about the oven, the surer the comparison."),
    gasket: visit.say("Tick each place where the paper slips or the light shows. Leave the others."),
  };
}
