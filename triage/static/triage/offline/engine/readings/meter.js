/* The meter test: what the oven draws, seen at the home's meter. As `triage/engine/readings/meter.py`. */

import { inQuadrature, measured, uniformUncertainty, triangularUncertainty } from "./measured.js";
import { RATING_FIELDS, readRating, shareOf } from "./rating.js";
import { InvalidReading, fieldTable, decodeFields, readNumber, readNumbers, readOptional } from "./encoding.js";

/** @typedef {import("./measured.js").Measured} Measured
 * @typedef {import("./encoding.js").RawFields} RawFields
 * @typedef {{watts: Measured, share: Measured, rating: import("./rating.js").Rating, restingShare: number,
 *   quantities: Map<string, Measured>}} Power */

const JOULES_PER_KWH = 3.6e6;
const DEFAULT_BACKGROUND = measured(150, 100);
const BACKGROUND_DRIFT_SHARE = 0.15;
const BACKGROUND_DRIFT_WATTS = 20;
const TAP_SECONDS = 0.15;
const DISPLAY_SHARE = 0.03;
const DISPLAY_WATTS = 10;
const CYCLING_SECONDS = 900;
const MIN_TAPS = 5;

export const METER_FIELDS = fieldTable(
  ["flashes", "f", 0, 100000, true],
  ["seconds", "s", 1, 14400],
  ["impulses", "k", 10, 20000],
  ["taps", "x", 0, 14400],
  ["before", "a", 0, 9999999],
  ["after", "z", 0, 9999999],
  ["minutes", "m", 1, 240],
  ["idle", "i", 0, 30000],
  ["drawing", "j", 0, 30000],
  ["background", "b", 0, 10000],
  ...RATING_FIELDS,
);
/** @type {Map<string, (raw: RawFields) => [total: Measured, restingShare: number]>} */
const METHODS = new Map([
  ["flashes", fromCount],
  ["taps", fromTaps],
  ["before", fromRegister],
  ["idle", fromDisplay],
]);

/** The power a written reading stands for. @param {string} text @returns {Power} */
export function readMeter(text) {
  const raw = decodeFields(METER_FIELDS, text);
  const methods = [...METHODS.keys()].filter((method) => raw.has(method));
  if (!methods.length) throw new InvalidReading("missing", "flashes");
  if (methods.length > 1) throw new InvalidReading("one-way", methods[0]);
  const [total, restingShare] = METHODS.get(methods[0])(raw);
  const resting = background(raw, methods[0]);
  const unsure = inQuadrature(total.uncertainty, resting.uncertainty);
  const watts = measured(total.value - resting.value, unsure, total.pLowerBound);
  const rating = readRating(METER_FIELDS, raw);
  const share = shareOf(rating, watts);
  return {
    watts,
    share,
    rating,
    restingShare,
    quantities: new Map([
      ["watts", watts],
      ["share", share],
    ]),
  };
}

/** A display's first figure is exactly that. @param {RawFields} raw @param {string} method */
function background(raw, method) {
  const noted = readOptional(METER_FIELDS, raw, method === "idle" ? "idle" : "background");
  return noted === null
    ? DEFAULT_BACKGROUND
    : measured(noted, inQuadrature(BACKGROUND_DRIFT_SHARE * noted, BACKGROUND_DRIFT_WATTS));
}

/** As many intervals as flashes, less one; nobody is sure of the last one either way.
 * @param {RawFields} raw @returns {[Measured, number]} */
function fromCount(raw) {
  const flashes = readNumber(METER_FIELDS, raw, "flashes");
  const seconds = readNumber(METER_FIELDS, raw, "seconds");
  const perFlash = JOULES_PER_KWH / readNumber(METER_FIELDS, raw, "impulses") / seconds;
  return [
    measured(perFlash * Math.max(flashes - 1, 0), perFlash * uniformUncertainty(1), restingProbability(seconds)),
    0,
  ];
}

/** @param {RawFields} raw @returns {[Measured, number]} */
function fromTaps(raw) {
  const taps = readNumbers(METER_FIELDS, raw, "taps");
  if (taps.length < MIN_TAPS) throw new InvalidReading("too-few", "taps");
  const intervals = taps.slice(1).map((later, at) => later - taps[at]);
  const usual = median(intervals);
  const joules = JOULES_PER_KWH / readNumber(METER_FIELDS, raw, "impulses");
  const wandering = 1.5 * median(intervals.map((interval) => Math.abs(interval - usual)));
  const spread = inQuadrature(wandering, TAP_SECONDS) / Math.sqrt(intervals.length);
  const watts = joules / usual;
  const restingShare = Math.max(1 - (intervals.length * usual) / (taps.at(-1) - taps[0]), 0);
  return [measured(watts, (watts * 1.25 * spread) / usual), restingShare];
}

/** Two readings of a register that cuts off what lies below its last digit.
 * @param {RawFields} raw @returns {[Measured, number]} */
function fromRegister(raw) {
  const before = readNumber(METER_FIELDS, raw, "before");
  const after = readNumber(METER_FIELDS, raw, "after");
  if (after < before) throw new InvalidReading("backwards", "after");
  const hours = readNumber(METER_FIELDS, raw, "minutes") / 60;
  const digit = 0.1 ** Math.max(decimals(raw.get("before")), decimals(raw.get("after")));
  const watts = (1000 * (after - before)) / hours;
  return [measured(watts, triangularUncertainty((1000 * digit) / hours), restingProbability(3600 * hours)), 0];
}

/** @param {RawFields} raw @returns {[Measured, number]} */
function fromDisplay(raw) {
  const shown = readNumber(METER_FIELDS, raw, "drawing");
  readNumber(METER_FIELDS, raw, "idle");
  return [measured(shown, inQuadrature(DISPLAY_SHARE * shown, DISPLAY_WATTS)), 0];
}

/** @param {number} seconds */
function restingProbability(seconds) {
  return seconds / (seconds + CYCLING_SECONDS);
}

/** @param {string} written */
function decimals(written) {
  return (written.replace(",", ".").split(".")[1] ?? "").length;
}

/** @param {number[]} values */
function median(values) {
  const ordered = [...values].sort((one, other) => one - other);
  const half = Math.floor(values.length / 2);
  return ordered.length % 2 ? ordered[half] : (ordered[half - 1] + ordered[half]) / 2;
}
