/* One page asked for, read once: the region, the texts, the answers and the step they lead to. As
   `triage/check_pages/request.py`. */

import { runCheck } from "../engine/check.js";
import { openPack } from "../engine/pack.js";
import { Links, parseQuery } from "./query.js";
import { guessRegion } from "./region.js";
import { openTexts } from "./wording.js";

/** @typedef {import("../engine/pack.js").Pack} Pack
 * @typedef {import("./query.js").ParsedQuery} ParsedQuery
 * @typedef {import("./wording.js").Texts} Texts
 * @typedef {{id: string, name: string, territory: string, region: import("../engine/pack.js").Region,
 *   terms: Map<string, string>, [name: string]: any}} RegionProfile `region` are its rules for the engine
 * @typedef {{paths: Object<string, string>, templates: Object<string, any>, blocks: Object<string, any>,
 *   language: string, bidi: boolean, default_region: string, [name: string]: any}} Pages as the site sent them
 * @typedef {{pack: Pack, regions: Map<string, RegionProfile>, pages: Pages, answerLabels: Map<string, string>,
 *   worded: Map<string, Texts>}} Site
 * @typedef {{kind: string, region?: string}} Notice
 * @typedef {{site: Site, region: RegionProfile, check: import("../engine/check.js").Check,
 *   step: import("../engine/check.js").Step, answers: import("../engine/belief.js").Answers,
 *   problems: import("../engine/answers.js").AnswerProblem[], origin: string, pack: Pack, typed: Map<string, string>,
 *   texts: Texts, links: Links, notices: Notice[]}} CheckRequest `typed` is what stands in fields of a form beside the
 *   answers; a page that does not ask for the step does not wait for it */

const SLUG = /^[-a-zA-Z0-9_]{1,50}$/;

/** Everything the pages are made from. Throws where the two do not belong together: texts stand in the pack's order.
 * @param {any} packed @param {any} pages both as parsed JSON @returns {Site} */
export function openSite(packed, pages) {
  if (packed.version !== pages.pack) throw new Error("The pack and the pages are not of one version.");
  const opened = openPack(packed);
  const regions = new Map();
  for (const [id, profile] of Object.entries(/** @type {Object<string, any>} */ (pages.regions))) {
    const terms = new Map(Object.entries(profile.terms));
    regions.set(id, { ...profile, id, region: opened.regions.get(id), terms });
  }
  return {
    pack: opened.pack,
    regions,
    pages,
    answerLabels: new Map(Object.entries(pages.answer_labels)),
    worded: new Map(),
  };
}

/** The firm an address names, if any. @param {string} query */
export function firmIn(query) {
  const { firm } = parseQuery(query);
  return SLUG.test(firm) ? firm : "";
}

/** What an address asks for: the check its answers make, and what the pages around it need.
 * @param {Site} site @param {string} query @param {string} languages @param {string} origin @returns {CheckRequest} */
export function readCheckRequest(site, query, languages, origin) {
  const asked = parseQuery(query);
  const region = site.regions.get(regionOf(site, asked, languages));
  const check = runCheck(site.pack, region.region, asked.pairs);
  const { answers, problems } = check;
  const links = new Links(site.pages.paths, region.id, answers, firmIn(query));
  return {
    ...{ site, region, check, answers, problems, origin, links, pack: site.pack, typed: asked.typed },
    texts: textsFor(site, region.id),
    notices: noticesOf({ site, region, links }, asked),
    get step() {
      return check.step;
    },
  };
}

/** @param {Site} site @param {ParsedQuery} asked @param {string} languages */
function regionOf(site, asked, languages) {
  if (site.regions.has(asked.region)) return asked.region;
  const fallback = site.pages.default_region;
  return asked.region === null ? guessRegion(languages, site.regions, fallback) : fallback;
}

/** @param {Site} site @param {string} region */
function textsFor(site, region) {
  if (!site.worded.has(region)) {
    site.worded.set(region, openTexts(site.pages.texts, site.pack, site.regions.get(region).terms));
  }
  return site.worded.get(region);
}

/** @param {{site: Site, region: RegionProfile, links: Links}} request @param {ParsedQuery} asked @returns {Notice[]} */
function noticesOf({ site, region, links }, asked) {
  /** @type {Notice[]} */
  const notices = [];
  if (asked.region !== null && !site.regions.has(asked.region)) notices.push({ kind: "region", region: region.name });
  if (asked.firm && !links.firm) notices.push({ kind: "firm" });
  if (asked.truncated) notices.push({ kind: "truncated" });
  return notices;
}
