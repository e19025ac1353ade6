/* The normal distribution function: Marsaglia, "Evaluating the Normal Distribution", Journal of Statistical Software
   11(4), 2004, line by line as `triage/engine/readings/normal.py`. */

const MAX_DEVIATIONS = 8;

/** P(Z <= x); beyond eight standard deviations exactly 0 or 1.
 * @param {number} x */
export function normalCdf(x) {
  if (x <= -MAX_DEVIATIONS) return 0;
  if (x >= MAX_DEVIATIONS) return 1;
  let term = x;
  let total = x;
  let before = 0;
  let odd = 1;
  while (total !== before) {
    before = total;
    odd += 2;
    term *= (x * x) / odd;
    total += term;
  }
  const share = 0.5 + (total * Math.exp(-0.5 * x * x)) / Math.sqrt(2 * Math.PI);
  return Math.min(Math.max(share, 0), 1);
}
