/* Temperatures in the unit people use where the oven stands; a reading keeps Celsius and kelvin. As
   `triage/check_pages/presenters/readings/degrees.py`. */

import { fixed, roundHalfEven } from "../../rounding.js";

const MILLIONTHS = 1e6;
const PER_KELVIN = 1.8;

/** @typedef {{unit: string, kept: (scale: string, typed: string) => string,
 *   typed: (scale: string, kept: number) => number, fromCelsius: (celsius: number) => number,
 *   temperatureText: (celsius: number) => string, differenceText: (kelvin: number) => string}} Degrees */

const CELSIUS = degrees("°C", {
  kept: (_, typed) => typed,
  fromCelsius: (celsius) => celsius,
  fromKelvin: (kelvin) => kelvin,
});
const FAHRENHEIT = degrees("°F", {
  kept: (scale, typed) => (scale ? inKelvin(Number(typed) - (scale === "temperature" ? 32 : 0)) : typed),
  fromCelsius: (celsius) => 32 + PER_KELVIN * celsius,
  fromKelvin: (kelvin) => PER_KELVIN * kelvin,
});

/** @returns {Degrees} */
export function degreesOf({ region }) {
  return region.temperature === "F" ? FAHRENHEIT : CELSIUS;
}

function degrees(unit, { kept, fromCelsius, fromKelvin }) {
  return {
    unit,
    kept,
    fromCelsius,
    typed: (scale, value) => {
      return scale === "temperature" ? fromCelsius(value) : scale === "difference" ? fromKelvin(value) : value;
    },
    temperatureText: (celsius) => `${fixed(fromCelsius(celsius), 0)} ${unit}`,
    differenceText: (kelvin) => `${fixed(fromKelvin(kelvin), 0)} ${unit}`,
  };
}

/* To a tenth. Six decimals can be typed, and whole millionths are divided without a slip. */
function inKelvin(fahrenheit) {
  const millionths = Math.round(fahrenheit * MILLIONTHS);
  return (roundHalfEven((millionths * 10) / (PER_KELVIN * MILLIONTHS)) / 10).toFixed(1);
}
