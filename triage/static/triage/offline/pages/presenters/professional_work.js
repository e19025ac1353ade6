/* Work that is not the householder's, and whose it is: as `triage/check_pages/presenters/professional_work.py`. */

import { fillTerms } from "../wording.js";

/** @typedef {import("../request.js").CheckRequest} CheckRequest
 * @typedef {import("../../engine/advice.js").Verdict} Verdict */

export const HOUSEHOLDER = "householder";

/** What to have ready for whoever comes. */
export const PREPARATION = ["label", "pattern", "screen", "photos"];

const MAX_JOBS = 3;
const MIN_CHANCE_NAMED = 0.08;

/** Who it is in this region's words, with an article. @param {CheckRequest} checkRequest @param {string} who */
export function personLabel(checkRequest, who) {
  return fillTerms(checkRequest.site.pages.persons[who], checkRequest.region.terms);
}

/** The jobs the likely causes lead to, the likeliest first, each named once.
 * @param {CheckRequest} checkRequest @param {{verdict: Verdict}} step */
export function professionalJobs(checkRequest, { verdict }) {
  const jobs = new Map();
  const needed = ["qualified", "make-safe"].includes(verdict.band);
  for (const cause of verdict.causes) {
    const { performedBy: who } = checkRequest.pack.faults.get(cause.fault);
    const text = checkRequest.texts.faults.get(cause.fault);
    const isNamed = who !== HOUSEHOLDER && (cause.chance >= MIN_CHANCE_NAMED || (needed && !jobs.size));
    if (!isNamed || jobs.has(text.job)) continue;
    jobs.set(text.job, { what: text.job, why: text.why_them, who: personLabel(checkRequest, who) });
  }
  return [...jobs.values()].slice(0, MAX_JOBS);
}

/** The line every page of advice has, and what the law here says about the likeliest cause's kind of work.
 * @param {CheckRequest} checkRequest @param {{verdict: Verdict}} step */
export function localRules(checkRequest, { verdict }) {
  const { region } = checkRequest;
  const { performedBy: who } = checkRequest.pack.faults.get(verdict.causes[0].fault);
  const rules = who === "technician" ? region.appliance_inside : who === "electrician" ? region.hardwired : "";
  return `${region.local_line} ${rules}`.trim();
}
