/* Power on a bar beside what the rating plate lets one expect, each with what it may be out by. As
   `triage/check_pages/drawings/power_bar.py`. */

import { sixDigits } from "../rounding.js";
import { WIDTH, boxShape, drawingOf, labelShape, lineShape, namedShape, scaleFrom } from "./drawing.js";

/** @typedef {import("../../engine/readings/measured.js").Measured} Measured */

const BAR_LEFT = 4;
const BAR_RIGHT = WIDTH - 4;
/** @type {[number, number]} */
const EXPECTED = [24, 46];
/** @type {[number, number]} */
const DRAWN = [72, 94];
const AXIS = 112;
const STEPS = [50, 100, 250, 500, 1000, 2000, 5000, 10000];
const MOST_STEPS = 5;

/** `expectation` names the upper bar; the lower one is what is drawn now.
 * @param {Measured} watts @param {Measured} expected @param {string} expectation @param {object} facts */
export function powerBar(watts, expected, expectation, facts) {
  const top = Math.max(expected.value + 2 * expected.uncertainty, watts.value + 2 * watts.uncertainty, STEPS[0]);
  const at = scaleFrom(0, top * 1.04, BAR_LEFT, BAR_RIGHT);
  const step = STEPS.find((each) => top / each <= MOST_STEPS) ?? STEPS.at(-1);
  const marks = Array.from({ length: Math.floor(top / step) }, (_, n) => step * (n + 1));
  const named = marks.filter((mark) => mark < 0.95 * top);
  const shapes = [
    namedShape(expectation, BAR_LEFT, EXPECTED[0] - 6),
    ...barShapes("plate", expected, at, EXPECTED),
    namedShape("drawn", BAR_LEFT, DRAWN[0] - 6),
    ...barShapes("hot", watts, at, DRAWN),
    lineShape("axis", BAR_LEFT, AXIS, BAR_RIGHT, AXIS),
    ...marks.map((mark) => lineShape("axis", at(mark), AXIS, at(mark), AXIS + 5)),
    ...named.map((mark) => labelShape(`${sixDigits(mark / 1000)} kW`, at(mark), AXIS + 20, "middle")),
  ];
  return drawingOf(AXIS + 26, shapes, facts);
}

/** The bar to the value, and a whisker over where the true value lies 19 times in 20.
 * @param {string} kind @param {Measured} measured @param {(value: number) => number} at
 * @param {[number, number]} edges */
function barShapes(kind, { value, uncertainty }, at, [top, bottom]) {
  const [low, high] = [at(value - 2 * uncertainty), at(value + 2 * uncertainty)];
  const middle = (top + bottom) / 2;
  return [
    boxShape(kind, at(0), top, at(value), bottom),
    lineShape("whisker", low, middle, high, middle),
    lineShape("whisker", low, top + 4, low, bottom - 4),
    lineShape("whisker", high, top + 4, high, bottom - 4),
  ];
}
