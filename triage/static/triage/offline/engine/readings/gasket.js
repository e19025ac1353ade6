/* The seal test: at eight places round the door, did a paper strip slip, or did torch light show? As
   `triage/engine/readings/gasket.py`. */

import { sumOf } from "../arithmetic.js";
import { InvalidReading } from "./encoding.js";

/** @typedef {{leaks: (boolean | null)[], likelihoods: Map<string, number>}} Gasket by place, clockwise from the top left;
 *   `likelihoods` the likelihood of tight, spot and side */

export const SEAL_PLACES = ["top-left", "top", "top-right", "right", "bottom-right", "bottom", "bottom-left", "left"];
const MISREAD_PROBABILITY = 0.1;
const LEAK_LETTERS = new Map([
  ["g", false],
  ["s", true],
  ["x", null],
]);
const MIN_PLACES = 5;
const EIGHT = [...SEAL_PLACES.keys()];
const SPOTS = [...EIGHT.map((at) => new Set([at])), ...EIGHT.map((at) => new Set([at, (at + 1) % 8]))];
const SIDES = [0, 2, 4, 6].map((at) => new Set([at, at + 1, (at + 2) % 8]));

/** The pattern a written reading stands for: "p" and eight letters. @param {string} text @returns {Gasket} */
export function readGasket(text) {
  if (!/^p[gsx]{8}$/.test(text)) throw new InvalidReading("not-a-reading");
  const leaks = [...text.slice(1)].map((letter) => LEAK_LETTERS.get(letter));
  if (leaks.filter((leak) => leak !== null).length < MIN_PLACES) throw new InvalidReading("too-few", "places");
  /** @type {[string, number][]} */
  const found = [
    ["tight", patternLikelihood(leaks, new Set())],
    ["spot", meanLikelihood(leaks, SPOTS)],
    ["side", meanLikelihood(leaks, SIDES)],
  ];
  const total = sumOf(found.map(([, value]) => value));
  return { leaks, likelihoods: new Map(found.map(([name, value]) => [name, value / total])) };
}

/** The text of what was found, place by place; null where a place was left out.
 * @param {(boolean | null)[]} leaks @returns {string} */
export function encodeGasket(leaks) {
  return `p${leaks.map((leak) => (leak === null ? "x" : leak ? "s" : "g")).join("")}`;
}

/** @param {(boolean | null)[]} leaks @param {Set<number>[]} truths */
function meanLikelihood(leaks, truths) {
  return sumOf(truths.map((truth) => patternLikelihood(leaks, truth))) / truths.length;
}

/** @param {(boolean | null)[]} leaks @param {Set<number>} truth @returns {number} */
function patternLikelihood(leaks, truth) {
  /** @param {boolean | null} leak @param {number} place */
  const fits = (leak, place) => (leak === truth.has(place) ? 1 - MISREAD_PROBABILITY : MISREAD_PROBABILITY);
  return leaks.reduce((product, leak, place) => product * (leak === null ? 1 : fits(leak, place)), 1);
}
