/* Numbers rounded as Python rounds them, so that a page says the same wherever it is made. */

/** To the nearest whole number, halves to the even one. @param {number} number */
export function roundHalfEven(number) {
  const low = Math.floor(number);
  if (number - low !== 0.5) return Math.round(number);
  return low % 2 ? low + 1 : low;
}

/** A number with its sign and one decimal, after it was rounded to two. @param {number} number */
export function signedTenths(number) {
  const told = Number(number.toFixed(2));
  const sign = told < 0 || Object.is(told, -0) ? "-" : "+";
  const size = Math.abs(told);
  return sign + (Number.isInteger(size * 4) ? roundHalfEven(size * 10) / 10 : size).toFixed(1);
}
