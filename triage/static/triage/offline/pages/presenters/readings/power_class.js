/* What a meter reading comes to in plain words: nothing at all, fan and lamp only, a share of the heaters, or all. As
   `triage/check_pages/presenters/readings/power_class.py`. */

import { sumOf } from "../../../engine/arithmetic.js";
import { chanceAbove, measured } from "../../../engine/readings/measured.js";
import { fixed, roundHalfEven } from "../../rounding.js";
import { isFloor } from "../reading_text.js";
import { CLEAR } from "./told.js";

const POWER_CLASSES = ["nothing", "fan-and-lamp", "quarter", "half", "three-quarters", "all", "more"];
const NOTHING_BELOW = 15;
const EDGES = [0.12, 0.35, 0.62, 0.8, 1.25];
const ROUGH = 1;

/** What the power comes to, in a sentence or two. @param {import("../../../engine/readings/meter.js").Power} power */
export function powerClassLine(visit, power) {
  const found = powerClasses(power);
  const isWithoutHeater = POWER_CLASSES.indexOf(found.at(-1)) < 2;
  return isWithoutHeater ? withoutHeater(visit, power, found) : shareLine(visit, power, found);
}

/* The class that holds it with a fair chance, or as few in a row as do; the lowest first. */
function powerClasses({ rating, share }) {
  const edges = [NOTHING_BELOW / rating.expected.value, ...EDGES];
  const told = measured(Math.max(share.value, 0), share.uncertainty);
  const above = [1, ...edges.map((edge) => chanceAbove(told, edge)), 0];
  const chances = above.slice(1).map((passed, at) => above[at] - passed);
  let first = chances.indexOf(Math.max(...chances));
  let end = first + 1;
  while (sumOf(chances.slice(first, end)) < CLEAR) {
    if (end === chances.length || (first > 0 && chances[first - 1] > chances[end])) first -= 1;
    else end += 1;
  }
  return POWER_CLASSES.slice(first, end);
}

function withoutHeater(visit, { watts }, found) {
  if (isFloor(watts)) {
    return visit.say("Next to nothing on average: no heater drew power for most of this time.");
  }
  if (found.length > 1) {
    return visit.say(
      "No heater seems to draw power. Fan and lamp draw only some tens of watts, and this may be out by %(unsure)s W. It cannot tell them from nothing at all.",
      { unsure: fixed(2 * watts.uncertainty, 0) },
    );
  }
  if (found[0] === "nothing") {
    return visit.say("Nothing at all: neither a heater nor fan and lamp seem to draw power.");
  }
  return visit.say("Fan and lamp only: they draw some tens of watts. No heater seems to draw power.");
}

function shareLine(visit, { share, rating, watts }, found) {
  const unsure = 2 * share.uncertainty;
  const onAverage = isFloor(watts);
  const words = {
    part: partOfPower(visit, found),
    whole: rating.known ? visit.say("its plate lets one expect") : visit.say("a usual heater draws"),
    low: roundHalfEven(100 * Math.max(share.value - unsure, 0)),
    high: roundHalfEven(100 * Math.max(share.value + unsure, 0)),
  };
  const line = onAverage
    ? visit.say("On average this comes to %(part)s of what %(whole)s: from %(low)s to %(high)s %%.", words)
    : visit.say("This comes to %(part)s of what %(whole)s: from %(low)s to %(high)s %%.", words);
  if (found.length > 2 || 2 * unsure > ROUGH) {
    return `${line} ${visit.say("The figures are too rough to tell more.")}`;
  }
  return found.length > 1 || onAverage ? line : `${line} ${meaningOfClass(visit, found[0])}`;
}

function partOfPower(visit, found) {
  const names = {
    nothing: visit.say("nothing"),
    "fan-and-lamp": visit.say("next to nothing"),
    quarter: visit.say("a quarter"),
    half: visit.say("half"),
    "three-quarters": visit.say("three quarters"),
    all: visit.say("all"),
    more: visit.say("more than all"),
  };
  const [part, other] = [names[found[0]], names[found.at(-1)]];
  return found.length === 1 ? part : visit.say("between %(part)s and %(other)s", { part, other });
}

function meaningOfClass(visit, name) {
  return {
    quarter: visit.say("As if one small heater of several worked, or one heater at half its voltage."),
    half: visit.say("As if about half of the heaters worked, such as one of two alike."),
    "three-quarters": visit.say("As if a smaller heater of several did not work, or the voltage were too low."),
    all: visit.say("As if every heater of this setting worked."),
    more: visit.say("As if something else in the home had switched on meanwhile. Try it once more."),
  }[name];
}
