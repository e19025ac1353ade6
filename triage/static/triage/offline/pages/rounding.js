/* Numbers rounded as Python rounds them, so that a page says the same wherever it is made. */

const SIX = 6;

/** To the nearest whole number, halves to the even one. @param {number} number */
export function roundHalfEven(number) {
  const low = Math.floor(number);
  if (number - low !== 0.5) return Math.round(number);
  return low % 2 ? low + 1 : low;
}

/** With so many decimals; what lies exactly between two ends in the even digit.
 * @param {number} number @param {number} decimals @returns {string} */
export function fixed(number, decimals) {
  const halves = number * 2 ** (decimals + 1);
  if (!Number.isInteger(halves) || halves % 2 === 0) return number.toFixed(decimals);
  const [low, high] = [-0.5, 0.5].map((step) => (number + step / 10 ** decimals).toFixed(decimals));
  return "02468".includes(low.at(-1)) ? low : high;
}

/** With six digits at most, as Python's "g" writes it. @param {number} number */
export function sixDigits(number) {
  const before = Math.floor(Math.log10(Math.abs(number) || 1)) + 1;
  return String(Number(fixed(number, Math.max(SIX - before, 0))));
}

/** A number with its sign and one decimal, after it was rounded to two. @param {number} number */
export function signedTenths(number) {
  const rounded = Number(fixed(number, 2));
  const sign = rounded < 0 || Object.is(rounded, -0) ? "-" : "+";
  return sign + fixed(Math.abs(rounded), 1);
}
