/* The thermometer test: the set point and readings with their times, in rows that grow as they are filled. As
   `triage/check_pages/presenters/readings/thermometer.py`. */

import {
  THERMOMETER_FIELDS,
  readThermometer,
  turningPoints,
  wholeCycles,
} from "../../../engine/readings/thermometer.js";
import { headingOf } from "../../../engine/readings/warming.js";
import { MOST_ITEMS, writtenReading } from "../../../engine/readings/written.js";
import { temperatureLine } from "../../drawings/temperature_line.js";
import { fixed, roundHalfEven } from "../../rounding.js";
import { degreesOf } from "./degrees.js";
import { heatBlank, heatSet } from "./preheat.js";
import { reasonSentence } from "./reasons.js";
import { blankFor } from "./typed.js";

const FEWEST_ROWS = 6;
const MORE_ROWS = 2;
const MOST_ROWS = MOST_ITEMS + 1;
const NOTICED = 1;
const EARLY = 15; // with a first reading later than this nobody saw when the set heat was first reached
const TIME = "time-";
const SHOWN = "shown-";

export const THERMOMETER = {
  read(visit, typed) {
    typed.read([heatBlank(visit, "set", heatSet(visit)), ...instrumentBlanks(visit)], THERMOMETER_FIELDS);
    const [time, shown] = rowBlanks(visit);
    for (let number = 1; number <= lastFilled(typed); number += 1) {
      readCell(visit, typed, time, TIME + number, SHOWN + number);
      readCell(visit, typed, shown, SHOWN + number, TIME + number);
    }
  },

  groups(visit, typed) {
    const { unit } = degreesOf(visit);
    const instrument = instrumentBlanks(visit).map((blank) => typed.fieldOf(blank));
    return [
      { fields: [typed.fieldOf(heatBlank(visit, "set", heatSet(visit)))] },
      {
        fields: rowFields(visit, typed),
        heading: visit.say("Readings"),
        tool: "thermometer",
        columns: [visit.say("Minutes since it was switched on"), visit.say("Temperature in %(unit)s", { unit })],
      },
      {
        fields: instrument,
        summary: visit.say("About the thermometer"),
        open: instrument.some(({ value }) => value),
      },
    ];
  },

  /* The rows that are whole, as one list; problems of a row are told beside it. */
  write(visit, typed) {
    const { figures } = typed;
    const rows = [];
    for (let number = 1; number <= lastFilled(typed); number += 1) {
      const [time, shown] = [figures.get(TIME + number), figures.get(SHOWN + number)];
      if (time !== undefined && shown !== undefined) rows.push(`${time}-${shown}`);
    }
    return writtenReading(THERMOMETER_FIELDS, new Map([...figures, ["readings", rows.join("_")]]));
  },

  told(visit, text) {
    const found = readThermometer(text);
    const degrees = degreesOf(visit);
    const legend = {
      degrees: (celsius) => `${fixed(degrees.shown(celsius), 0)}°`,
      minutes: visit.say("min"),
      band: visit.say("Shaded: no fault"),
      mean: visit.say("mean"),
      cycle: visit.say("one cycle"),
    };
    const words = temperatureWords(visit, found, degrees);
    return { drawing: temperatureLine(found, legend, words), lines: temperatureLines(visit, found, degrees) };
  },
};

function readCell(visit, typed, blank, name, other) {
  if (typed.text(name)) typed.put(blank, name, THERMOMETER_FIELDS.get(blank.name));
  else if (typed.text(other)) typed.problems.set(name, reasonSentence(visit, "missing", { label: blank.label }));
}

function temperatureWords(visit, found, degrees) {
  const values = found.points.map(([, value]) => value);
  const cycles = wholeCycles(found.points).length;
  const told = visit.say(
    "Readings from %(low)s to %(high)s, mean %(mean)s. Set to %(set_to)s; within %(apart)s of that is no fault.",
    {
      low: degrees.words(Math.min(...values)),
      high: degrees.words(Math.max(...values)),
      set_to: degrees.words(found.setTo),
      mean: degrees.words(found.mean.value),
      apart: degrees.apart(15),
    },
  );
  const ups = cycles
    ? visit.sayCounted("%(n)s whole rise and fall shows.", "%(n)s whole rises and falls show.", cycles)
    : visit.say("No whole rise and fall shows yet.");
  return `${told} ${ups}`;
}

