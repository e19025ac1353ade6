/* Temperature against time: the readings, the set point with the band that is no fault, the mean and whole cycles. As
   `triage/check_pages/drawings/temperature_line.py`. */

import { wholeCycles } from "../../engine/readings/thermometer.js";
import { sixDigits } from "../rounding.js";
import {
  boxShape,
  dotShape,
  drawingOf,
  labelShape,
  lineShape,
  namedShape,
  scaleFrom,
  throughPoints,
  WIDTH,
} from "./drawing.js";

const HEAT_LEFT = 44;
const HEAT_RIGHT = WIDTH - 6;
const KEY = 12;
const HEAT_TOP = 22;
const HEAT_BOTTOM = 178;
const CYCLES = 188;
const TIMES = 222;
export const NO_FAULT = 15;
const ROOM_ABOVE = 10;

/** @param {import("../../engine/readings/thermometer.js").Temperatures} found @param {(celsius: number) => string} degrees
 *   writes a temperature as people there read it @param {object} facts */
export function temperatureLine(found, degrees, facts) {
  const { points, setPoint } = found;
  const values = points.map(([, value]) => value);
  const low = Math.min(...values, setPoint - NO_FAULT) - ROOM_ABOVE;
  const high = Math.max(...values, setPoint + NO_FAULT) + ROOM_ABOVE;
  const [start, end] = [points[0][0], points.at(-1)[0]];
  const across = scaleFrom(start, end > start ? end : start + 1, HEAT_LEFT + 6, HEAT_RIGHT - 6);
  const down = scaleFrom(low, high, HEAT_BOTTOM, HEAT_TOP);
  /** @type {[number, number][]} */
  const placed = points.map(([time, value]) => [across(time), down(value)]);
  const mean = down(found.mean.value);
  const shapes = [
    boxShape("band", HEAT_LEFT, down(setPoint + NO_FAULT), HEAT_RIGHT, down(setPoint - NO_FAULT)),
    lineShape("set", HEAT_LEFT, down(setPoint), HEAT_RIGHT, down(setPoint)),
    lineShape("mean", HEAT_LEFT, mean, HEAT_RIGHT, mean),
    lineShape("mean", HEAT_RIGHT - 76, KEY - 4, HEAT_RIGHT - 40, KEY - 4),
    namedShape("mean", HEAT_RIGHT, KEY, "end"),
    throughPoints("warmth", placed),
    ...placed.map(([x, y]) => dotShape("reading", x, y, 3.2)),
    lineShape("axis", HEAT_LEFT, HEAT_TOP, HEAT_LEFT, HEAT_BOTTOM),
    lineShape("axis", HEAT_LEFT, HEAT_BOTTOM, HEAT_RIGHT, HEAT_BOTTOM),
    labelShape(degrees(setPoint), HEAT_LEFT - 4, down(setPoint) + 4, "end", "label strong"),
    namedShape("no-fault", HEAT_LEFT, KEY),
    labelShape(sixDigits(start), across(start), TIMES, "middle"),
    namedShape("minutes", HEAT_RIGHT, TIMES, "end", { n: sixDigits(end) }),
    ...cycleShapes(points, across),
  ];
  return drawingOf(228, shapes, facts);
}

/** A bracket under each whole cycle.
 * @param {import("../../engine/readings/thermometer.js").Point[]} points @param {(minutes: number) => number} across */
function cycleShapes(points, across) {
  const cycles = wholeCycles(points);
  const shapes = cycles.flatMap(([start, end]) => {
    const [left, right] = [across(start) + 1, across(end) - 1];
    /** @type {[number, number][]} */
    const corners = [
      [left, CYCLES - 5],
      [left, CYCLES],
      [right, CYCLES],
      [right, CYCLES - 5],
    ];
    return corners.slice(1).map((corner, at) => lineShape("cycle", ...corners[at], ...corner));
  });
  if (cycles.length) shapes.push(namedShape("cycle", across(cycles[0][0]), CYCLES + 15));
  return shapes;
}
