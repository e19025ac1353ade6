/* A written reading in a few words: as `triage/jobsheet/reading_words.py`. */

import { readGasket, SEAL_PLACES } from "../../engine/readings/gasket.js";
import { readMeter } from "../../engine/readings/meter.js";
import { readPreheat } from "../../engine/readings/preheat.js";
import { RUN_ON_FIELDS, WITHOUT_END, readRunOn } from "../../engine/readings/run_on.js";
import { readThermometer } from "../../engine/readings/thermometer.js";
import { Unreadable, fieldsOf } from "../../engine/readings/written.js";
import { fixed, roundHalfEven, sixDigits } from "../rounding.js";

const A_KILOWATT = 1000;
export const ONLY_A_FLOOR = 0.5;

const IN_WORDS = {
  meter: meterWords,
  thermometer: thermometerWords,
  "run-on": runOnWords,
  preheat: preheatWords,
  gasket: gasketWords,
};

/** The words of a written reading, or null where the observation takes none or it cannot be read. */
export function answerInFigures(visit, observation, answer) {
  const gauge = visit.pack.observations.get(observation)?.gauge;
  if (!gauge) return null;
  try {
    return readingWords(visit, answer, gauge);
  } catch (fault) {
    if (fault instanceof Unreadable) return null;
    throw fault;
  }
}

/** The reading as far as this gauge uses it. Throws where it cannot be read. */
export function readingWords(visit, text, { kind, quantity }) {
  return IN_WORDS[kind](visit, text, quantity);
}

/** Watts below one kilowatt, else kilowatts; never below nothing. */
export function powerWords(visit, { value, uncertainty, atLeast }) {
  const watts = Math.max(value, 0);
  const power =
    watts >= A_KILOWATT
      ? visit.say("%(value)s kW ± %(unsure)s", {
          value: fixed(watts / A_KILOWATT, 2),
          unsure: fixed((2 * uncertainty) / A_KILOWATT, 2),
        })
      : visit.say("%(value)s W ± %(unsure)s", {
          value: roundHalfEven(watts),
          unsure: roundHalfEven(2 * uncertainty),
        });
  return atLeast > ONLY_A_FLOOR ? visit.say("%(power)s or more", { power }) : power;
}

function meterWords(visit, text, quantity) {
  const { watts, share, rating } = readMeter(text);
  const power = powerWords(visit, watts);
  if (quantity === "watts") return power;
  const words = { power, share: roundHalfEven(100 * Math.max(share.value, 0)) };
  if (rating.known) return visit.say("%(power)s, %(share)s %% of what its plate lets one expect", words);
  return visit.say("%(power)s, %(share)s %% of a usual heater", words);
}

function thermometerWords(visit, text, quantity) {
  const { quantities, mean, setTo } = readThermometer(text);
  if (quantity === "swing") {
    const { value } = quantities.get("swing");
    const words = { c: roundHalfEven(value), f: roundHalfEven(1.8 * value) };
    return visit.say("%(c)s °C (%(f)s °F) between highest and lowest", words);
  }
  if (quantity === "duty") {
    const share = roundHalfEven(100 * quantities.get("duty").value);
    return visit.say("rising or level for %(share)s %% of the time", { share });
  }
  return visit.say("mean %(c)s °C (%(f)s °F) ± %(unsure)s °C, set to %(set_to)s °C", {
    c: roundHalfEven(mean.value),
    f: roundHalfEven(32 + 1.8 * mean.value),
    unsure: roundHalfEven(2 * mean.uncertainty),
    set_to: roundHalfEven(setTo),
  });
}

/** What was heard, as it was heard. */
export function runOnWords(visit, text) {
  const { minutes, running } = readRunOn(text);
  const raw = fieldsOf(RUN_ON_FIELDS, text);
  const words = { heard: raw.get("heard"), stopped: raw.get("stopped") };
  if (minutes.value >= WITHOUT_END) return visit.say("still running when the oven was cold");
  if (running) return visit.say("still running %(heard)s min after switch-off", words);
  if (!minutes.value) return visit.say("silent from switch-off on");
  if (words.heard === words.stopped) return visit.say("found still %(stopped)s min after switch-off", words);
  return visit.say("heard at %(heard)s min after switch-off and found still at %(stopped)s", words);
}

function preheatWords(visit, text) {
  const { minutes, needed, ratio } = readPreheat(text);
  const words = {
    minutes: sixDigits(minutes),
    needed: roundHalfEven(needed.value),
    ratio: fixed(ratio.value, 1),
  };
  if (ratio.atLeast) {
    return visit.say("not hot after %(minutes)s min; a sound oven needs about %(needed)s min", words);
  }
  return visit.say("%(minutes)s min, %(ratio)s times the %(needed)s min a sound oven needs", words);
}

function gasketWords(visit, text) {
  const { leaks } = readGasket(text);
  const names = placeNames(visit);
  const leaking = SEAL_PLACES.filter((_, at) => leaks[at]);
  if (leaking.length) {
    return visit.say("leaks at: %(places)s", { places: leaking.map((place) => names[place]).join(", ") });
  }
  return visit.say("tight at all %(n)s places tried", { n: leaks.filter((leak) => leak !== null).length });
}

/** The eight places round the door. */
export function placeNames(visit) {
  return {
    "top-left": visit.say("top left"),
    top: visit.say("top"),
    "top-right": visit.say("top right"),
    right: visit.say("right"),
    "bottom-right": visit.say("bottom right"),
    bottom: visit.say("bottom"),
    "bottom-left": visit.say("bottom left"),
    left: visit.say("left"),
  };
}
