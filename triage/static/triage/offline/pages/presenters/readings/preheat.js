/* The preheat test: minutes from cold to the set heat, beside what the oven's power and size need. As
   `triage/check_pages/presenters/readings/preheat.py`. */

import { CLOCK_UNCERTAINTY_MINUTES, PREHEAT_FIELDS, readPreheat } from "../../../engine/readings/preheat.js";
import { encode } from "../../../engine/readings/encoding.js";
import { minutesLine } from "../../drawings/minutes_line.js";
import { roundHalfEven, sixDigits } from "../../rounding.js";
import { withUsualVolts } from "./plate.js";

/** @typedef {import("../../request.js").CheckRequest} CheckRequest
 * @typedef {import("./form_input.js").FormInput} FormInput */

const MAX_MINUTES = 240;
const MIN_MINUTES = 30;
const MARGIN = 1.15;

export const PREHEAT = {
  limits: PREHEAT_FIELDS,

  /** @param {CheckRequest} checkRequest @param {FormInput} found */
  write: (checkRequest, found) => encode(PREHEAT_FIELDS, withUsualVolts(checkRequest, found)),

  /** @param {CheckRequest} _ @param {string} text */
  drawing(_, text) {
    const { minutes, needed, ratio } = readPreheat(text);
    const low = Math.max(needed.value - 2 * needed.uncertainty, 0);
    const high = needed.value + 2 * needed.uncertainty;
    const waiting = ratio.pLowerBound > 0;
    const length = Math.min(Math.max(MARGIN * minutes, MARGIN * high, MIN_MINUTES), MAX_MINUTES);
    /** @type {[number, number, boolean]} */
    const seen = [Math.max(minutes - CLOCK_UNCERTAINTY_MINUTES, 0), minutes + CLOCK_UNCERTAINTY_MINUTES, waiting];
    const stretches = [{ start: low, end: Math.min(high, length), kind: "plate", name: "needed" }];
    const facts = {
      kind: "preheat",
      waiting,
      minutes: sixDigits(minutes),
      low: roundHalfEven(low),
      high: roundHalfEven(high),
    };
    return minutesLine(length, stretches, seen, "minutes-from-cold", facts);
  },
};
