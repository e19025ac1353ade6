/* A measured value and how sure it is: standard uncertainties, combined as the GUM does (JCGM 100:2008, clause 5). */

import { sumOf } from "../arithmetic.js";
import { normalCdf } from "./normal.js";

/** @typedef {{value: number, uncertainty: number, pLowerBound: number}} Measured `pLowerBound` is the chance that the value is
 *   only a floor
 * @typedef {[number, number]} Interval */

const MIN_UNCERTAINTY = 1e-6;
const RELATIVE_STEP = 1e-4;

/** @param {number} value @param {number} uncertainty @param {number} pLowerBound @returns {Measured} */
export function measured(value, uncertainty, pLowerBound = 0) {
  return { value, uncertainty, pLowerBound };
}

/** The standard uncertainty of something known to lie within plus or minus `halfWidth`. @param {number} halfWidth */
export function uniformUncertainty(halfWidth) {
  return halfWidth / Math.sqrt(3);
}

/** That of the difference of two readings, each within one resolution step. @param {number} halfWidth */
export function triangularUncertainty(halfWidth) {
  return halfWidth / Math.sqrt(6);
}

/** Independent uncertainties of one quantity, in quadrature. @param {...number} uncertainties */
export function inQuadrature(...uncertainties) {
  return Math.sqrt(sumOf(uncertainties.map((u) => u * u)));
}

/** A formula's value and standard uncertainty, its slopes taken by central differences (GUM 5.1.2).
 * @param {(...values: number[]) => number} formula @param {number[]} values @param {number[]} uncertainties */
export function propagated(formula, values, uncertainties) {
  const parts = uncertainties.map((u, place) => {
    const step = RELATIVE_STEP * Math.max(Math.abs(values[place]), RELATIVE_STEP);
    /** @param {number} by */
    const moved = (by) => values.map((value, at) => (at === place ? value + by : value));
    return (u * (formula(...moved(step)) - formula(...moved(-step)))) / (2 * step);
  });
  return measured(formula(...values), inQuadrature(...parts));
}

/** For each interval the likelihood of this measurement if the true value is somewhere in it, summing to one. Equal intervals
 * share one likelihood, each in full.
 * @param {Measured} found @param {Interval[]} intervals @returns {number[]} */
export function intervalLikelihoods(found, intervals) {
  const sigma = Math.max(found.uncertainty, MIN_UNCERTAINTY);
  const lowest = Math.min(...intervals.map(([low]) => low));
  const value = Math.min(Math.max(found.value, lowest), Math.max(...intervals.map(([, high]) => high)));
  /** @param {number} edge */
  const below = (edge) => normalCdf((edge - value) / sigma);
  const within = new Map();
  const reached = new Map();
  for (const [low, high] of intervals) {
    within.set(`${low} ${high}`, (below(high) - below(low)) / (high - low));
    reached.set(`${low} ${high}`, below(high));
  }
  const floor = found.pLowerBound;
  const allWithin = sumOf([...within.values()]);
  const allReached = sumOf([...reached.values()]);
  return intervals.map(([low, high]) => {
    const key = `${low} ${high}`;
    return ((1 - floor) * within.get(key)) / allWithin + (floor * reached.get(key)) / allReached;
  });
}

/** The chance that the true value is above `limit`. @param {Measured} found @param {number} limit */
export function probabilityAbove(found, limit) {
  return normalCdf((found.value - limit) / Math.max(found.uncertainty, MIN_UNCERTAINTY));
}

/** Whether the value, give or take one standard uncertainty, touches the interval: the stricter reading of a flag.
 * @param {Measured} found @param {Interval} interval */
export function overlaps(found, [low, high]) {
  return found.value + found.uncertainty >= low && found.value - found.uncertainty <= high;
}
