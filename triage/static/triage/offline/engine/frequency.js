/* The words of the pack, one letter each, and the numbers they stand for. */

import { sumOf, sumOfProducts, transposed } from "./arithmetic.js";

/** @typedef {import("./arithmetic.js").Row} Row */

/* Almost always, usually, often, sometimes, rarely; a dash is never, whose number the pack says. */
const FREQUENCIES = new Map([
  ["a", 0.93],
  ["b", 0.75],
  ["c", 0.45],
  ["d", 0.2],
  ["e", 0.05],
]);

/** Chances that sum to one, from letters; a row that came in full is taken as it is.
 * @param {string | Row} row @param {number} floor @returns {Row} */
export function distribution(row, floor) {
  if (typeof row !== "string") return row;
  const numbers = [...row].map((letter) => FREQUENCIES.get(letter) ?? floor);
  const total = sumOf(numbers);
  return numbers.map((number) => number / total);
}

/** Per level, the answers `rows` of it, mixed with how anyone answers by the share of people not to be trusted.
 * @param {Row[]} rows @param {Row} baseline @param {number} trust @returns {Row[]} */
export function mixWithBaseline(rows, baseline, trust) {
  const anyone = transposed(rows).map((column) => sumOfProducts(baseline, column));
  return rows.map((row) => row.map((p, at) => trust * p + (1 - trust) * anyone[at]));
}
