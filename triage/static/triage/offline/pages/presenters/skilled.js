/* Work that is not the householder's, and whose it is: as `triage/check_pages/presenters/skilled.py`. */

import { capital, fillWords } from "../wording.js";

export const HOUSEHOLDER = "householder";

const MOST_JOBS = 3;
const WORTH_NAMING = 0.08;

/** Who it is in this region's words, with an article. */
export function aPerson(checkRequest, who) {
  return fillWords(checkRequest.site.pages.persons[who], checkRequest.region.words);
}

/** The jobs the likely causes lead to, the likeliest first, each named once. */
export function skilledJobs(checkRequest, { verdict }) {
  const jobs = new Map();
  const needed = ["qualified", "make-safe"].includes(verdict.band);
  for (const cause of verdict.causes) {
    const { performedBy: who } = checkRequest.pack.faults.get(cause.fault);
    const text = checkRequest.texts.faults.get(cause.fault);
    const isNamed = who !== HOUSEHOLDER && (cause.chance >= WORTH_NAMING || (needed && !jobs.size));
    if (!isNamed || jobs.has(text.job)) continue;
    jobs.set(text.job, { what: text.job, why: text.why_them, who: `${capital(aPerson(checkRequest, who))}.` });
  }
  return [...jobs.values()].slice(0, MOST_JOBS);
}

/** The line every page of advice has, and what the law here says about the likeliest cause's kind of work. */
export function localRules(checkRequest, { verdict }) {
  const { region } = checkRequest;
  const { performedBy: who } = checkRequest.pack.faults.get(verdict.causes[0].fault);
  const rules = who === "technician" ? region.appliance_inside : who === "electrician" ? region.hardwired : "";
  return `${region.local_line} ${rules}`.trim();
}

/** What makes one visit enough; nothing is opened or moved for it. */
export function readyForThem(checkRequest) {
  return [
    checkRequest.say(
      "The model and serial number. They are on a label; look only where you can see it as the oven stands.",
    ),
    checkRequest.say("When it happens, how often, and since when."),
    checkRequest.say("What the screen showed, word for word."),
    checkRequest.say("A photo or two from the front, with the oven cold. Open and move nothing for a photo."),
  ];
}
