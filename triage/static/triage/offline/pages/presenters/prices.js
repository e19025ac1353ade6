/* Prices in words: always a range, rounded, in the region's own currency. As `triage/check_pages/presenters/prices.py`
   and, for the range itself, `triage/engine/repair_or_replace.py`. */

import { roundHalfEven } from "../rounding.js";

/** @typedef {[number, number]} Span from the least to the most
 * @typedef {[number, Span][]} ValueOfInformation the chance of each range of what a repair costs */

const CALL_OUT_CLASS = "p0";
const LOW_TAIL = 0.1;
const HIGH_TAIL = 0.9;
const HALVINGS = 60;
const FIVES = 5;
const FIVES_FROM = 20;
const HUNDRED = 100;

/** What a visit may come to, in money or else in call-out charges. */
export function priceLines(checkRequest) {
  const { costs } = checkRequest.site.pages;
  const classes = costs.prices[currencyOf(checkRequest.region)];
  const range = usualRange(repairOutlook(checkRequest.check.belief, classes ?? costs.call_outs));
  if (!classes) {
    const times = checkRequest.say("%(low)s to %(high)s", { low: range[0].toFixed(1), high: range[1].toFixed(1) });
    return [
      checkRequest.say("We have no prices for this place. Ask what a call-out costs before anybody comes."),
      checkRequest.say("The whole job then usually costs %(times)s times that charge.", { times }),
    ];
  }
  const visitOnly = moneyWords(checkRequest, classes[CALL_OUT_CLASS]);
  return [
    checkRequest.say("If somebody comes, the whole job usually costs %(range)s.", {
      range: moneyWords(checkRequest, range),
    }),
    checkRequest.say("A visit that finds nothing to repair costs %(range)s.", { range: visitOnly }),
    checkRequest.say("Eight in ten ovens that answer like this lie in that range. Agree a price before work starts."),
  ];
}

function currencyOf(region) {
  return region.territory ? region.currency : "";
}

function moneyWords(checkRequest, span) {
  const signs = checkRequest.site.pages.currency_signs;
  const currency = currencyOf(checkRequest.region);
  const [low, high] = span.map(roundedPrice);
  const words = {
    low: withCurrency(signs, low, currency in signs ? currency : ""),
    high: withCurrency(signs, high, currency),
  };
  return low === high
    ? checkRequest.say("about %(high)s", words)
    : checkRequest.say("about %(low)s to %(high)s", words);
}

function withCurrency(signs, amount, currency) {
  return currency in signs ? `${signs[currency]}${amount}` : `${amount} ${currency}`.trim();
}

function roundedPrice(amount) {
  if (amount < FIVES_FROM) return roundHalfEven(amount);
  const step = amount < HUNDRED ? FIVES : 10 ** (Math.floor(Math.log10(amount)) - 1);
  return step * Math.floor(amount / step + 0.5);
}

/* Two faults at once cost at least the dearer, at most both. Causes with one range are told as one. */
function repairOutlook({ model, probabilities }, prices) {
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

/* The range that eight in ten repairs fall into. */
function usualRange(prices) {
  return [priceAt(LOW_TAIL, prices), priceAt(HIGH_TAIL, prices)];
}

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

function shareUpTo(price, prices) {
  return prices.reduce((total, [chance, span]) => total + chance * partUpTo(price, span), 0);
}

function partUpTo(price, [low, high]) {
  if (high === low) return price >= low ? 1 : 0;
  return Math.min(1, Math.max(0, (price - low) / (high - low)));
}
