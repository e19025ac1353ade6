/* The meter test: flashes of its light (tapped along or counted), its register, or a display; and the plate. As
   `triage/check_pages/presenters/readings/meter.py`. */

import { METER_FIELDS, readMeter } from "../../../engine/readings/meter.js";
import { MOST_ITEMS, writtenReading } from "../../../engine/readings/written.js";
import { powerBar } from "../../drawings/power_bar.js";
import { roundHalfEven } from "../../rounding.js";
import { SPACE, readNumber } from "../../typed_number.js";
import { isFloor, powerText } from "../reading_text.js";
import { plateBlanks, plateGroup, withUsualVolts } from "./plate.js";
import { powerClassLine } from "./power_class.js";
import { reasonSentence } from "./reasons.js";
import { blankFor, quotedStart } from "./typed.js";

const RESTED = 0.1;
const BETWEEN_TAPS = new RegExp(`(?:${SPACE}|[_;])+`);

export const METER = {
  read(visit, typed) {
    const { light, counted, register, display } = meterBlanks(visit);
    typed.read(
      [...light, ...counted, ...register, ...display, backgroundBlank(visit), ...plateBlanks(visit)],
      METER_FIELDS,
    );
    readTaps(visit, typed);
  },

  groups(visit, typed) {
    const fieldsFor = (blanks) => blanks.map((blank) => typed.fieldOf(blank));
    const { light, counted, register, display } = meterBlanks(visit);
    const ways = [
      {
        fields: fieldsFor([...light, tapsBlank(visit), ...counted]),
        summary: visit.say("By the flashes of the meter’s light"),
        tool: "meter",
      },
      { fields: fieldsFor(register), summary: visit.say("By two readings of the meter’s figures") },
      { fields: fieldsFor(display), summary: visit.say("By a display that shows watts") },
    ];
    const used = ways.map(({ fields }) => fields.some(({ value }) => value));
    const shown = ways.map((way, at) => ({ ...way, open: used[at] || (at === 0 && !used.includes(true)) }));
    return [...shown, { fields: fieldsFor([backgroundBlank(visit)]) }, plateGroup(visit, typed)];
  },

  write: (visit, typed) => writtenReading(METER_FIELDS, withUsualVolts(visit, typed)),

  told(visit, text) {
    const power = readMeter(text);
    const { expected, known } = power.rating;
    const words = {
      drawn: isFloor(power.watts)
        ? visit.say("%(power)s or more", { power: powerText(power.watts) })
        : powerText(power.watts),
      expected: powerText(expected),
    };
    const upper = known ? visit.say("By its plate") : visit.say("A usual heater");
    const told = visit.say("The oven drew %(drawn)s. To be expected: %(expected)s.", words);
    return {
      drawing: powerBar(power.watts, expected, [upper, visit.say("Drawn now")], told),
      lines: powerLines(visit, power),
    };
  },
};

function powerLines(visit, power) {
  const { watts, rating, rested } = power;
  const lines = [
    powerClassLine(visit, power),
    rating.known
      ? visit.say(
          "A sound oven may draw a tenth less than its plate says or a twentieth more. The supply may be a tenth off.",
        )
      : visit.say("No plate was typed, so a usual heater of 2 kW is taken. The figures on the plate make it surer."),
  ];
  if (rested > RESTED) {
    const words = { share: roundHalfEven(100 * rested) };
    lines.push(
      visit.say(
        "The oven seems to have paused for %(share)s %% of the time, as a thermostat does. That is left out.",
        words,
      ),
    );
  }
  if (watts.atLeast > 0) {
    lines.push(
      visit.say("If the oven paused meanwhile, it draws more than this while it heats. Tapping along shows it."),
    );
  }
  return lines;
}

/* The moments of the flashes, with a space between; what is no number is named. */
function readTaps(visit, typed) {
  const moments = typed.text("taps").split(BETWEEN_TAPS).filter(Boolean);
  const { high } = METER_FIELDS.get("taps");
  const wrong = moments.find((moment) => readNumber(moment, 0, high).reason);
  if (wrong) {
    const words = { typed: quotedStart(wrong), low: 0, high, label: tapsBlank(visit).label };
    typed.problems.set("taps", reasonSentence(visit, readNumber(wrong, 0, high).reason, words));
  } else if (moments.length > MOST_ITEMS) {
    typed.problems.set("taps", reasonSentence(visit, "too-many", {}));
  } else if (moments.length) {
    typed.figures.set("taps", moments.join("_"));
  }
}

function tapsBlank(visit) {
  const hint = visit.say("At least five, with a space between. The counter fills this in where it runs");
  return blankFor("taps", visit.say("Moment of each flash"), hint, "s", "text");
}

function meterBlanks(visit) {
  const often = visit.say("It stands on the meter, often 1000 imp/kWh");
  const start = visit.say("Start the clock at a flash and count that one as 1");
  return {
    light: [blankFor("impulses", visit.say("Flashes for one kilowatt-hour"), often, "imp/kWh", "numeric")],
    counted: [
      blankFor("flashes", visit.say("Or: flashes counted"), start, "", "numeric"),
      blankFor("seconds", visit.say("Time from the first to the last"), "", "s"),
    ],
    register: [
      blankFor("before", visit.say("First reading"), visit.say("With all its decimals"), "kWh"),
      blankFor("after", visit.say("Second reading"), "", "kWh"),
      blankFor("minutes", visit.say("Time between the two"), "", "min"),
    ],
    display: [
      blankFor("idle", visit.say("With the oven off"), "", "W", "numeric"),
      blankFor("drawing", visit.say("With the oven heating"), "", "W", "numeric"),
    ],
  };
}

function backgroundBlank(visit) {
  const hint = visit.say("With the oven off, if you know it");
  return blankFor("background", visit.say("What the rest of the home draws"), hint, "W", "numeric");
}
