/* The door from the front with its seal: at each of eight places tight, leaking or not tried, told by shape. As
   `triage/check_pages/drawings/door_diagram.py`. */

import { SEAL_PLACES } from "../../engine/readings/gasket.js";
import { WIDTH, boxShape, dotShape, drawingOf, namedShape, lineShape } from "./drawing.js";

const DOOR_LEFT = 70;
const DOOR_RIGHT = WIDTH - 70;
const DOOR_TOP = 34;
const DOOR_BOTTOM = 166;
const OUTWARD = 26;

/** @param {(boolean | null)[]} leaks @param {object} facts */
export function doorDiagram(leaks, facts) {
  const shapes = [
    boxShape("door", DOOR_LEFT - 16, DOOR_TOP - 14, DOOR_RIGHT + 16, DOOR_BOTTOM + 14),
    boxShape("seal", DOOR_LEFT, DOOR_TOP, DOOR_RIGHT, DOOR_BOTTOM),
    lineShape("axis", DOOR_LEFT + 30, DOOR_TOP - 7, DOOR_RIGHT - 30, DOOR_TOP - 7),
    ...SEAL_PLACES.flatMap((place, at) => spotShapes(place, leaks[at])),
    ...["tight", "leak", "untried"].flatMap((kind, at) => {
      const across = 8 + at * 108;
      return [dotShape(kind, across + 6, 206, 6), namedShape(kind, across + 17, 210)];
    }),
  ];
  return drawingOf(218, shapes, facts);
}

/** @param {string} place @param {boolean | null} leak */
function spotShapes(place, leak) {
  const [right, below] = [sideOf(place, "left", "right"), sideOf(place, "top", "bottom")];
  const x = (DOOR_LEFT + DOOR_RIGHT) / 2 + (right * (DOOR_RIGHT - DOOR_LEFT)) / 2;
  const y = (DOOR_TOP + DOOR_BOTTOM) / 2 + (below * (DOOR_BOTTOM - DOOR_TOP)) / 2;
  if (!leak) return [dotShape(leak === null ? "untried" : "tight", x, y, 5)];
  const length = Math.sqrt(right * right + below * below);
  const [across, down] = [right / length, below / length];
  const rays = [-1, 0, 1].map((n) =>
    lineShape(
      "ray",
      x + 10 * across - 7 * n * down,
      y + 10 * down + 7 * n * across,
      x + OUTWARD * across - 10 * n * down,
      y + OUTWARD * down + 10 * n * across,
    ),
  );
  return [...rays, dotShape("leak", x, y, 7)];
}

/** On which side of the door a place lies: minus one, one, or nothing between the two.
 * @param {string} place @param {string} before @param {string} after */
function sideOf(place, before, after) {
  return Number(place.includes(after)) - Number(place.includes(before));
}
