/* One page asked for, read once: the place, the words, the answers and the step they lead to. As
   `triage/check_pages/request.py`. A check done for a firm is the server's to answer. */

import { runCheck } from "../engine/check.js";
import { openPack } from "../engine/pack.js";
import { Links, parseQuery } from "./query.js";
import { guessRegion } from "./region.js";
import { openTexts } from "./wording.js";

/** @typedef {{pack: import("../engine/pack.js").Pack, regions: Map<string, object>, pages: {paths: Object<string, string>, [name: string]: any},
 *   answerLabels: Map<string, string>, worded: Map<string, object>}} Site `regions` by id, each with its rules for the engine in `region` */

const SLUG = /^[-a-zA-Z0-9_]{1,50}$/;

/** Everything the pages are made from. Throws where the two do not belong together: texts stand in the pack's order.
 * @param {object} packTold @param {object} pagesTold both as parsed JSON @returns {Site} */
export function openSite(packTold, pagesTold) {
  if (packTold.version !== pagesTold.pack) throw new Error("The pack and the pages are not of one version.");
  const opened = openPack(packTold);
  const regions = new Map();
  for (const [id, profile] of Object.entries(pagesTold.regions)) {
    const terms = new Map(Object.entries(profile.terms));
    regions.set(id, { ...profile, id, region: opened.regions.get(id), terms });
  }
  return {
    pack: opened.pack,
    regions,
    pages: pagesTold,
    answerLabels: new Map(Object.entries(pagesTold.answer_labels)),
    worded: new Map(),
  };
}

/** The firm an address names, if any. @param {string} query */
export function firmIn(query) {
  const { firm } = parseQuery(query);
  return SLUG.test(firm) ? firm : "";
}

/** What an address asks for: the check its answers make, and what the pages around it need.
 * @param {Site} site @param {string} query @param {string} languages @param {string} origin */
export function readCheckRequest(site, query, languages, origin) {
  const asked = parseQuery(query);
  const region = site.regions.get(regionOf(site, asked, languages));
  const check = runCheck(site.pack, region.region, asked.pairs);
  const { answers, problems } = check;
  const checkRequest = {
    ...{ site, region, check, answers, problems, origin, pack: site.pack, typed: asked.typed },
    /** A page that does not ask for it does not wait for it. */
    get step() {
      return check.step;
    },
  };
  checkRequest.texts = textsFor(site, region.id);
  checkRequest.links = new Links(site.pages.paths, region.id, answers, firmIn(query));
  checkRequest.notices = noticesOf(checkRequest, asked);
  return checkRequest;
}

function regionOf(site, asked, languages) {
  if (site.regions.has(asked.region)) return asked.region;
  const fallback = site.pages.default_region;
  return asked.region === null ? guessRegion(languages, site.regions, fallback) : fallback;
}

function textsFor(site, region) {
  if (!site.worded.has(region)) {
    site.worded.set(region, openTexts(site.pages.texts, site.pack, site.regions.get(region).terms));
  }
  return site.worded.get(region);
}

function noticesOf({ site, region, links }, asked) {
  const notices = [];
  if (asked.region !== null && !site.regions.has(asked.region)) notices.push({ kind: "region", region: region.name });
  if (asked.firm && !links.firm) notices.push({ kind: "firm" });
  if (asked.truncated) notices.push({ kind: "truncated" });
  return notices;
}
