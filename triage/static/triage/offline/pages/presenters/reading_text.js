/* A written reading in a few words: as `triage/jobsheet/reading_text.py`. The words stand in `sentences/reading.txt`. */

import { readGasket, SEAL_PLACES } from "../../engine/readings/gasket.js";
import { readMeter } from "../../engine/readings/meter.js";
import { readPreheat } from "../../engine/readings/preheat.js";
import { RUN_ON_FIELDS, readRunOn, ENDLESS_MINUTES } from "../../engine/readings/run_on.js";
import { readThermometer } from "../../engine/readings/thermometer.js";
import { decodeFields, InvalidReading } from "../../engine/readings/encoding.js";
import { plainText } from "../filling.js";
import { fixed, roundHalfEven, sixDigits } from "../rounding.js";

/** @typedef {import("../request.js").CheckRequest} CheckRequest
 * @typedef {import("../../engine/readings/measured.js").Measured} Measured
 * @typedef {import("../../engine/pack.js").Observation} Observation */

const A_KILOWATT = 1000;
const ONLY_A_FLOOR = 0.5;

/** @type {Object<string, (text: string, pages: any) => object>} */
const FACTS = {
  meter: meterFacts,
  thermometer: thermometerFacts,
  "run-on": runOnFacts,
  preheat: preheatFacts,
  gasket: gasketFacts,
};

/** The text of a written reading, or null where the observation takes none or it cannot be read.
 * @param {CheckRequest} checkRequest @param {string} observation @param {string} answer */
export function answerInFigures(checkRequest, observation, answer) {
  const measurement = checkRequest.pack.observations.get(observation)?.measurement;
  if (!measurement) return null;
  try {
    return readingText(checkRequest, answer, measurement);
  } catch (fault) {
    if (fault instanceof InvalidReading) return null;
    throw fault;
  }
}

/** The reading as far as this measurement uses it, in one line. Throws where it cannot be read.
 * @param {CheckRequest} checkRequest @param {string} text @param {{kind: string, quantity?: string}} measurement */
export function readingText(checkRequest, text, { kind, quantity }) {
  const { pages } = checkRequest.site;
  return plainText(pages, "sentences/reading", { reading: { kind, quantity, ...FACTS[kind](text, pages) } });
}

/** Watts below one kilowatt, else kilowatts; never below nothing. @param {Measured} power */
export function powerText({ value, uncertainty }) {
  const watts = Math.max(value, 0);
  if (watts < A_KILOWATT) return `${roundHalfEven(watts)} W ± ${roundHalfEven(2 * uncertainty)}`;
  return `${fixed(watts / A_KILOWATT, 2)} kW ± ${fixed((2 * uncertainty) / A_KILOWATT, 2)}`;
}

/** Whether the true value is more likely above it than at it. @param {Measured} power */
export function isFloor({ pLowerBound }) {
  return pLowerBound > ONLY_A_FLOOR;
}

/** The places that let through, by name. @param {any} pages @param {(boolean | null)[]} leaks */
export function placesText(pages, leaks) {
  return SEAL_PLACES.filter((_, at) => leaks[at])
    .map((place) => pages.seal_places[place])
    .join(", ");
}

/** @param {string} text */
function meterFacts(text) {
  const { watts, share, rating } = readMeter(text);
  return {
    power: powerText(watts),
    or_more: isFloor(watts),
    share: roundHalfEven(100 * Math.max(share.value, 0)),
    plate_known: rating.known,
  };
}

/** @param {string} text */
function thermometerFacts(text) {
  const { quantities, mean, setPoint } = readThermometer(text);
  const [swing, duty] = [quantities.get("swing"), quantities.get("duty")];
  return {
    swing: roundHalfEven(swing.value),
    swing_fahrenheit: roundHalfEven(1.8 * swing.value),
    share: roundHalfEven(100 * duty.value),
    mean: roundHalfEven(mean.value),
    mean_fahrenheit: roundHalfEven(32 + 1.8 * mean.value),
    unsure: roundHalfEven(2 * mean.uncertainty),
    set_to: roundHalfEven(setPoint),
  };
}

/** What was heard, as it was heard. @param {string} text */
function runOnFacts(text) {
  const { minutes, running } = readRunOn(text);
  const raw = decodeFields(RUN_ON_FIELDS, text);
  return {
    endless: minutes.value >= ENDLESS_MINUTES,
    running,
    silent: !minutes.value,
    heard: raw.get("heard"),
    stopped: raw.get("stopped"),
  };
}

/** @param {string} text */
function preheatFacts(text) {
  const { minutes, needed, ratio } = readPreheat(text);
  return {
    waiting: ratio.pLowerBound > 0,
    minutes: sixDigits(minutes),
    needed: roundHalfEven(needed.value),
    ratio: fixed(ratio.value, 1),
  };
}

/** @param {string} text @param {any} pages */
function gasketFacts(text, pages) {
  const { leaks } = readGasket(text);
  return { tried: leaks.filter((leak) => leak !== null).length, leaking: placesText(pages, leaks) };
}
