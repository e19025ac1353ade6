/* The voltage of the supply beside that on the rating plate: typed by whoever can read them, never measured. As
   `triage/check_pages/presenters/readings/plate.py`. */

/** @typedef {import("../../request.js").CheckRequest} CheckRequest
 * @typedef {import("./form_input.js").FormInput} FormInput */

const ONE_APPLIANCE = 250;
const USUAL_VOLTS = 230;

/** The figures, with the place's voltage where a display's stands alone.
 * @param {CheckRequest} checkRequest @param {FormInput} found */
export function withUsualVolts(checkRequest, { figures }) {
  const alone = figures.has("supply-volts") && !figures.has("rated-volts");
  return alone ? new Map([...figures, ["rated-volts", String(usualVolts(checkRequest))]]) : figures;
}

/** The highest voltage an oven is rated for there: 240 of "120/240 V", but 230 of "230/400 V".
 * @param {CheckRequest} checkRequest */
export function usualVolts(checkRequest) {
  const volts =
    /([0-9/-]+) ?V/.exec(checkRequest.region.nominal_voltage)?.[1].split(/[/-]/).filter(Boolean).map(Number) ?? [];
  const fitting = volts.filter((one) => one <= ONE_APPLIANCE);
  return fitting.length ? Math.max(...fitting) : USUAL_VOLTS;
}
