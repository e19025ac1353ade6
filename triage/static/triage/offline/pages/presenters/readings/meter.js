/* The meter test: flashes of its light (tapped along or counted), its register, or a display; and the plate. As
   `triage/check_pages/presenters/readings/meter.py`. */

import { METER_FIELDS, readMeter } from "../../../engine/readings/meter.js";
import { MAX_ITEMS, encode } from "../../../engine/readings/encoding.js";
import { powerBar } from "../../drawings/power_bar.js";
import { roundHalfEven } from "../../rounding.js";
import { readNumber, SPACE } from "../../typed_number.js";
import { isFloor, powerText } from "../reading_text.js";
import { errorOf } from "./form_input.js";
import { withUsualVolts } from "./plate.js";
import { powerClassFacts } from "./power_class.js";

/** @typedef {import("../../request.js").CheckRequest} CheckRequest
 * @typedef {import("./form_input.js").FormInput} FormInput */

const RESTED = 0.1;
const BETWEEN_TAPS = new RegExp(`(?:${SPACE}|[_;])+`);

export const METER = {
  limits: METER_FIELDS,

  /** The moments of the flashes, with a space between; what is no number is named.
   * @param {FormInput} found @param {import("./form_input.js").FieldGroup[]} groups */
  parseMore(found, groups) {
    const moments = found.text("taps").split(BETWEEN_TAPS).filter(Boolean);
    const { high } = METER_FIELDS.get("taps");
    const wrong = moments.find((moment) => readNumber(moment, 0, high).reason);
    if (wrong) {
      const { label } = groups.flatMap(({ fields }) => fields).find(({ name }) => name === "taps");
      found.errors.set("taps", errorOf(readNumber(wrong, 0, high).reason, label, wrong, "0", String(high)));
    } else if (moments.length > MAX_ITEMS) {
      found.errors.set("taps", errorOf("too-many"));
    } else if (moments.length) {
      found.figures.set("taps", moments.join("_"));
    }
  },

  /** @param {CheckRequest} checkRequest @param {FormInput} found */
  write: (checkRequest, found) => encode(METER_FIELDS, withUsualVolts(checkRequest, found)),

  /** @param {CheckRequest} _ @param {string} text */
  drawing(_, text) {
    const power = readMeter(text);
    const { watts, rating, restingShare } = power;
    const facts = {
      kind: "meter",
      drawn: powerText(watts),
      or_more: isFloor(watts),
      expected: powerText(rating.expected),
      plate_known: rating.known,
      paused: restingShare > RESTED ? roundHalfEven(100 * restingShare) : 0,
      may_be_more: watts.pLowerBound > 0,
      ...powerClassFacts(power),
    };
    return powerBar(watts, rating.expected, rating.known ? "by-plate" : "usual-heater", facts);
  },
};
