/* A drawing as the template puts it on the page: shapes in order, and the facts that its caption tells. As
   `triage/check_pages/drawings/drawing.py`. */

import { fixed } from "../rounding.js";

/** @typedef {[x: number, y: number]} Place
 * @typedef {{tag: string, kind: string, at: [string, string][], text?: string, named?: object}} Shape one SVG element:
 *   its class and its attributes; a text is either figures as they stand or named, which the template puts in words */

export const WIDTH = 320;

/** @param {number} height @param {Shape[]} shapes @param {object} facts */
export function drawingOf(height, shapes, facts) {
  return { view_box: `0 0 ${WIDTH} ${height}`, shapes, facts };
}

/** A straight line from quantities to places; what lies beyond an end is drawn at the end.
 * @returns {(value: number) => number}
 * @param {number} low @param {number} high @param {number} start @param {number} end */
export function scaleFrom(low, high, start, end) {
  return (value) => start + Math.min(Math.max((value - low) / (high - low), 0), 1) * (end - start);
}

/** @param {string} kind @param {number} left @param {number} top @param {number} right @param {number} bottom
 * @returns {Shape} */
export function boxShape(kind, left, top, right, bottom) {
  const [width, height] = [Math.max(right - left, 0), Math.max(bottom - top, 0)];
  return { tag: "rect", kind, at: writtenPlaces({ x: left, y: top, width, height }) };
}

/** @param {string} kind @param {number} x1 @param {number} y1 @param {number} x2 @param {number} y2 @returns {Shape} */
export function lineShape(kind, x1, y1, x2, y2) {
  return { tag: "line", kind, at: writtenPlaces({ x1, y1, x2, y2 }) };
}

/** @param {string} kind @param {number} cx @param {number} cy @param {number} r @returns {Shape} */
export function dotShape(kind, cx, cy, r) {
  return { tag: "circle", kind, at: writtenPlaces({ cx, cy, r }) };
}

/** @param {string} kind @param {Place[]} points @returns {Shape} */
export function throughPoints(kind, points) {
  const written = points.map(([x, y]) => `${fixed(x, 1)},${fixed(y, 1)}`);
  return { tag: "polyline", kind, at: [["points", written.join(" ")]] };
}

/** @param {string} text @param {number} x @param {number} y @returns {Shape} */
export function labelShape(text, x, y, anchor = "start", kind = "label") {
  return { tag: "text", kind, at: textAt(x, y, anchor), text };
}

/** A text that the template words: what `name` stands for.
 * @param {string} name @param {number} x @param {number} y @returns {Shape} */
export function namedShape(name, x, y, anchor = "start", facts = {}) {
  return { tag: "text", kind: "label", at: textAt(x, y, anchor), named: { name, ...facts } };
}

/** @param {number} x @param {number} y @param {string} anchor @returns {[string, string][]} */
function textAt(x, y, anchor) {
  return [...writtenPlaces({ x, y }), ["text-anchor", anchor]];
}

/** @param {Object<string, number>} places @returns {[string, string][]} */
function writtenPlaces(places) {
  return Object.entries(places).map(([name, value]) => [name, fixed(value, 1)]);
}
