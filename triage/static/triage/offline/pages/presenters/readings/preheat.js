/* The preheat test: minutes from cold to the set heat, beside what the oven's power and size need. As
   `triage/check_pages/presenters/readings/preheat.py`. */

import { CLOCK_UNSURE, PREHEAT_FIELDS, readPreheat } from "../../../engine/readings/preheat.js";
import { writtenReading } from "../../../engine/readings/written.js";
import { minutesLine } from "../../drawings/minutes_line.js";
import { roundHalfEven, sixDigits } from "../../rounding.js";
import { degreesOf } from "./degrees.js";
import { plateBlanks, plateGroup, withUsualVolts } from "./plate.js";
import { blankFor } from "./typed.js";

const LONGEST_LINE = 240;
const SHORTEST_LINE = 30;
const TO_SPARE = 1.15;

export const PREHEAT = {
  read(visit, typed) {
    typed.read([...neededBlanks(visit), ...ovenBlanks(visit), ...plateBlanks(visit)], PREHEAT_FIELDS);
    if (typed.ticked("waiting")) typed.figures.set("waiting", "1");
  },

  groups(visit, typed) {
    const waiting = typed.tick("waiting", visit.say("It was not hot by then"));
    const optional = ovenBlanks(visit).map((blank) => typed.fieldOf(blank));
    return [
      { fields: [...neededBlanks(visit).map((blank) => typed.fieldOf(blank)), waiting], tool: "preheat" },
      {
        fields: optional,
        summary: visit.say("About the oven and the room"),
        open: optional.some(({ value }) => value),
      },
      plateGroup(visit, typed),
    ];
  },

  write: (visit, typed) => writtenReading(PREHEAT_FIELDS, withUsualVolts(visit, typed)),

  told(visit, text) {
    const { minutes, needed, ratio } = readPreheat(text);
    const low = Math.max(needed.value - 2 * needed.uncertainty, 0);
    const high = needed.value + 2 * needed.uncertainty;
    const waiting = ratio.atLeast > 0;
    const length = Math.min(Math.max(TO_SPARE * minutes, TO_SPARE * high, SHORTEST_LINE), LONGEST_LINE);
    const seen = [Math.max(minutes - CLOCK_UNSURE, 0), minutes + CLOCK_UNSURE, waiting];
    const words = { minutes: sixDigits(minutes), low: roundHalfEven(low), high: roundHalfEven(high) };
    const told = waiting
      ? visit.say("After %(minutes)s minutes it was not hot. A sound oven needs about %(low)s to %(high)s.", words)
      : visit.say("It took %(minutes)s minutes. A sound oven needs about %(low)s to %(high)s.", words);
    const stretches = [{ start: low, end: Math.min(high, length), kind: "plate", words: visit.say("needed") }];
    const lines = [
      visit.say("What it needs is worked out from its power and size; by how much ovens differ is counted in."),
    ];
    return { drawing: minutesLine(length, stretches, seen, visit.say("minutes from cold"), told), lines };
  },
};

function neededBlanks(visit) {
  const hint = visit.say("From cold until the light goes off, it beeps, or a thermometer shows it");
  return [blankFor("minutes", visit.say("Time it took"), hint, "min"), heatBlank(visit, "set", heatSet(visit))];
}

function ovenBlanks(visit) {
  const hint = visit.say("It stands on the label or in the manual");
  return [
    heatBlank(visit, "room", visit.say("Heat of the kitchen")),
    blankFor("litres", visit.say("Size of the oven"), hint, "l", "numeric"),
  ];
}

export function heatSet(visit) {
  return visit.say("Heat that was set");
}

/** A temperature of its own, in the unit of the place. */
export function heatBlank(visit, name, label) {
  const { unit, kept, shown } = degreesOf(visit);
  return blankFor(name, label, "", unit, "numeric", kept, shown);
}
