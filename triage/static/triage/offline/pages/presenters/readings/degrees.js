/* Temperatures in the unit people use where the oven stands; a reading keeps Celsius. As
   `triage/check_pages/presenters/readings/degrees.py`. */

import { fixed, roundHalfEven } from "../../rounding.js";

const MILLIONTHS = 1e6;
const PER_KELVIN = 1.8;

/** The unit; a temperature turned from it and into it (`kept` of digits, `shown` of a number), a difference likewise,
 * and the words of either. */
export function degreesOf(visit) {
  const isFahrenheit = visit.place.temperature === "F";
  const unit = isFahrenheit ? "°F" : "°C";
  const shown = (celsius) => (isFahrenheit ? 32 + PER_KELVIN * celsius : celsius);
  const shownApart = (kelvin) => (isFahrenheit ? PER_KELVIN * kelvin : kelvin);
  return {
    unit,
    shown,
    shownApart,
    kept: (typed) => (isFahrenheit ? inKelvin(Number(typed) - 32) : typed),
    keptApart: (typed) => (isFahrenheit ? inKelvin(Number(typed)) : typed),
    words: (celsius) => `${fixed(shown(celsius), 0)} ${unit}`,
    apart: (kelvin) => `${fixed(shownApart(kelvin), 0)} ${unit}`,
  };
}

/* To a tenth. Six decimals can be typed, and whole millionths are divided without a slip. */
function inKelvin(fahrenheit) {
  const millionths = Math.round(fahrenheit * MILLIONTHS);
  return (roundHalfEven((millionths * 10) / (PER_KELVIN * MILLIONTHS)) / 10).toFixed(1);
}
