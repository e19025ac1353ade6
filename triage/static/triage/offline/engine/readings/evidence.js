/* From a written reading to evidence: how likely it is under each option of its observation (Pearl's virtual
   evidence). An answer that is an option's id is the same with all weight on that option. No limit is hard here,
   except a red flag's: it is raised as soon as the value, give or take one standard uncertainty, touches it. */

import { sumOfProducts } from "../arithmetic.js";
import { CANT_TELL } from "../pack.js";
import { readGasket } from "./gasket.js";
import { probabilityAbove, intervalLikelihoods, overlaps } from "./measured.js";
import { readMeter } from "./meter.js";
import { readPreheat } from "./preheat.js";
import { readRunOn } from "./run_on.js";
import { readThermometer } from "./thermometer.js";
import { InvalidReading } from "./encoding.js";

/** @typedef {import("../arithmetic.js").Row} Row
 * @typedef {import("../pack.js").MeasurementSpec} MeasurementSpec
 * @typedef {import("../pack.js").Observation} Observation
 * @typedef {{quantities?: Map<string, import("./measured.js").Measured>, likelihoods?: Map<string, number>}} Outcome
 *   quantities, or the likelihood of each pattern */

const READERS = new Map(
  /** @type {[string, (text: string) => Outcome][]} */ ([
    ["meter", readMeter],
    ["thermometer", readThermometer],
    ["run-on", readRunOn],
    ["preheat", readPreheat],
    ["gasket", readGasket],
  ]),
);

/** Why `answer` cannot be used, or null where it is an option, "can't tell" or a reading.
 * @param {Observation} observation @param {string} answer @returns {string | null} */
export function invalidReason(observation, answer) {
  if (answer === CANT_TELL || observation.options.includes(answer)) return null;
  if (!observation.measurement) return "not-an-option";
  try {
    READERS.get(observation.measurement.kind)(answer);
  } catch (fault) {
    if (fault instanceof InvalidReading) return fault.reason;
    throw fault;
  }
  return null;
}

/** The likelihood of each level of what the observation reports, for an answer that can be read.
 * @param {Observation} observation @param {string} answer @returns {Row} */
export function levelLikelihood(observation, answer) {
  const place = observation.options.indexOf(answer);
  if (place >= 0) return observation.answerProbabilities.map((row) => row[place]);
  const likelihoods = optionLikelihoods(observation, answer);
  return observation.answerProbabilities.map((row) => sumOfProducts(row, likelihoods));
}

/** The ids of the red flags an answer raises, in the order of the options' flags.
 * @param {Observation} observation @param {string} answer @returns {string[]} */
export function flagsRaisedBy({ flags, measurement, options }, answer) {
  if (flags.has(answer)) return [flags.get(answer)];
  if (!flags.size || !measurement || answer === CANT_TELL || options.includes(answer)) return [];
  const { quantities } = READERS.get(measurement.kind)(answer);
  if (!quantities) return []; // a pattern has no line
  const found = quantities.get(measurement.quantity);
  /** @param {string} option */
  const isTouched = (option) => overlaps(found, openInterval(measurement, option));
  const touched = new Set([...measurement.intervals.keys()].filter(isTouched));
  for (const [option, [quantity, limit]] of measurement.overrides) {
    if (overlaps(quantities.get(quantity), [limit, Infinity])) touched.add(option);
  }
  return [...flags].filter(([option]) => touched.has(option)).map(([, flag]) => flag);
}

/** The likelihood of each option for a reading, in the order of the options.
 * @param {Observation} observation @param {string} answer @returns {Row} */
export function optionLikelihoods({ measurement, options }, answer) {
  const { kind, quantity, intervals, patterns, overrides } = measurement;
  const result = READERS.get(kind)(answer);
  if (result.likelihoods) return options.map((option) => result.likelihoods.get(patterns.get(option)) ?? 0);
  const row = intervalLikelihoods(result.quantities.get(quantity), [...intervals.values()]);
  const likelihoods = new Map([...intervals.keys()].map((option, at) => [option, row[at]]));
  for (const [option, [other, limit]] of overrides) {
    const probability = probabilityAbove(result.quantities.get(other), limit);
    for (const [name, value] of likelihoods) likelihoods.set(name, value * (1 - probability));
    likelihoods.set(option, probability);
  }
  return options.map((option) => likelihoods.get(option) ?? 0);
}

/** The option's interval, without end where the line ends: what lies beyond belongs to it.
 * @param {MeasurementSpec} measurement @param {string} option @returns {[number, number]} */
function openInterval(measurement, option) {
  const [low, high] = measurement.intervals.get(option);
  const ordered = [...measurement.intervals.values()].sort((one, other) => one[0] - other[0] || one[1] - other[1]);
  return [low === ordered[0][0] ? -Infinity : low, high === ordered.at(-1)[1] ? Infinity : high];
}
