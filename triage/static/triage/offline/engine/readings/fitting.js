/* First-order warming: T(t) = end + (start - end) exp(-t/tau), fitted by least squares. As
   `triage/engine/readings/fitting.py`, which says how tau is searched and how far off the end may be. */

import { sumOf, sumOfProducts } from "../arithmetic.js";

const SHORTEST_TAU = 0.05;
const LONGEST_TAU = 50;
const TAU_STEPS = 60;
const TAU_ROUNDS = 6;
const FEWEST_POINTS = 4;
const FITTED = 3;
const NEAR = 0.1;
const FLAT = 1e-9;

/** The curve with the least squares left, or null from fewer than four points.
 * @param {[number, number][]} points @param {number} noise of one temperature
 * @returns {{end: number, tau: number, left: number, unsure: number} | null} */
export function fittedCurve(points, noise) {
  const count = points.length;
  if (count < FEWEST_POINTS) return null;
  let [low, high] = [SHORTEST_TAU, LONGEST_TAU].map((share) => Math.log(share * (points.at(-1)[0] - points[0][0])));
  let best = null;
  for (let round = 0; round < TAU_ROUNDS; round += 1) {
    const step = (high - low) / TAU_STEPS;
    const tried = Array.from({ length: TAU_STEPS + 1 }, (_, at) => lineThrough(points, low + step * at));
    best = tried.reduce((one, other) => (other.squares < one.squares ? other : one));
    [low, high] = [best.place - step, best.place + step];
  }
  const { place, end, squares } = best;
  const [shorter, longer] = [-NEAR, NEAR].map((further) => lineThrough(points, place + further));
  const bend = Math.max(shorter.squares + longer.squares - 2 * squares, FLAT);
  const variance = Math.max(noise ** 2, squares / (count - FITTED));
  const unsure = Math.abs(longer.end - shorter.end) * Math.sqrt(variance / (2 * bend));
  return { end, tau: Math.exp(place), left: Math.sqrt(squares / count), unsure };
}

/* The straight line of temperature over exp(-t/tau): its end (at zero), and the squares left. */
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
