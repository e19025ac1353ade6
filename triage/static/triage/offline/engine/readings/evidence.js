/* From a written reading to evidence: how likely it is under each option of its observation (Pearl's virtual
   evidence). An answer that is an option's id is the same with all weight on that option. No limit is hard here,
   except a red flag's: it is raised as soon as the value, give or take one standard uncertainty, touches it. */

import { sumOfProducts } from "../arithmetic.js";
import { CANT_TELL } from "../pack.js";
import { readGasket } from "./gasket.js";
import { chanceAbove, spanLikelihoods, touchesSpan } from "./measured.js";
import { readMeter } from "./meter.js";
import { readPreheat } from "./preheat.js";
import { readRunOn } from "./run_on.js";
import { readThermometer } from "./thermometer.js";
import { Unreadable } from "./written.js";

/** @typedef {import("../arithmetic.js").Row} Row
 * @typedef {import("../pack.js").Observation} Observation */

const READERS = new Map([
  ["meter", readMeter],
  ["thermometer", readThermometer],
  ["run-on", readRunOn],
  ["preheat", readPreheat],
  ["gasket", readGasket],
]);

/** Why `answer` cannot be used, or null where it is an option, "can't tell" or a reading.
 * @param {Observation} observation @param {string} answer @returns {string | null} */
export function unreadableReason(observation, answer) {
  if (answer === CANT_TELL || observation.options.includes(answer)) return null;
  if (!observation.gauge) return "not-an-option";
  try {
    READERS.get(observation.gauge.kind)(answer);
  } catch (fault) {
    if (fault instanceof Unreadable) return fault.reason;
    throw fault;
  }
  return null;
}

/** The likelihood of each level of what the observation reports, for an answer that can be read.
 * @param {Observation} observation @param {string} answer @returns {Row} */
export function levelLikelihood(observation, answer) {
  const place = observation.options.indexOf(answer);
  if (place >= 0) return observation.says.map((row) => row[place]);
  const told = gaugeAnswer(observation, answer);
  return observation.says.map((row) => sumOfProducts(row, told));
}

/** The ids of the red flags an answer raises, in the order of the options' flags.
 * @param {Observation} observation @param {string} answer @returns {string[]} */
export function raisedBy({ flags, gauge, options }, answer) {
  if (flags.has(answer)) return [flags.get(answer)];
  if (!flags.size || !gauge || answer === CANT_TELL || options.includes(answer)) return [];
  const { quantities } = READERS.get(gauge.kind)(answer);
  if (!quantities) return []; // a pattern has no line
  const told = quantities.get(gauge.quantity);
  const touched = new Set([...gauge.spans.keys()].filter((option) => touchesSpan(told, openSpan(gauge, option))));
  for (const [option, [quantity, limit]] of gauge.beyond) {
    if (touchesSpan(quantities.get(quantity), [limit, Infinity])) touched.add(option);
  }
  return [...flags].filter(([option]) => touched.has(option)).map(([, flag]) => flag);
}

/** The likelihood of each option for a reading, in the order of the options.
 * @param {Observation} observation @param {string} answer @returns {Row} */
export function gaugeAnswer({ gauge, options }, answer) {
  const result = READERS.get(gauge.kind)(answer);
  if (result.classes) return options.map((option) => result.classes.get(gauge.patterns.get(option)) ?? 0);
  const likelihoods = spanLikelihoods(result.quantities.get(gauge.quantity), [...gauge.spans.values()]);
  const told = new Map([...gauge.spans.keys()].map((option, at) => [option, likelihoods[at]]));
  for (const [option, [quantity, limit]] of gauge.beyond) {
    const chance = chanceAbove(result.quantities.get(quantity), limit);
    for (const [other, value] of told) told.set(other, value * (1 - chance));
    told.set(option, chance);
  }
  return options.map((option) => told.get(option) ?? 0);
}

/* The option's span, without end where the line ends: what lies beyond belongs to it. */
function openSpan(gauge, option) {
  const [low, high] = gauge.spans.get(option);
  const ordered = [...gauge.spans.values()].sort((one, other) => one[0] - other[0] || one[1] - other[1]);
  return [low === ordered[0][0] ? -Infinity : low, high === ordered.at(-1)[1] ? Infinity : high];
}
