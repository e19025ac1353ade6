/* Telephone numbers of a region: as `triage/check_pages/presenters/phone_numbers.py`. */

/** @typedef {import("../request.js").RegionProfile} RegionProfile */

/** @param {RegionProfile} region */
export function emergencyCall(region) {
  return numberOf("emergency", region.emergency, region.emergency_for);
}

/** The numbers of `wanted` (emergency, gas, network) that this region shows, in that order, each once.
 * @param {{region: RegionProfile}} request @param {string[]} wanted */
export function numbersFor({ region }, wanted) {
  /** @type {Object<string, ReturnType<typeof numberOf>>} */
  const known = {
    emergency: emergencyCall(region),
    gas: numberOf("gas", region.gas, region.gas_text),
    network: numberOf("network", region.network),
  };
  const numbers = [...new Set(wanted)].map((name) => known[name]).filter(({ number }) => number);
  return [...new Map(numbers.map((number) => [number.number, number])).values()];
}

/** What to do instead for each of `wanted` that this region shows no number for.
 * @param {{region: RegionProfile}} request @param {string[]} wanted */
export function numbersNotShown({ region }, wanted) {
  /** @type {Object<string, {kind: string, name?: string, how: string}>} */
  const contacts = {
    gas: { kind: "gas", how: region.gas_text },
    network: { kind: "network", name: region.terms.get("network"), how: region.network_text },
  };
  return [...new Set(wanted)].filter((name) => contacts[name] && !region[name]).map((name) => contacts[name]);
}

/** @param {string} kind @param {string} number @param {string} [how] */
function numberOf(kind, number, how = "") {
  return { kind, number, href: `tel:${number.replace(/[^0-9+]/g, "")}`, how };
}
