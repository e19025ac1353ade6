/* The thermometer test: set point and readings over time, read through the glass. As
   `triage/engine/readings/thermometer.py`, which says why each number is what it is. */

import { sumOf, sumOfProducts } from "../arithmetic.js";
import { inQuadrature, measured, uniformUncertainty } from "./measured.js";
import { normalCdf } from "./normal.js";
import { fieldTable, decodeFields, readNumber, readOptional, readPairs } from "./encoding.js";

/** @typedef {import("./measured.js").Measured} Measured
 * @typedef {import("./encoding.js").RawFields} RawFields
 * @typedef {[minutes: number, celsius: number]} Point
 * @typedef {{points: Point[], setPoint: number, mean: Measured, overshoot: number, reachedMinute: number | null,
 *   readingsWanted: number, quantities: Map<string, Measured>}} Temperatures `quantities` are offset, swing, climb and duty */

const SETTLING_MINUTES = 20;
export const SETTLED_MINUTES = 30;
const DIAL_TOLERANCE_KELVIN = 10;
export const SCALE_STEP_KELVIN = 2;
const BOILING_CELSIUS = 100;
const TOLERANCE_AFTER_CHECK = 0.5;
export const MIN_FALL_KELVIN = 3;
const UNSETTLED_UNCERTAINTY_KELVIN = 100;
const DEFAULT_SWING_KELVIN = 22;
const TARGET_UNCERTAINTY_KELVIN = 2.5;
const MAX_MORE_READINGS = 10;

export const THERMOMETER_FIELDS = fieldTable(
  ["set", "c", 50, 300],
  ["readings", "r", 0, 600],
  ["temperature", "t", 0, 500],
  ["tolerance", "a", 0.1, 40],
  ["boiling", "b", 70, 130],
);

/** The temperatures a written reading stands for. @param {string} text @returns {Temperatures} */
export function readThermometer(text) {
  const raw = decodeFields(THERMOMETER_FIELDS, text);
  const setPoint = readNumber(THERMOMETER_FIELDS, raw, "set");
  const [correction, unsure] = instrument(raw);
  const read = readPairs(THERMOMETER_FIELDS, raw, "readings", "temperature");
  /** @type {Point[]} */
  const points = read.map(([time, value]) => [time, value + correction]);
  const weights = points.map(([time]) => settledShare(time));
  const [mean, swing] = extremes(points, weights);
  const unsureMean = inQuadrature(mean.uncertainty, unsure);
  const highest = Math.max(...points.map(([, value]) => value));
  const last = points.at(-1)[1];
  const quantities = new Map([
    ["offset", measured(mean.value - setPoint, unsureMean)],
    ["swing", swing],
    ["climb", measured(last - setPoint - 2 * (highest - last), unsure)],
    ["duty", duty(points, weights)],
  ]);
  return {
    points,
    setPoint,
    mean: measured(mean.value, unsureMean),
    overshoot: Math.max(highest - setPoint, 0),
    reachedMinute: reachedMinute(points, setPoint),
    readingsWanted: readingsWanted(sumOf(weights), swing.value),
    quantities,
  };
}

/** The tops and bottoms between which the temperature moves by more than a shaking needle.
 * @param {[number, number][]} points @returns {[number, number][]} */
export function turningPoints(points) {
  const found = [];
  let rising = null;
  let extreme = points[0];
  for (const point of points.slice(1)) {
    const further = point[1] - extreme[1];
    const isFar = Math.abs(further) > MIN_FALL_KELVIN;
    if (rising === null ? isFar : further > 0 === rising) {
      rising = further > 0;
      extreme = point;
    } else if (rising !== null && isFar) {
      found.push(extreme);
      rising = !rising;
      extreme = point;
    }
  }
  return found;
}

/** Start and end of each whole cycle that the readings show, one after the other.
 * @param {[number, number][]} points @returns {[number, number][]} */
export function wholeCycles(points) {
  const ends = turningPoints(points)
    .filter((_, at) => at % 2 === 0)
    .map(([time]) => time);
  return ends.slice(1).map((end, at) => [ends[at], end]);
}

