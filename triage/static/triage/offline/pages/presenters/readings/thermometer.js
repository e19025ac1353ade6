/* The thermometer test: the set point and readings with their times, in rows that grow as they are filled. As
   `triage/check_pages/presenters/readings/thermometer.py`. */

import {
  readThermometer,
  THERMOMETER_FIELDS,
  turningPoints,
  wholeCycles,
} from "../../../engine/readings/thermometer.js";
import { warmingTrend } from "../../../engine/readings/warming.js";
import { encode } from "../../../engine/readings/encoding.js";
import { NO_FAULT, temperatureLine } from "../../drawings/temperature_line.js";
import { fixed, roundHalfEven } from "../../rounding.js";
import { degreesOf } from "./degrees.js";
import { errorOf } from "./form_input.js";

/** @typedef {import("../../request.js").CheckRequest} CheckRequest
 * @typedef {import("./form_input.js").FormInput} FormInput
 * @typedef {import("./degrees.js").Degrees} Degrees
 * @typedef {import("../../../engine/readings/thermometer.js").Temperatures} Temperatures */

const USUAL_SWING = 22;
const NOTICED = 1;
const EARLY = 15; // with a first reading later than this nobody saw when the set heat was first reached

export const THERMOMETER = {
  limits: THERMOMETER_FIELDS,

  /** @param {FormInput} found @param {import("./form_input.js").FieldGroup[]} groups */
  parseMore(found, groups) {
    const rows = groups.find(({ columns }) => columns.length);
    for (let number = 1; number <= found.lastRow(rows); number += 1) {
      const isBegun = rows.fields.some(({ name }) => found.text(`${name}-${number}`));
      for (const field of isBegun ? rows.fields : []) {
        const name = `${field.name}-${number}`;
        if (found.text(name)) found.parseField(field, name, THERMOMETER_FIELDS);
        else found.errors.set(name, errorOf("missing", field.label));
      }
    }
  },

  /** The rows that are whole, as one list; what is wrong in a row is said beside it.
   * @param {CheckRequest} _ @param {FormInput} found */
  write(_, { figures }) {
    const whole = [...figures.keys()]
      .filter((name) => name.startsWith("time-"))
      .map((time) => [figures.get(time), figures.get(time.replace("time", "shown"))])
      .filter(([, shown]) => shown !== undefined)
      .map((row) => row.join("-"));
    return encode(THERMOMETER_FIELDS, new Map([...figures, ["readings", whole.join("_")]]));
  },

  /** @param {CheckRequest} checkRequest @param {string} text */
  drawing(checkRequest, text) {
    const found = readThermometer(text);
    const degrees = degreesOf(checkRequest);
    const facts = {
      kind: "thermometer",
      ...shownFacts(found, degrees),
      ...toldByReadings(found, degrees),
      ...warmingFacts(found, degrees),
    };
    return temperatureLine(found, (celsius) => `${fixed(degrees.fromCelsius(celsius), 0)}°`, facts);
  },
};

/** What the drawing shows. @param {Temperatures} found @param {Degrees} degrees */
function shownFacts({ points, mean, setPoint }, { temperatureText, differenceText }) {
  const values = points.map(([, value]) => value);
  return {
    low: temperatureText(Math.min(...values)),
    high: temperatureText(Math.max(...values)),
    mean: temperatureText(mean.value),
    set_to: temperatureText(setPoint),
    no_fault: differenceText(NO_FAULT),
    cycles: wholeCycles(points).length,
  };
}

/** What the readings say; nothing under a name where there is nothing to say.
 * @param {Temperatures} found @param {Degrees} degrees */
function toldByReadings(
  { quantities, overshoot, reachedMinute: reached, points, readingsWanted: more },
  { differenceText },
) {
  const [offset, swing] = [quantities.get("offset"), quantities.get("swing")];
  return {
    off: differenceText(Math.abs(offset.value)),
    below: offset.value < 0,
    unsure: differenceText(2 * offset.uncertainty),
    swing: turningPoints(points).length ? differenceText(swing.value) : "",
    usual_swing: differenceText(USUAL_SWING),
    reached: reached === null || points[0][0] >= EARLY ? "" : String(roundHalfEven(reached)),
    over: overshoot >= NOTICED ? differenceText(overshoot) : "",
    more,
  };
}

/** How hot it could have got, and how fast it loses heat; nothing where that cannot be told.
 * @param {Temperatures} found @param {Degrees} degrees */
function warmingFacts(found, { temperatureText, differenceText }) {
  const headed = warmingTrend(found);
  if (!headed) return {};
  return {
    heading_for: temperatureText(headed.endTemperature.value),
    heading_unsure: differenceText(2 * headed.endTemperature.uncertainty),
    short: headed.fallsShort,
    half: roundHalfEven(headed.halfTimeMinutes),
  };
}
