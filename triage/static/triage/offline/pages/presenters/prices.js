/* Prices: always a range, rounded, in the region's own currency. As `triage/check_pages/presenters/prices.py`
   and, for the range itself, `triage/engine/repair_or_replace.py`. */

import { plainText } from "../filling.js";
import { roundHalfEven } from "../rounding.js";

/** @typedef {import("../../engine/belief.js").Belief} Belief
 * @typedef {import("../request.js").CheckRequest} CheckRequest
 * @typedef {import("../request.js").RegionProfile} RegionProfile */

/** @typedef {[number, number]} Span from the least to the most
 * @typedef {[number, Span][]} PriceDistribution the chance of each range of what a repair costs */

const CALL_OUT_CLASS = "p0";
const LOW_TAIL = 0.1;
const HIGH_TAIL = 0.9;
const HALVINGS = 60;
const FIVES = 5;
const FIVES_FROM = 20;
const HUNDRED = 100;

/** What a repair may come to: the whole job and a visit that finds nothing to repair; where no money is known, how many
 * times the call-out charge. @param {CheckRequest} checkRequest */
export function pricesOf(checkRequest) {
  const { costs } = checkRequest.site.pages;
  const classes = costs.prices[currencyOf(checkRequest.region)];
  const range = usualRange(priceDistribution(checkRequest.check.belief, classes ?? costs.call_outs));
  if (!classes) return { times_low: range[0].toFixed(1), times_high: range[1].toFixed(1) };
  return { job: moneyText(checkRequest, range), visit: moneyText(checkRequest, classes[CALL_OUT_CLASS]) };
}

/** @param {RegionProfile} region */
function currencyOf(region) {
  return region.territory ? region.currency : "";
}

/** @param {CheckRequest} request @param {Span} span */
function moneyText({ site: { pages }, region }, span) {
  const signs = pages.currency_signs;
  const currency = currencyOf(region);
  const [low, high] = span.map(roundedPrice);
  const least = withCurrency(signs, low, currency in signs ? currency : "");
  return plainText(pages, "sentences/money", {
    low: low === high ? "" : least,
    high: withCurrency(signs, high, currency),
  });
}

/** @param {Object<string, string>} signs @param {number} amount @param {string} currency */
function withCurrency(signs, amount, currency) {
  return currency in signs ? `${signs[currency]}${amount}` : `${amount} ${currency}`.trim();
}

/** @param {number} amount */
function roundedPrice(amount) {
  if (amount < FIVES_FROM) return roundHalfEven(amount);
  const step = amount < HUNDRED ? FIVES : 10 ** (Math.floor(Math.log10(amount)) - 1);
  return step * Math.floor(amount / step + 0.5);
}

/** Two faults at once cost at least the dearer, at most both. Causes with one range are told as one.
 * @param {Belief} belief @param {Object<string, Span>} prices @returns {PriceDistribution} */
function priceDistribution({ model, probabilities }, prices) {
  /** @type {Map<string, [number, Span]>} */
  const found = new Map();
  model.hypotheses.forEach(({ faults }, h) => {
    const each = faults.map((fault) => prices[model.pack.faults.get(fault).priceClass]);
    const low = each.reduce((most, span) => Math.max(most, span[0]), 0);
    const high = each.reduce((total, span) => total + span[1], 0);
    const range = `${low} ${high}`;
    found.set(range, [(found.get(range)?.[0] ?? 0) + probabilities[h], [low, high]]);
  });
  return [...found.values()];
}

/** The range that eight in ten repairs fall into. @param {PriceDistribution} prices @returns {Span} */
function usualRange(prices) {
  return [priceAt(LOW_TAIL, prices), priceAt(HIGH_TAIL, prices)];
}

/** @param {number} share @param {PriceDistribution} prices */
function priceAt(share, prices) {
  let low = Math.min(...prices.map(([, span]) => span[0]));
  let high = Math.max(...prices.map(([, span]) => span[1]));
  for (let halving = 0; halving < HALVINGS; halving += 1) {
    const middle = (low + high) / 2;
    if (shareUpTo(middle, prices) >= share) high = middle;
    else low = middle;
  }
  return high;
}

/** @param {number} price @param {PriceDistribution} prices */
function shareUpTo(price, prices) {
  return prices.reduce((total, [chance, span]) => total + chance * partUpTo(price, span), 0);
}

/** @param {number} price @param {Span} span */
function partUpTo(price, [low, high]) {
  if (high === low) return price >= low ? 1 : 0;
  return Math.min(1, Math.max(0, (price - low) / (high - low)));
}
