/* The meter test: what the oven draws, seen at the home's meter. As `triage/engine/readings/meter.py`. */

import { inQuadrature, measured, rectangle, triangle } from "./measured.js";
import { RATING_LINES, readRating, shareOf } from "./rating.js";
import { Unreadable, fieldTable, fieldsOf, numberIn, numbersIn, optionalIn } from "./written.js";

/** @typedef {import("./measured.js").Measured} Measured
 * @typedef {{watts: Measured, share: Measured, rating: import("./rating.js").Rating, rested: number,
 *   quantities: Map<string, Measured>}} Power */

const JOULES_PER_KWH = 3.6e6;
const STANDING = measured(150, 100);
const UNSTEADY_SHARE = 0.15;
const UNSTEADY_WATTS = 20;
const TAP_SECONDS = 0.15;
const DISPLAY_SHARE = 0.03;
const DISPLAY_WATTS = 10;
const CYCLING_SECONDS = 900;
const FEWEST_TAPS = 5;

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
  ...RATING_LINES,
);
const WAYS = new Map([
  ["flashes", fromCount],
  ["taps", fromTaps],
  ["before", fromRegister],
  ["idle", fromDisplay],
]);

/** The power a written reading stands for. @param {string} text @returns {Power} */
export function readMeter(text) {
  const raw = fieldsOf(METER_FIELDS, text);
  const ways = [...WAYS.keys()].filter((way) => raw.has(way));
  if (!ways.length) throw new Unreadable("missing", "flashes");
  if (ways.length > 1) throw new Unreadable("one-way", ways[0]);
  const [total, rested] = WAYS.get(ways[0])(raw);
  const resting = restOfHouse(raw, ways[0]);
  const unsure = inQuadrature(total.uncertainty, resting.uncertainty);
  const watts = measured(total.value - resting.value, unsure, total.atLeast);
  const rating = readRating(METER_FIELDS, raw);
  const share = shareOf(rating, watts);
  return {
    watts,
    share,
    rating,
    rested,
    quantities: new Map([
      ["watts", watts],
      ["share", share],
    ]),
  };
}

/* A display's first figure is exactly that. */
function restOfHouse(raw, way) {
  const noted = optionalIn(METER_FIELDS, raw, way === "idle" ? "idle" : "background");
  return noted === null ? STANDING : measured(noted, inQuadrature(UNSTEADY_SHARE * noted, UNSTEADY_WATTS));
}

/* As many intervals as flashes, less one; nobody is sure of the last one either way. */
function fromCount(raw) {
  const flashes = numberIn(METER_FIELDS, raw, "flashes");
  const seconds = numberIn(METER_FIELDS, raw, "seconds");
  const perFlash = JOULES_PER_KWH / numberIn(METER_FIELDS, raw, "impulses") / seconds;
  return [measured(perFlash * Math.max(flashes - 1, 0), perFlash * rectangle(1), mayHaveRested(seconds)), 0];
}

function fromTaps(raw) {
  const taps = numbersIn(METER_FIELDS, raw, "taps");
  if (taps.length < FEWEST_TAPS) throw new Unreadable("too-few", "taps");
  const intervals = taps.slice(1).map((later, at) => later - taps[at]);
  const usual = median(intervals);
  const joules = JOULES_PER_KWH / numberIn(METER_FIELDS, raw, "impulses");
  const wandering = 1.5 * median(intervals.map((interval) => Math.abs(interval - usual)));
  const spread = inQuadrature(wandering, TAP_SECONDS) / Math.sqrt(intervals.length);
  const watts = joules / usual;
  const rested = Math.max(1 - (intervals.length * usual) / (taps.at(-1) - taps[0]), 0);
  return [measured(watts, (watts * 1.25 * spread) / usual), rested];
}

/* Two readings of a register that cuts off what lies below its last digit. */
function fromRegister(raw) {
  const before = numberIn(METER_FIELDS, raw, "before");
  const after = numberIn(METER_FIELDS, raw, "after");
  if (after < before) throw new Unreadable("backwards", "after");
  const hours = numberIn(METER_FIELDS, raw, "minutes") / 60;
  const digit = 0.1 ** Math.max(decimalsOf(raw.get("before")), decimalsOf(raw.get("after")));
  const watts = (1000 * (after - before)) / hours;
  return [measured(watts, triangle((1000 * digit) / hours), mayHaveRested(3600 * hours)), 0];
}

function fromDisplay(raw) {
  const shown = numberIn(METER_FIELDS, raw, "drawing");
  numberIn(METER_FIELDS, raw, "idle");
  return [measured(shown, inQuadrature(DISPLAY_SHARE * shown, DISPLAY_WATTS)), 0];
}

function mayHaveRested(seconds) {
  return seconds / (seconds + CYCLING_SECONDS);
}

function decimalsOf(written) {
  return (written.replace(",", ".").split(".")[1] ?? "").length;
}

function median(values) {
  const ordered = [...values].sort((one, other) => one - other);
  const half = Math.floor(values.length / 2);
  return ordered.length % 2 ? ordered[half] : (ordered[half - 1] + ordered[half]) / 2;
}
