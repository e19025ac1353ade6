/* Minutes on a line: the stretches that mean something, and from when to when the thing measured may have been. As
   `triage/check_pages/drawings/minutes_line.py`. */

import { sixDigits } from "../rounding.js";
import { WIDTH, boxShape, drawingOf, labelShape, namedShape, lineShape, scaleFrom } from "./drawing.js";

/** @typedef {{start: number, end: number, kind: string, name: string}} Stretch */

const LINE_LEFT = 6;
const LINE_RIGHT = WIDTH - 6;
const LINE_TOP = 34;
const LINE_BOTTOM = 66;
const MARK_TOP = 20;
const EVERY = [5, 10, 15, 30, 60, 120];
const MOST_MARKS = 6;

/** `seen` is the earliest and latest it may have been, and whether it may be later still.
 * @param {number} length @param {Stretch[]} stretches @param {[number, number, boolean]} seen @param {string} unit
 * @param {object} facts */
export function minutesLine(length, stretches, [first, last, later], unit, facts) {
  const at = scaleFrom(0, length, LINE_LEFT, LINE_RIGHT);
  const every = EVERY.find((step) => length / step <= MOST_MARKS) ?? EVERY.at(-1);
  const marks = Array.from({ length: Math.floor(length / every) + 1 }, (_, n) => every * n);
  const [left, right] = [at(first), at(later ? length : last)];
  const shapes = [
    ...stretches.flatMap(({ start, end, kind, name }) => [
      boxShape(kind, at(start), LINE_TOP, at(end), LINE_BOTTOM),
      namedShape(name, at(start) + 3, LINE_TOP + 20),
    ]),
    boxShape("seen", left - 1.5, MARK_TOP, Math.max(right, left) + 1.5, LINE_TOP),
    lineShape("seen-edge", left, MARK_TOP - 6, left, LINE_BOTTOM + 6),
    lineShape("axis", LINE_LEFT, LINE_BOTTOM, LINE_RIGHT, LINE_BOTTOM),
    ...marks.map((mark) => lineShape("axis", at(mark), LINE_BOTTOM, at(mark), LINE_BOTTOM + 5)),
    ...marks.map((mark) => labelShape(sixDigits(mark), at(mark), LINE_BOTTOM + 20, anchorFor(mark, length))),
    namedShape(unit, LINE_RIGHT, LINE_BOTTOM + 36, "end"),
  ];
  return drawingOf(LINE_BOTTOM + 42, shapes, facts);
}

/** The first and last number stay inside the drawing. @param {number} mark @param {number} length */
function anchorFor(mark, length) {
  return mark === 0 ? "start" : mark > 0.95 * length ? "end" : "middle";
}
