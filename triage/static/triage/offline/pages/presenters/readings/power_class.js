/* What a meter reading comes to: nothing at all, fan and lamp only, a share of the heaters, or all. As
   `triage/check_pages/presenters/readings/power_class.py`. */

import { sumOf } from "../../../engine/arithmetic.js";
import { probabilityAbove, measured } from "../../../engine/readings/measured.js";
import { fixed, roundHalfEven } from "../../rounding.js";
import { isFloor } from "../reading_text.js";
import { CLEAR } from "./interpretation.js";

/** @typedef {import("../../../engine/readings/meter.js").Power} Power */

const POWER_CLASSES = ["nothing", "fan-and-lamp", "quarter", "half", "three-quarters", "all", "more"];
const NOTHING_BELOW = 15;
const EDGES = [0.12, 0.35, 0.62, 0.8, 1.25];
const ROUGH = 1;

/** What the power comes to; `_power_class.html` says it in a sentence or two.
 * @param {import("../../../engine/readings/meter.js").Power} power */
export function powerClassFacts(power) {
  const { share, watts } = power;
  const found = powerClasses(power);
  const unsure = 2 * share.uncertainty;
  return {
    heater: POWER_CLASSES.indexOf(found.at(-1)) > 1,
    part: found[0],
    other_part: found.at(-1),
    on_average: isFloor(watts),
    watts_unsure: fixed(2 * watts.uncertainty, 0),
    share_low: roundHalfEven(100 * Math.max(share.value - unsure, 0)),
    share_high: roundHalfEven(100 * Math.max(share.value + unsure, 0)),
    rough: found.length > 2 || 2 * unsure > ROUGH,
  };
}

/** The class that holds it with a fair chance, or as few in a row as do; the lowest first. @param {Power} power */
function powerClasses({ rating, share }) {
  const edges = [NOTHING_BELOW / rating.expected.value, ...EDGES];
  const drawn = measured(Math.max(share.value, 0), share.uncertainty);
  const above = [1, ...edges.map((edge) => probabilityAbove(drawn, edge)), 0];
  const chances = above.slice(1).map((passed, at) => above[at] - passed);
  let first = chances.indexOf(Math.max(...chances));
  let end = first + 1;
  while (sumOf(chances.slice(first, end)) < CLEAR) {
    if (end === chances.length || (first > 0 && chances[first - 1] > chances[end])) first -= 1;
    else end += 1;
  }
  return POWER_CLASSES.slice(first, end);
}