/** What to add to each reading, and the standard uncertainty that is common to all of them.
 * @param {RawFields} raw @returns {[correction: number, uncertainty: number]} */
function instrument(raw) {
  const tolerance = readOptional(THERMOMETER_FIELDS, raw, "tolerance") || DIAL_TOLERANCE_KELVIN;
  const boiling = readOptional(THERMOMETER_FIELDS, raw, "boiling");
  if (boiling === null) return [0, uniformUncertainty(tolerance)];
  return [
    BOILING_CELSIUS - boiling,
    inQuadrature(uniformUncertainty(TOLERANCE_AFTER_CHECK * tolerance), uniformUncertainty(SCALE_STEP_KELVIN)),
  ];
}

/** @param {number} time */
function settledShare(time) {
  return Math.min(Math.max((time - SETTLING_MINUTES) / (SETTLED_MINUTES - SETTLING_MINUTES), 0), 1);
}

/** The middle of the extremes and their distance, each with what the number of readings leaves open.
 * @param {Point[]} points @param {number[]} weights @returns {[mean: Measured, swing: Measured]} */
function extremes(points, weights) {
  const count = sumOf(weights);
  const values = points.map(([, value]) => value);
  const centre = count ? sumOfProducts(weights, values) / count : values.at(-1);
  const pulled = values.map((value, at) => centre + weights[at] * (value - centre));
  const [low, high] = [Math.min(...pulled), Math.max(...pulled)];
  const missed = 1 - Math.max(count - 1, 0) / (count + 1);
  const swing = high - low + missed * Math.max(high - low, DEFAULT_SWING_KELVIN);
  const known = [UNSETTLED_UNCERTAINTY_KELVIN * Math.max(1 - count, 0), uniformUncertainty(SCALE_STEP_KELVIN)];
  const unsureSwing = swing * Math.sqrt(2 / ((count + 1) * (count + 2)));
  return [
    measured((high + low) / 2, inQuadrature(unsureMiddle(swing, count), ...known)),
    measured(swing, inQuadrature(unsureSwing, ...known)),
  ];
}

/** @param {number} swing @param {number} count */
function unsureMiddle(swing, count) {
  return swing / Math.sqrt(2 * (count + 1) * (count + 2));
}

/** The share of the steady time without a fall; each step counts as a fall as far as it surely is one.
 * @param {Point[]} points @param {number[]} weights */
function duty(points, weights) {
  let steady = 0;
  let falling = 0;
  let steps = 0;
  points.slice(1).forEach(([after, other], at) => {
    const [before, one] = points[at];
    const weighed = weights[at] * (after - before);
    steady += weighed;
    falling +=
      weighed * normalCdf((one - other - MIN_FALL_KELVIN) / (Math.sqrt(2) * uniformUncertainty(SCALE_STEP_KELVIN)));
    steps += weights[at];
  });
  const known = Math.min(steady / SETTLED_MINUTES, 1);
  const duty = steady ? 1 - falling / steady : 0.5;
  return measured(duty, inQuadrature(0.3 / Math.sqrt(steps + 1), 10 * (1 - known) ** 2));
}

/** The minute the set point was first passed, between two readings in proportion.
 * @param {Point[]} points @param {number} setPoint */
function reachedMinute(points, setPoint) {
  const at = points.findIndex(([, value], place) => place > 0 && points[place - 1][1] < setPoint && setPoint <= value);
  if (at < 0) return null;
  const [before, one] = points[at - 1];
  const [after, other] = points[at];
  return before + ((after - before) * (setPoint - one)) / (other - one);
}

/** How many more readings bring the mean's uncertainty from their number below `TARGET_UNCERTAINTY_KELVIN`.
 * @param {number} count @param {number} swing */
function readingsWanted(count, swing) {
  const widest = Math.max(swing, DEFAULT_SWING_KELVIN);
  let more = 0;
  while (more < MAX_MORE_READINGS && unsureMiddle(widest, count + more) > TARGET_UNCERTAINTY_KELVIN) more += 1;
  return more;
}
