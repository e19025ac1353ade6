/* What the rating plate and a display say of the power and the voltage: typed by whoever can read them, never measured.
   As `triage/check_pages/presenters/readings/plate.py`. */

import { blankFor } from "./typed.js";

const ONE_APPLIANCE = 250;
const USUAL_VOLTS = 230;

export function plateBlanks(visit) {
  return [
    blankFor(
      "plate",
      visit.say("Power of this setting"),
      visit.say("From the manual or the plate, if it is given"),
      "W",
      "numeric",
    ),
    blankFor(
      "whole-plate",
      visit.say("Power of the whole oven"),
      visit.say("It stands on the rating plate"),
      "W",
      "numeric",
    ),
    blankFor(
      "rated-volts",
      visit.say("Voltage on the plate"),
      visit.say("It stands beside the watts, for example %(volts)s", { volts: usualVolts(visit) }),
      "V",
      "numeric",
    ),
    blankFor(
      "supply-volts",
      visit.say("Voltage of the supply"),
      visit.say("Only if a display in your home shows it. Never measure it"),
      "V",
      "numeric",
    ),
  ];
}

export function plateGroup(visit, typed) {
  const fields = plateBlanks(visit).map((blank) => typed.fieldOf(blank));
  const open = fields.some(({ value, problem }) => value || problem);
  return { fields, summary: visit.say("What the rating plate says"), open };
}

/** The figures, with the place's voltage where a display's stands alone. */
export function withUsualVolts(visit, { figures }) {
  const alone = figures.has("supply-volts") && !figures.has("rated-volts");
  return alone ? new Map([...figures, ["rated-volts", String(usualVolts(visit))]]) : figures;
}

/* The highest voltage an oven is rated for there: 240 of "120/240 V", but 230 of "230/400 V". */
function usualVolts(visit) {
  const volts = /([0-9/-]+) ?V/.exec(visit.place.nominal)?.[1].split(/[/-]/).filter(Boolean).map(Number) ?? [];
  const fitting = volts.filter((one) => one <= ONE_APPLIANCE);
  return fitting.length ? Math.max(...fitting) : USUAL_VOLTS;
}
