/* Telephone numbers of a region, each with what it is for: as `triage/check_pages/presenters/numbers.py`. */

import { capital } from "../wording.js";

export function emergencyCall(region) {
  return numberOf(region.emergency, region.emergency_for);
}

/** The numbers of `wanted` (emergency, gas, network) that this region shows, in that order, each once. */
export function callsFor(checkRequest, wanted) {
  const { region } = checkRequest;
  const known = {
    emergency: emergencyCall(region),
    gas: numberOf(region.gas, checkRequest.say("gas emergency line. %(how)s", { how: region.gas_text })),
    network: numberOf(region.network, checkRequest.say("electricity network company")),
  };
  const numbers = [...new Set(wanted)].map((name) => known[name]).filter(({ number }) => number);
  return [...new Map(numbers.map((number) => [number.number, number])).values()];
}

/** What to do instead for each of `wanted` that this region shows no number for. */
export function withoutNumber(checkRequest, wanted) {
  const { region } = checkRequest;
  const lines = [];
  for (const name of new Set(wanted)) {
    if (name === "gas" && !region.gas)
      lines.push(checkRequest.say("Gas emergency line: %(how)s", { how: region.gas_text }));
    if (name === "network" && !region.network) {
      const words = { network: region.words.get("network"), how: region.network_text };
      lines.push(checkRequest.say("The %(network)s: %(how)s", words));
    }
  }
  return lines;
}

function numberOf(number, forWhat) {
  return { number, for_what: capital(forWhat), href: `tel:${number.replace(/[^0-9+]/g, "")}` };
}
