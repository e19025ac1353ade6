/* A drawing as the template puts it on the page: shapes in order, and the words that say the same. As
   `triage/check_pages/drawings/drawing.py`. */

import { fixed } from "../rounding.js";

/** @typedef {{tag: string, kind: string, at: [string, string][], words?: string}} Shape one SVG element: its class, its
 *   attributes, and its words where it is a text */

export const WIDTH = 320;

/** @param {number} height @param {Shape[]} shapes @param {string} words */
export function drawingOf(height, shapes, words) {
  return { view_box: `0 0 ${WIDTH} ${height}`, shapes, words };
}

/** A straight line from quantities to places; what lies beyond an end is drawn at the end.
 * @returns {(value: number) => number} */
export function scaleFrom(low, high, start, end) {
  return (value) => start + Math.min(Math.max((value - low) / (high - low), 0), 1) * (end - start);
}

export function boxShape(kind, left, top, right, bottom) {
  const [width, height] = [Math.max(right - left, 0), Math.max(bottom - top, 0)];
  return { tag: "rect", kind, at: writtenPlaces({ x: left, y: top, width, height }) };
}

export function lineShape(kind, x1, y1, x2, y2) {
  return { tag: "line", kind, at: writtenPlaces({ x1, y1, x2, y2 }) };
}

export function dotShape(kind, cx, cy, r) {
  return { tag: "circle", kind, at: writtenPlaces({ cx, cy, r }) };
}

export function throughPoints(kind, points) {
  const written = points.map(([x, y]) => `${fixed(x, 1)},${fixed(y, 1)}`);
  return { tag: "polyline", kind, at: [["points", written.join(" ")]] };
}

export function labelShape(words, x, y, anchor = "start", kind = "label") {
  return { tag: "text", kind, at: [...writtenPlaces({ x, y }), ["text-anchor", anchor]], words };
}

function writtenPlaces(places) {
  return Object.entries(places).map(([name, value]) => [name, fixed(value, 1)]);
}
