/* First-order warming: T(t) = end + (start - end) exp(-t/tau), fitted by least squares. As
   `triage/engine/readings/fitting.py`, which says how tau is searched and how far off the end may be. */

import { sumOf, sumOfProducts } from "../arithmetic.js";

const MIN_TAU = 0.05;
const MAX_TAU = 50;
const GRID_STEPS = 60;
const ROUNDS = 6;
const MIN_POINTS = 4;
const PARAMETERS = 3;
const LOG_TAU_STEP = 0.1;
const MIN_CURVATURE = 1e-9;

/** The curve with the least squares left, or null from fewer than four points.
 * @param {[number, number][]} points @param {number} noise of one temperature
 * @returns {{end: number, tau: number, rmsResidual: number, endUncertainty: number} | null} */
export function fit(points, noise) {
  const count = points.length;
  if (count < MIN_POINTS) return null;
  let [low, high] = [MIN_TAU, MAX_TAU].map((share) => Math.log(share * (points.at(-1)[0] - points[0][0])));
  let best = null;
  for (let round = 0; round < ROUNDS; round += 1) {
    const step = (high - low) / GRID_STEPS;
    const tried = Array.from({ length: GRID_STEPS + 1 }, (_, at) => lineThrough(points, low + step * at));
    best = tried.reduce((one, other) => (other.squares < one.squares ? other : one));
    [low, high] = [best.place - step, best.place + step];
  }
  const { place, end, squares } = best;
  const [shorter, longer] = [-LOG_TAU_STEP, LOG_TAU_STEP].map((further) => lineThrough(points, place + further));
  const bend = Math.max(shorter.squares + longer.squares - 2 * squares, MIN_CURVATURE);
  const variance = Math.max(noise ** 2, squares / (count - PARAMETERS));
  const endUncertainty = Math.abs(longer.end - shorter.end) * Math.sqrt(variance / (2 * bend));
  return { end, tau: Math.exp(place), rmsResidual: Math.sqrt(squares / count), endUncertainty };
}

/** The straight line of temperature over exp(-t/tau): its end (at zero), and the squares left.
 * @param {[number, number][]} points @param {number} place */
function lineThrough(points, place) {
  const tau = Math.exp(place);
  const xs = points.map(([time]) => Math.exp(-time / tau));
  const ys = points.map(([, value]) => value);
  const [middleX, middleY] = [xs, ys].map((row) => sumOf(row) / row.length);
  const apart = xs.map((x) => x - middleX);
  const slope =
    sumOfProducts(
      apart,
      ys.map((y) => y - middleY),
    ) / (sumOfProducts(apart, apart) || 1);
  const end = middleY - slope * middleX;
  const left = ys.map((y, at) => end + slope * xs[at] - y);
  return { place, end, squares: sumOfProducts(left, left) };
}
