/* The preheat test: minutes from cold to the set temperature, beside what the oven's power and size need. As
   `triage/engine/readings/preheat.py`, which names the sources of the numbers. */

import { measured, propagated } from "./measured.js";
import { RATING_FIELDS, readRating } from "./rating.js";
import { fieldTable, decodeFields, readNumber, readOptional } from "./encoding.js";

/** @typedef {import("./measured.js").Measured} Measured
 * @typedef {{minutes: number, needed: Measured, ratio: Measured, quantities: Map<string, Measured>}} Preheat */

const DEFAULT_LITRES = 65;
const LITRES_UNCERTAINTY = 12;
const CAPACITY_JOULES_PER_KELVIN = 5000;
const LOSS_WATTS_PER_KELVIN = 4.4;
const RELATIVE_UNCERTAINTY = 0.2;
const ROOM_CELSIUS = 20;
export const CLOCK_UNCERTAINTY_MINUTES = 1;
const MAX_LOSS_SHARE = 0.97;

export const PREHEAT_FIELDS = fieldTable(
  ["minutes", "m", 0.5, 240],
  ["set", "c", 60, 300],
  ["room", "o", 0, 45],
  ["litres", "l", 15, 150],
  ["waiting", "w", 0, 1, true],
  ...RATING_FIELDS,
);

/** The preheat a written reading stands for. @param {string} text @returns {Preheat} */
export function readPreheat(text) {
  const raw = decodeFields(PREHEAT_FIELDS, text);
  const minutes = readNumber(PREHEAT_FIELDS, raw, "minutes");
  const setPoint = readNumber(PREHEAT_FIELDS, raw, "set");
  const rise = setPoint - (readOptional(PREHEAT_FIELDS, raw, "room") ?? ROOM_CELSIUS);
  const litres = readOptional(PREHEAT_FIELDS, raw, "litres");
  const power = readRating(PREHEAT_FIELDS, raw).expected;
  const size = litres === null ? measured(DEFAULT_LITRES, LITRES_UNCERTAINTY) : measured(litres, 1);
  const values = [power.value, size.value, CAPACITY_JOULES_PER_KELVIN, LOSS_WATTS_PER_KELVIN];
  const unsure = [
    power.uncertainty,
    size.uncertainty,
    CAPACITY_JOULES_PER_KELVIN * RELATIVE_UNCERTAINTY,
    LOSS_WATTS_PER_KELVIN * RELATIVE_UNCERTAINTY,
  ];
  const needed = propagated((...known) => minutesNeeded(rise, ...known), values, unsure);
  /** @param {number} taken @param {...number} known */
  const share = (taken, ...known) => taken / minutesNeeded(rise, ...known);
  const ratio = propagated(share, [minutes, ...values], [CLOCK_UNCERTAINTY_MINUTES, ...unsure]);
  ratio.pLowerBound = readOptional(PREHEAT_FIELDS, raw, "waiting") ? 1 : 0;
  return { minutes, needed, ratio, quantities: new Map([["ratio", ratio]]) };
}

/** Minutes a sound oven of that power and size takes to warm by `rise`; very many where it nearly cannot.
 * @param {...number} values rise in kelvin, watts, litres, heat capacity in J/K, loss in W/K */
export function minutesNeeded(...values) {
  const [rise, watts, litres, capacity, loss] = values;
  const walls = (litres / DEFAULT_LITRES) ** (2 / 3);
  const reach = Math.min((loss * walls * rise) / watts, MAX_LOSS_SHARE);
  return ((-capacity / loss) * Math.log(1 - reach)) / 60;
}
