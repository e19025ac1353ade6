/* A measured value and how sure it is: standard uncertainties, combined as the GUM does (JCGM 100:2008, clause 5). */

import { sumOf } from "../arithmetic.js";
import { normalCdf } from "./normal.js";

/** @typedef {{value: number, uncertainty: number, atLeast: number}} Measured `atLeast` is the chance that the value is
 *   only a floor
 * @typedef {[number, number]} Span */

const SMALLEST = 1e-6;
const STEP = 1e-4;

/** @param {number} value @param {number} uncertainty @param {number} atLeast @returns {Measured} */
export function measured(value, uncertainty, atLeast = 0) {
  return { value, uncertainty, atLeast };
}

/** The standard uncertainty of something known to lie within plus or minus `halfWidth`. @param {number} halfWidth */
export function rectangle(halfWidth) {
  return halfWidth / Math.sqrt(3);
}

/** That of the difference of two readings, each within one resolution step. @param {number} halfWidth */
export function triangle(halfWidth) {
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
    const step = STEP * Math.max(Math.abs(values[place]), STEP);
    const moved = (by) => values.map((value, at) => (at === place ? value + by : value));
    return (u * (formula(...moved(step)) - formula(...moved(-step)))) / (2 * step);
  });
  return measured(formula(...values), inQuadrature(...parts));
}

/** For each span the likelihood of this measurement if the true value is somewhere in it, summing to one. Equal spans
 * share one likelihood, each in full.
 * @param {Measured} told @param {Span[]} spans @returns {number[]} */
export function spanLikelihoods(told, spans) {
  const spread = Math.max(told.uncertainty, SMALLEST);
  const lowest = Math.min(...spans.map(([low]) => low));
  const value = Math.min(Math.max(told.value, lowest), Math.max(...spans.map(([, high]) => high)));
  const below = (edge) => normalCdf((edge - value) / spread);
  const within = new Map();
  const reached = new Map();
  for (const [low, high] of spans) {
    within.set(`${low} ${high}`, (below(high) - below(low)) / (high - low));
    reached.set(`${low} ${high}`, below(high));
  }
  const floor = told.atLeast;
  const allWithin = sumOf(within.values());
  const allReached = sumOf(reached.values());
  return spans.map(([low, high]) => {
    const key = `${low} ${high}`;
    return ((1 - floor) * within.get(key)) / allWithin + (floor * reached.get(key)) / allReached;
  });
}

/** The chance that the true value is above `limit`. @param {Measured} told @param {number} limit */
export function chanceAbove(told, limit) {
  return normalCdf((told.value - limit) / Math.max(told.uncertainty, SMALLEST));
}

/** Whether the value, give or take one standard uncertainty, touches the span: the stricter reading of a flag.
 * @param {Measured} told @param {Span} span */
export function touchesSpan(told, [low, high]) {
  return told.value + told.uncertainty >= low && told.value - told.uncertainty <= high;
}