function temperatureLines(visit, found, degrees) {
  const { quantities, overshoot, reached, points, more } = found;
  const { apart } = degrees;
  const [offset, swing] = [quantities.get("offset"), quantities.get("swing")];
  const words = { off: apart(Math.abs(offset.value)), unsure: apart(2 * offset.uncertainty) };
  const lines = [
    offset.value < 0
      ? visit.say("The mean is %(off)s below the set heat, give or take %(unsure)s.", words)
      : visit.say("The mean is %(off)s above the set heat, give or take %(unsure)s.", words),
  ];
  if (turningPoints(points).length) {
    lines.push(
      visit.say("It goes up and down by about %(swing)s. Up and down by %(usual)s is how ovens work.", {
        swing: apart(swing.value),
        usual: apart(22),
      }),
    );
  }
  if (reached !== null && points[0][0] < EARLY) {
    const minutes = { reached: roundHalfEven(reached) };
    lines.push(visit.say("It first came to the set heat after about %(reached)s minutes.", minutes));
  }
  const headed = headingOf(found);
  if (headed) lines.push(headingLine(visit, headed, degrees));
  if (overshoot >= NOTICED) {
    lines.push(visit.say("At its highest it was %(over)s over the set heat.", { over: apart(overshoot) }));
  }
  if (more) {
    lines.push(
      visit.sayCounted(
        "%(n)s more reading after the first half hour would make this surer.",
        "%(n)s more readings after the first half hour would make this surer.",
        more,
      ),
    );
  }
  return lines;
}

/* How hot it could have got, how fast it loses heat, and which parts either speaks for. */
function headingLine(visit, { end, isShort, half }, { words, apart }) {
  return [
    visit.say("As it warmed up it was heading for %(end)s, give or take %(unsure)s.", {
      end: words(end.value),
      unsure: apart(2 * end.uncertainty),
    }),
    isShort
      ? visit.say("That is short of the set heat and speaks for a weak heater or a leaking door.")
      : visit.say("That is past the set heat, so a mean that is off speaks for the thermostat."),
    visit.say("It would lose half its warmth in about %(half)s minutes. Far fewer than 13 speak for a leaking door.", {
      half: roundHalfEven(half),
    }),
  ].join(" ");
}

/* The number of the last row with anything in it. */
function lastFilled(typed) {
  let last = MOST_ROWS;
  while (last && !typed.text(TIME + last) && !typed.text(SHOWN + last)) last -= 1;
  return last;
}

/* Time and temperature by turns, with some rows to spare while there may be more. */
function rowFields(visit, typed) {
  const last = lastFilled(typed);
  const count = Math.max(FEWEST_ROWS, last, Math.min(last + MORE_ROWS, MOST_ITEMS));
  const [time, shown] = rowBlanks(visit);
  const fieldFor = ({ label }, name, number) => typed.fieldOf(blankFor("", `${label} ${number}`), name + number);
  return Array.from({ length: count }, (_, at) => [
    fieldFor(time, TIME, at + 1),
    fieldFor(shown, SHOWN, at + 1),
  ]).flat();
}

function rowBlanks(visit) {
  const { kept, shown } = degreesOf(visit);
  return [
    blankFor("readings", visit.say("Minutes of reading")),
    blankFor("temperature", visit.say("Temperature of reading"), "", "", "decimal", kept, shown),
  ];
}

function instrumentBlanks(visit) {
  const { unit, apart, kept, shown, keptApart, shownApart } = degreesOf(visit);
  const cheap = visit.say("If it came with a note. Cheap ones: %(apart)s", { apart: apart(10) });
  return [
    blankFor("tolerance", visit.say("How far off it may be"), cheap, unit, "decimal", keptApart, shownApart),
    blankFor(
      "boiling",
      visit.say("What it showed in boiling water"),
      visit.say("If you tried that before"),
      unit,
      "decimal",
      kept,
      shown,
    ),
  ];
}
