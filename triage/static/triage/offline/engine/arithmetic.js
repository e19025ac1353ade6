/* Sums and products of rows of numbers, for which Python has built-in functions (sum, map, zip): this module alone has no
   twin. Numbers are added from left to right as there, so that both engines come to the same one to its last digit. Only
   logarithms may differ there. */

/** @typedef {number[]} Row */

/** @param {Row} row */
export function sumOf(row) {
  let sum = 0;
  for (const value of row) sum += value;
  return sum;
}

/** Sum over places of one row times another.
 * @param {Row} row @param {Row} other */
export function sumOfProducts(row, other) {
  let sum = 0;
  for (let at = 0; at < row.length; at += 1) sum += row[at] * other[at];
  return sum;
}

/** @param {Row} row @param {Row} other @returns {Row} */
export function timesEach(row, other) {
  return row.map((value, at) => value * other[at]);
}

/** @param {Row} row @param {Row} other @returns {Row} */
export function dividedEach(row, other) {
  return row.map((value, at) => value / other[at]);
}

/** One row, the sum of all.
 * @param {Row[]} rows @returns {Row} */
export function sumOfRows(rows) {
  const sums = rows[0].slice();
  for (const row of rows.slice(1)) row.forEach((value, at) => (sums[at] += value));
  return sums;
}

/** Rows to columns.
 * @param {Row[]} rows @returns {Row[]} */
export function transposed(rows) {
  return rows[0].map((_, at) => rows.map((row) => row[at]));
}
