/* The seal test: eight places round the door to tick, on a drawing of the door. As
   `triage/check_pages/presenters/readings/gasket.py`. */

import { readGasket, SEAL_PLACES, encodeGasket } from "../../../engine/readings/gasket.js";
import { doorDiagram } from "../../drawings/door_diagram.js";
import { placesText } from "../reading_text.js";
import { READ } from "./form_input.js";

/** @typedef {import("../../request.js").CheckRequest} CheckRequest
 * @typedef {import("./form_input.js").FormInput} FormInput */

const NO_BOTTOM = "no-bottom";
const BOTTOM_PLACE = "bottom";

/** @param {CheckRequest} checkRequest @param {FormInput} found */
export function doorPlaces(checkRequest, found) {
  const names = checkRequest.site.pages.seal_places;
  return SEAL_PLACES.map((place) => ({ name: READ + place, label: names[place], ticked: found.isTicked(place) }));
}

export const GASKET = {
  limits: new Map(),

  /** @param {CheckRequest} _ @param {FormInput} found */
  write(_, found) {
    const leftOut = (/** @type {string} */ place) => found.isTicked(NO_BOTTOM) && place.startsWith(BOTTOM_PLACE);
    return encodeGasket(SEAL_PLACES.map((place) => (leftOut(place) ? null : found.isTicked(place))));
  },

  /** @param {CheckRequest} checkRequest @param {string} text */
  drawing(checkRequest, text) {
    const { leaks } = readGasket(text);
    return doorDiagram(leaks, { kind: "gasket", leaking: placesText(checkRequest.site.pages, leaks) });
  },
};
