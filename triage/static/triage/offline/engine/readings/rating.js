/* What an oven should draw by its rating plate, and how sure that is. As `triage/engine/readings/rating.py`, which
   names the sources of the numbers. */

import { inQuadrature, measured, uniformUncertainty } from "./measured.js";
import { readOptional } from "./encoding.js";

/** @typedef {import("./measured.js").Measured} Measured
 * @typedef {{expected: Measured, known: boolean}} Rating watts at the supply as it is; whether a plate was read */

const HEATING_APPLIANCE_WATTS = 200;
const DEFAULT_HEATER = measured(2000, 500);
const SETTING_SHARE_OF_PLATE = measured(0.8, 0.15);
const SUPPLY_TOLERANCE = 0.1;
const VOLTS_UNCERTAINTY = 2;
const NOMINAL_VOLTS = 230;

/** @type {[string, string, number, number][]} */
export const RATING_FIELDS = [
  ["plate", "p", 200, 8000],
  ["whole-plate", "t", 500, 16000],
  ["rated-volts", "r", 100, 440],
  ["supply-volts", "v", 90, 450],
];

/** What the plate and the supply let one expect.
 * @param {import("./encoding.js").FieldTable} table @param {import("./encoding.js").RawFields} raw @returns {Rating} */
export function readRating(table, raw) {
  const [plate, whole, ratedVolts, volts] = RATING_FIELDS.map(([name]) => readOptional(table, raw, name));
  const rated = ratedAt(plate, whole);
  const [low, high] = plateBand(rated.value);
  const squared = volts === null ? 1 : (volts / (ratedVolts ?? NOMINAL_VOLTS)) ** 2;
  const voltsUnsure = volts === null ? uniformUncertainty(SUPPLY_TOLERANCE) : VOLTS_UNCERTAINTY / volts;
  const watts = ((low + high) / 2) * squared;
  const band = uniformUncertainty((high - low) / (low + high));
  const unsure = inQuadrature(rated.uncertainty / rated.value, band, 2 * voltsUnsure);
  return { expected: measured(watts, watts * unsure), known: plate !== null || whole !== null };
}

/** @param {number | null} plate @param {number | null} whole @returns {Measured} */
function ratedAt(plate, whole) {
  if (plate !== null) return measured(plate, 0);
  if (whole === null) return DEFAULT_HEATER;
  return measured(whole * SETTING_SHARE_OF_PLATE.value, whole * SETTING_SHARE_OF_PLATE.uncertainty);
}

/** The least and most a sound appliance of that plate draws at its rated voltage. @param {number} watts */
export function plateBand(watts) {
  if (watts <= HEATING_APPLIANCE_WATTS) return [0.9 * watts, 1.1 * watts];
  return [0.9 * watts, watts + Math.max(0.05 * watts, 20)];
}

/** Measured over expected. @param {Rating} rating @param {Measured} watts */
export function shareOf({ expected }, watts) {
  const share = watts.value / expected.value;
  const unsure = inQuadrature(watts.uncertainty / expected.value, (share * expected.uncertainty) / expected.value);
  return measured(share, unsure, watts.pLowerBound);
}
