/* Telephone numbers of a region, each with what it is for: as `triage/check_pages/presenters/numbers.py`. */

import { capital } from "../wording.js";

export function emergencyCall(place) {
  return numberOf(place.emergency, place.emergency_for);
}

/** The numbers of `wanted` (emergency, gas, network) that this region shows, in that order, each once. */
export function callsFor(visit, wanted) {
  const { place } = visit;
  const known = {
    emergency: emergencyCall(place),
    gas: numberOf(place.gas, visit.say("gas emergency line. %(how)s", { how: place.gas_text })),
    network: numberOf(place.network, visit.say("electricity network company")),
  };
  const numbers = [...new Set(wanted)].map((name) => known[name]).filter(({ number }) => number);
  return [...new Map(numbers.map((number) => [number.number, number])).values()];
}

/** What to do instead for each of `wanted` that this region shows no number for. */
export function withoutNumber(visit, wanted) {
  const { place } = visit;
  const lines = [];
  for (const name of new Set(wanted)) {
    if (name === "gas" && !place.gas) lines.push(visit.say("Gas emergency line: %(how)s", { how: place.gas_text }));
    if (name === "network" && !place.network) {
      const words = { network: place.words.get("network"), how: place.network_text };
      lines.push(visit.say("The %(network)s: %(how)s", words));
    }
  }
  return lines;
}

function numberOf(number, forWhat) {
  return { number, for_what: capital(forWhat), href: `tel:${number.replace(/[^0-9+]/g, "")}` };
}
