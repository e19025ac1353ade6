/* Where a warming oven was heading, and how fast it loses heat. As `triage/engine/readings/warming.py`, which says when
   nothing is told. */

import { fittedCurve } from "./fitting.js";
import { inQuadrature, measured, rectangle } from "./measured.js";
import { FALL, SCALE_STEP, SETTLED, turningPoints } from "./thermometer.js";

const SURE = 20;
const WARMED = 40;
const FASTEST = 6;

/** Where it was heading, whether short of the set heat, and the minutes to lose half its warmth; null where the
 * readings do not show it.
 * @param {import("./thermometer.js").Temperatures} found
 * @returns {{end: import("./measured.js").Measured, isShort: boolean, half: number} | null} */
export function headingOf({ points, setTo, quantities }) {
  const [turn] = turningPoints(points);
  const last = points.at(-1)[0];
  const after = points.findIndex(([time, value]) => time > (turn ?? [last])[0] || value >= setTo);
  const before = after < 0 ? points : points.slice(0, after);
  const curve = fittedCurve(before, rectangle(SCALE_STEP));
  if (!curve || curve.left > FALL || before.at(-1)[1] - before[0][1] < WARMED) return null;
  const end = measured(curve.end, inQuadrature(curve.unsure, quantities.get("climb").uncertainty));
  const isShort = end.value < setTo;
  const half = curve.tau * Math.log(2);
  const isWatched = !turn && last >= SETTLED && half >= FASTEST;
  const isApart = Math.abs(end.value - setTo) > 2 * end.uncertainty;
  return end.uncertainty <= SURE && isApart && (isWatched || !isShort) ? { end, isShort, half } : null;
}
