/* Temperatures in the unit people use where the oven stands; a reading keeps Celsius and kelvin. As
   `triage/check_pages/presenters/readings/degrees.py`. */

import { fixed, roundHalfEven } from "../../rounding.js";

/** @typedef {import("../../request.js").RegionProfile} RegionProfile */

const MILLIONTHS = 1e6;
const PER_KELVIN = 1.8;

/** @typedef {{unit: string, toStored: (conversion: string, typed: string) => string,
 *   toTyped: (conversion: string, stored: number) => number, fromCelsius: (celsius: number) => number,
 *   temperatureText: (celsius: number) => string, differenceText: (kelvin: number) => string}} Degrees */

const CELSIUS = degrees("°C", {
  toStored: (_, typed) => typed,
  fromCelsius: (celsius) => celsius,
  fromKelvin: (kelvin) => kelvin,
});
const FAHRENHEIT = degrees("°F", {
  toStored: (conversion, typed) =>
    conversion ? inKelvin(Number(typed) - (conversion === "temperature" ? 32 : 0)) : typed,
  fromCelsius: (celsius) => 32 + PER_KELVIN * celsius,
  fromKelvin: (kelvin) => PER_KELVIN * kelvin,
});

/** @param {{region: RegionProfile}} request @returns {Degrees} */
export function degreesOf({ region }) {
  return region.temperature === "F" ? FAHRENHEIT : CELSIUS;
}

/** @param {string} unit
 * @param {Pick<Degrees, "toStored" | "fromCelsius"> & {fromKelvin: (kelvin: number) => number}} scale
 * @returns {Degrees} */
function degrees(unit, { toStored, fromCelsius, fromKelvin }) {
  return {
    unit,
    toStored,
    fromCelsius,
    toTyped: (conversion, value) => {
      return conversion === "temperature"
        ? fromCelsius(value)
        : conversion === "difference"
          ? fromKelvin(value)
          : value;
    },
    temperatureText: (celsius) => `${fixed(fromCelsius(celsius), 0)} ${unit}`,
    differenceText: (kelvin) => `${fixed(fromKelvin(kelvin), 0)} ${unit}`,
  };
}

/** To a tenth. Six decimals can be typed, and whole millionths are divided without a slip. @param {number} fahrenheit */
function inKelvin(fahrenheit) {
  const millionths = Math.round(fahrenheit * MILLIONTHS);
  return (roundHalfEven((millionths * 10) / (PER_KELVIN * MILLIONTHS)) / 10).toFixed(1);
}
