/* Where a warming oven was heading, and how fast it loses heat. As `triage/engine/readings/warming.py`, which says when
   nothing is told. */

import { fit } from "./fitting.js";
import { inQuadrature, measured, uniformUncertainty } from "./measured.js";
import { MIN_FALL_KELVIN, SCALE_STEP_KELVIN, SETTLED_MINUTES, turningPoints } from "./thermometer.js";

const MAX_END_UNCERTAINTY_KELVIN = 20;
const MIN_RISE_KELVIN = 40;
const MIN_HALF_TIME_MINUTES = 6;

/** Where it was heading, whether short of the set heat, and the minutes to lose half its warmth; null where the
 * readings do not show it.
 * @param {import("./thermometer.js").Temperatures} found
 * @returns {{endTemperature: import("./measured.js").Measured, fallsShort: boolean, halfTimeMinutes: number} | null} */
export function warmingTrend({ points, setPoint, quantities }) {
  const [turn] = turningPoints(points);
  const last = points.at(-1)[0];
  const after = points.findIndex(([time, value]) => time > (turn ?? [last])[0] || value >= setPoint);
  const before = after < 0 ? points : points.slice(0, after);
  const curve = fit(before, uniformUncertainty(SCALE_STEP_KELVIN));
  if (!curve || curve.rmsResidual > MIN_FALL_KELVIN || before.at(-1)[1] - before[0][1] < MIN_RISE_KELVIN) return null;
  const end = measured(curve.end, inQuadrature(curve.endUncertainty, quantities.get("climb").uncertainty));
  const fallsShort = end.value < setPoint;
  const halfTimeMinutes = curve.tau * Math.log(2);
  const isWatched = !turn && last >= SETTLED_MINUTES && halfTimeMinutes >= MIN_HALF_TIME_MINUTES;
  const isApart = Math.abs(end.value - setPoint) > 2 * end.uncertainty;
  return end.uncertainty <= MAX_END_UNCERTAINTY_KELVIN && isApart && (isWatched || !fallsShort)
    ? { endTemperature: end, fallsShort, halfTimeMinutes }
    : null;
}
