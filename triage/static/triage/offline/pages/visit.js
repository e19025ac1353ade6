/* One page asked for, read once: the place, the words, the answers and the step they lead to. As
   `triage/check_pages/request.py`. */

import { advise, beliefOf } from "../engine/check.js";
import { openPack } from "../engine/pack.js";
import { readTrail } from "../engine/trail.js";
import { Links, readAddress } from "./address.js";
import { formFor } from "./filling.js";
import { guessRegion } from "./place.js";
import { openTexts } from "./wording.js";

/** @typedef {{pack: import("../engine/pack.js").Pack, regions: Map<string, import("../engine/pack.js").Region>,
 *   pages: {paths: Object<string, string>, [name: string]: any}, places: Map<string, object>, worded: Map<string, object>}} Site */

const SLUG = /^[-a-zA-Z0-9_]{1,50}$/;

/** Everything the pages are made from. Throws where the two do not belong together: texts stand in the pack's order.
 * @param {object} packTold @param {object} pagesTold both as parsed JSON @returns {Site} */
export function openSite(packTold, pagesTold) {
  if (packTold.version !== pagesTold.pack) throw new Error("The pack and the pages are not of one version.");
  const { pack, regions } = openPack(packTold);
  const places = new Map();
  for (const [id, place] of Object.entries(pagesTold.places)) {
    places.set(id, { ...place, region: regions.get(id), words: new Map(Object.entries(place.words)) });
  }
  return { pack, regions, pages: pagesTold, places, worded: new Map() };
}

/** The firm an address names, if any. @param {string} query */
export function firmIn(query) {
  const { firm } = readAddress(query);
  return SLUG.test(firm) ? firm : "";
}

/** The visit for what an address asks.
 * @param {Site} site @param {string} query @param {string} languages @param {string} origin */
export function openVisit(site, query, languages, origin) {
  const asked = readAddress(query);
  let step = null;
  const visit = {
    site,
    pack: site.pack,
    origin,
    typed: asked.typed,
    /** What the answers come to; a page that does not ask for it does not wait for it. */
    get step() {
      step ??= advise(site.pack, this.place.region, this.reading.answers);
      return step;
    },
  };
  visit.say = (sentence, words = null) => filledIn(site.pages.sentences[sentence] ?? sentence, words);
  visit.sayCounted = (one, many, n) => {
    const [which, ...forms] = site.pages.counted[`${one}|${many}`];
    return filledIn(formFor(n, which, forms), { n });
  };
  const region = regionOf(site, asked, languages);
  visit.place = site.places.get(region);
  visit.texts = textsFor(site, region);
  visit.reading = readTrail(site.pack, asked.pairs);
  visit.links = new Links(site.pages.paths, region, visit.reading.answers, firmIn(query));
  visit.notices = noticesOf(visit, asked);
  return visit;
}

/** The belief behind a visit's step. */
export function beliefBehind(visit) {
  return beliefOf(visit.pack, visit.place.region, visit.step.reading);
}

function filledIn(sentence, words) {
  return words ? sentence.replace(/%\((\w+)\)s|%%/g, (whole, name) => (name ? words[name] : "%")) : sentence;
}

function regionOf(site, asked, languages) {
  if (site.places.has(asked.region)) return asked.region;
  const fallback = site.pages.default_region;
  return asked.region === null ? guessRegion(languages, site.places, fallback) : fallback;
}

function textsFor(site, region) {
  if (!site.worded.has(region)) {
    site.worded.set(region, openTexts(site.pages.texts, site.pack, site.places.get(region).words));
  }
  return site.worded.get(region);
}

function noticesOf(visit, asked) {
  const notices = [];
  if (asked.region !== null && !visit.site.places.has(asked.region)) {
    const words = { place: visit.place.name };
    notices.push(
      visit.say("We do not know the place in this address. The rules and numbers shown are for %(place)s.", words),
    );
  }
  if (asked.firm && !visit.links.firm)
    notices.push(visit.say("We do not know the repair firm in this address. The check works without it."));
  if (asked.cut) {
    notices.push(visit.say("The address was too long to read to its end. The first answers are used."));
  }
  return notices;
}
