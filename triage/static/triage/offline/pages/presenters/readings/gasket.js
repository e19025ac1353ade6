/* The seal test: eight places round the door to tick, on a drawing of the door. As
   `triage/check_pages/presenters/readings/gasket.py`. */

import { SEAL_PLACES, readGasket, writtenGasket } from "../../../engine/readings/gasket.js";
import { doorMap } from "../../drawings/door_map.js";
import { placesText } from "../reading_text.js";
import { READ } from "./typed.js";

const NO_BOTTOM = "no-bottom";
const BOTTOM_PLACE = "bottom";

export const GASKET = {
  read() {}, // ticks need no reading

  groups(visit, typed) {
    const label = visit.say("The door has no seal along the bottom");
    return [{ fields: [typed.tick(NO_BOTTOM, label, visit.say("Many have none there"))] }];
  },

  write(visit, typed) {
    const leftOut = (place) => typed.ticked(NO_BOTTOM) && place.startsWith(BOTTOM_PLACE);
    return writtenGasket(SEAL_PLACES.map((place) => (leftOut(place) ? null : typed.ticked(place))));
  },

  told(visit, text) {
    const { leaks } = readGasket(text);
    const legend = [visit.say("tight"), visit.say("lets through"), visit.say("no seal there")];
    return {
      drawing: doorMap(leaks, legend, pictureWords(visit, leaks)),
      lines: [visit.say("Try a place that lets through once more.")],
    };
  },
};

export function doorPlaces(visit, typed) {
  const { seal_places } = visit.site.pages;
  return SEAL_PLACES.map((place) => ({ name: READ + place, label: seal_places[place], ticked: typed.ticked(place) }));
}

function pictureWords(visit, leaks) {
  const places = placesText(visit.site.pages, leaks);
  if (!places) return visit.say("The seal is tight at every place that was tried.");
  return visit.say("The seal lets through at: %(places)s.", { places });
}
