/* The seal test: at eight places round the door, did a paper strip slip, or did torch light show? As
   `triage/engine/readings/gasket.py`. */

import { sumOf } from "../arithmetic.js";
import { Unreadable } from "./written.js";

/** @typedef {{leaks: (boolean | null)[], classes: Map<string, number>}} Gasket by place, clockwise from the top left;
 *   `classes` the likelihood of tight, spot and side */

export const SEAL_PLACES = ["top-left", "top", "top-right", "right", "bottom-right", "bottom", "bottom-left", "left"];
const MISLEADS = 0.1;
const LEAK_LETTERS = new Map([
  ["g", false],
  ["s", true],
  ["x", null],
]);
const FEWEST_PLACES = 5;
const EIGHT = [...SEAL_PLACES.keys()];
const SPOTS = [...EIGHT.map((at) => new Set([at])), ...EIGHT.map((at) => new Set([at, (at + 1) % 8]))];
const SIDES = [0, 2, 4, 6].map((at) => new Set([at, at + 1, (at + 2) % 8]));

/** The pattern a written reading stands for: "p" and eight letters. @param {string} text @returns {Gasket} */
export function readGasket(text) {
  if (!/^p[gsx]{8}$/.test(text)) throw new Unreadable("not-a-reading");
  const leaks = [...text.slice(1)].map((letter) => LEAK_LETTERS.get(letter));
  if (leaks.filter((leak) => leak !== null).length < FEWEST_PLACES) throw new Unreadable("too-few", "places");
  const told = [
    ["tight", patternLikelihood(leaks, new Set())],
    ["spot", meanLikelihood(leaks, SPOTS)],
    ["side", meanLikelihood(leaks, SIDES)],
  ];
  const total = sumOf(told.map(([, value]) => value));
  return { leaks, classes: new Map(told.map(([name, value]) => [name, value / total])) };
}

/** The text of what was found, place by place; null where a place was left out.
 * @param {(boolean | null)[]} leaks @returns {string} */
export function writtenGasket(leaks) {
  return `p${leaks.map((leak) => (leak === null ? "x" : leak ? "s" : "g")).join("")}`;
}

function meanLikelihood(leaks, truths) {
  return sumOf(truths.map((truth) => patternLikelihood(leaks, truth))) / truths.length;
}

function patternLikelihood(leaks, truth) {
  const fits = (leak, place) => (leak === truth.has(place) ? 1 - MISLEADS : MISLEADS);
  return leaks.reduce((product, leak, place) => product * (leak === null ? 1 : fits(leak, place)), 1);
}
