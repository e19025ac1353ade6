/* The preheat test: minutes from cold to the set temperature, beside what the oven's power and size need. As
   `triage/engine/readings/preheat.py`, which names the sources of the numbers. */

import { measured, propagated } from "./measured.js";
import { RATING_LINES, readRating } from "./rating.js";
import { fieldTable, fieldsOf, numberIn, optionalIn } from "./written.js";

/** @typedef {import("./measured.js").Measured} Measured
 * @typedef {{minutes: number, needed: Measured, ratio: Measured, quantities: Map<string, Measured>}} Preheat */

const USUAL_LITRES = 65;
const LITRES_UNSURE = 12;
const CAPACITY = 5000;
const LOSS = 4.4;
const UNSURE = 0.2;
const ROOM = 20;
export const CLOCK_UNSURE = 1;
const NEARLY_NEVER = 0.97;

export const PREHEAT_FIELDS = fieldTable(
  ["minutes", "m", 0.5, 240],
  ["set", "c", 60, 300],
  ["room", "o", 0, 45],
  ["litres", "l", 15, 150],
  ["waiting", "w", 0, 1, true],
  ...RATING_LINES,
);

/** The preheat a written reading stands for. @param {string} text @returns {Preheat} */
export function readPreheat(text) {
  const raw = fieldsOf(PREHEAT_FIELDS, text);
  const minutes = numberIn(PREHEAT_FIELDS, raw, "minutes");
  const setTo = numberIn(PREHEAT_FIELDS, raw, "set");
  const rise = setTo - (optionalIn(PREHEAT_FIELDS, raw, "room") ?? ROOM);
  const litres = optionalIn(PREHEAT_FIELDS, raw, "litres");
  const power = readRating(PREHEAT_FIELDS, raw).expected;
  const size = litres === null ? measured(USUAL_LITRES, LITRES_UNSURE) : measured(litres, 1);
  const values = [power.value, size.value, CAPACITY, LOSS];
  const unsure = [power.uncertainty, size.uncertainty, CAPACITY * UNSURE, LOSS * UNSURE];
  const needed = propagated((...known) => minutesNeeded(rise, ...known), values, unsure);
  const share = (taken, ...known) => taken / minutesNeeded(rise, ...known);
  const ratio = propagated(share, [minutes, ...values], [CLOCK_UNSURE, ...unsure]);
  ratio.atLeast = optionalIn(PREHEAT_FIELDS, raw, "waiting") ? 1 : 0;
  return { minutes, needed, ratio, quantities: new Map([["ratio", ratio]]) };
}

/** Minutes a sound oven of that power and size takes to warm by `rise`; very many where it nearly cannot. */
export function minutesNeeded(rise, watts, litres, capacity, loss) {
  const walls = (litres / USUAL_LITRES) ** (2 / 3);
  const reach = Math.min((loss * walls * rise) / watts, NEARLY_NEVER);
  return ((-capacity / loss) * Math.log(1 - reach)) / 60;
}
