/* The thermometer test: set point and readings over time, read through the glass. As
   `triage/engine/readings/thermometer.py`, which says why each number is what it is. */

import { sumOf, sumOfProducts } from "../arithmetic.js";
import { inQuadrature, measured, rectangle } from "./measured.js";
import { normalCdf } from "./normal.js";
import { fieldTable, fieldsOf, numberIn, optionalIn, pairsIn } from "./written.js";

/** @typedef {import("./measured.js").Measured} Measured
 * @typedef {{points: [number, number][], setTo: number, mean: Measured, overshoot: number, reached: number | null,
 *   more: number, quantities: Map<string, Measured>}} Temperatures `quantities` are offset, swing, climb and duty */

const SETTLING = 20;
export const SETTLED = 30;
const DIAL_TOLERANCE = 10;
export const SCALE_STEP = 2;
const BOILING = 100;
const CHECKED_LEAVES = 0.5;
export const FALL = 3;
const TOO_EARLY = 100;
const USUAL_SWING = 22;
const GOOD_ENOUGH = 2.5;
const MOST_WANTED = 10;

export const THERMOMETER_FIELDS = fieldTable(
  ["set", "c", 50, 300],
  ["readings", "r", 0, 600],
  ["temperature", "t", 0, 500],
  ["tolerance", "a", 0.1, 40],
  ["boiling", "b", 70, 130],
);

/** The temperatures a written reading stands for. @param {string} text @returns {Temperatures} */
export function readThermometer(text) {
  const raw = fieldsOf(THERMOMETER_FIELDS, text);
  const setTo = numberIn(THERMOMETER_FIELDS, raw, "set");
  const [correction, unsure] = instrumentOf(raw);
  const read = pairsIn(THERMOMETER_FIELDS, raw, "readings", "temperature");
  const points = read.map(([time, value]) => [time, value + correction]);
  const weights = points.map(([time]) => settledShare(time));
  const [mean, swing] = extremesOf(points, weights);
  const unsureMean = inQuadrature(mean.uncertainty, unsure);
  const highest = Math.max(...points.map(([, value]) => value));
  const last = points.at(-1)[1];
  const quantities = new Map([
    ["offset", measured(mean.value - setTo, unsureMean)],
    ["swing", swing],
    ["climb", measured(last - setTo - 2 * (highest - last), unsure)],
    ["duty", dutyOf(points, weights)],
  ]);
  return {
    points,
    setTo,
    mean: measured(mean.value, unsureMean),
    overshoot: Math.max(highest - setTo, 0),
    reached: reachedAt(points, setTo),
    more: moreWanted(sumOf(weights), swing.value),
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
    const isFar = Math.abs(further) > FALL;
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

/* What to add to each reading, and the standard uncertainty that is common to all of them. */
function instrumentOf(raw) {
  const tolerance = optionalIn(THERMOMETER_FIELDS, raw, "tolerance") || DIAL_TOLERANCE;
  const boiling = optionalIn(THERMOMETER_FIELDS, raw, "boiling");
  if (boiling === null) return [0, rectangle(tolerance)];
  return [BOILING - boiling, inQuadrature(rectangle(CHECKED_LEAVES * tolerance), rectangle(SCALE_STEP))];
}

function settledShare(time) {
  return Math.min(Math.max((time - SETTLING) / (SETTLED - SETTLING), 0), 1);
}

/* The middle of the extremes and their distance, each with what the number of readings leaves open. */
function extremesOf(points, weights) {
  const count = sumOf(weights);
  const values = points.map(([, value]) => value);
  const centre = count ? sumOfProducts(weights, values) / count : values.at(-1);
  const pulled = values.map((value, at) => centre + weights[at] * (value - centre));
  const [low, high] = [Math.min(...pulled), Math.max(...pulled)];
  const missed = 1 - Math.max(count - 1, 0) / (count + 1);
  const swing = high - low + missed * Math.max(high - low, USUAL_SWING);
  const known = [TOO_EARLY * Math.max(1 - count, 0), rectangle(SCALE_STEP)];
  const unsureSwing = swing * Math.sqrt(2 / ((count + 1) * (count + 2)));
  return [
    measured((high + low) / 2, inQuadrature(unsureMiddle(swing, count), ...known)),
    measured(swing, inQuadrature(unsureSwing, ...known)),
  ];
}

function unsureMiddle(swing, count) {
  return swing / Math.sqrt(2 * (count + 1) * (count + 2));
}

/* The share of the steady time without a fall; each step counts as a fall as far as it surely is one. */
function dutyOf(points, weights) {
  let steady = 0;
  let falling = 0;
  let steps = 0;
  points.slice(1).forEach(([after, other], at) => {
    const [before, one] = points[at];
    const weighed = weights[at] * (after - before);
    steady += weighed;
    falling += weighed * normalCdf((one - other - FALL) / (Math.sqrt(2) * rectangle(SCALE_STEP)));
    steps += weights[at];
  });
  const known = Math.min(steady / SETTLED, 1);
  const duty = steady ? 1 - falling / steady : 0.5;
  return measured(duty, inQuadrature(0.3 / Math.sqrt(steps + 1), 10 * (1 - known) ** 2));
}

/* The minute the set point was first passed, between two readings in proportion. */
function reachedAt(points, setTo) {
  const at = points.findIndex(([, value], place) => place > 0 && points[place - 1][1] < setTo && setTo <= value);
  if (at < 0) return null;
  const [before, one] = points[at - 1];
  const [after, other] = points[at];
  return before + ((after - before) * (setTo - one)) / (other - one);
}

/* How many more readings bring the mean's uncertainty from their number below `GOOD_ENOUGH`. */
function moreWanted(count, swing) {
  const widest = Math.max(swing, USUAL_SWING);
  let more = 0;
  while (more < MOST_WANTED && unsureMiddle(widest, count + more) > GOOD_ENOUGH) more += 1;
  return more;
}
