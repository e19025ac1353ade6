/* The run-on test: how long the cooling fan goes on after switch-off. As `triage/engine/readings/run_on.py`. */

import { inQuadrature, measured, uniformUncertainty } from "./measured.js";
import { InvalidReading, fieldTable, decodeFields, readNumber, readOptional } from "./encoding.js";

/** @typedef {import("./measured.js").Measured} Measured
 * @typedef {import("./encoding.js").RawFields} RawFields
 * @typedef {{minutes: Measured, running: boolean, quantities: Map<string, Measured>}} RunOn */

const CLOCK_UNCERTAINTY_MINUTES = 0.25;
const MUCH_HEAT_FACTOR = 1.5;
export const ENDLESS_MINUTES = 24 * 60;

export const RUN_ON_FIELDS = fieldTable(
  ["heard", "h", 0, 1440],
  ["stopped", "s", 0, 1440],
  ["cold", "c", 0, 1, true],
  ["much-heat", "g", 0, 1, true],
);

/** The run-on a written reading stands for. @param {string} text @returns {RunOn} */
export function readRunOn(text) {
  const raw = decodeFields(RUN_ON_FIELDS, text);
  const heard = readNumber(RUN_ON_FIELDS, raw, "heard");
  const stopped = readOptional(RUN_ON_FIELDS, raw, "stopped");
  const scale = readOptional(RUN_ON_FIELDS, raw, "much-heat") ? MUCH_HEAT_FACTOR : 1;
  const minutes = stopped === null ? stillRunning(raw, heard, scale) : cameToRest(heard, stopped, scale);
  return { minutes, running: stopped === null, quantities: new Map([["minutes", minutes]]) };
}

/** @param {RawFields} raw @param {number} heard @param {number} scale */
function stillRunning(raw, heard, scale) {
  const cold = readOptional(RUN_ON_FIELDS, raw, "cold");
  return measured(cold ? ENDLESS_MINUTES : heard / scale, CLOCK_UNCERTAINTY_MINUTES, 1);
}

/** @param {number} heard @param {number} stopped @param {number} scale */
function cameToRest(heard, stopped, scale) {
  if (stopped < heard) throw new InvalidReading("backwards", "stopped");
  const unsure = inQuadrature(uniformUncertainty((stopped - heard) / 2), CLOCK_UNCERTAINTY_MINUTES);
  return measured((heard + stopped) / 2 / scale, unsure / scale);
}
