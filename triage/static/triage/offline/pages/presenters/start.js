/* The first page: as `triage/check_pages/presenters/start.py`. */

import { OPENING } from "../../engine/pack.js";
import { ELSEWHERE } from "../region.js";
import { typedWords } from "./typed_words.js";

export function startPage(checkRequest) {
  const words = checkRequest.texts.start;
  return {
    heading: words.heading,
    intro: words.intro,
    filter_label: words.filter_label,
    filter_hint: words.filter_hint,
    none_found: words.none_found,
    complaints: checkRequest.pack.complaints.map((complaint, at) => ({
      words: words.entries[at].words,
      also: typedWords(words.entries[at].also),
      href: checkRequest.links.step([[OPENING, complaint.option], ...complaint.answers]),
      part: complaint.picture,
    })),
    not_mine: [...words.exits].map(([reason, exit]) => ({ label: exit.words, href: checkRequest.links.leave(reason) })),
    readings: readingLinks(checkRequest),
    region: regionChoice(checkRequest),
  };
}

/* What has a page of its own: the readings and the energy label; none once something dangerous was said. */
function readingLinks(checkRequest) {
  if (checkRequest.check.flags.length) return [];
  const measured = [...checkRequest.texts.readings].map(([kind, { name }]) => ({
    label: name,
    href: checkRequest.links.reading(kind),
  }));
  return [...measured, { label: checkRequest.say("The energy label"), href: checkRequest.links.costs() }];
}

function regionChoice(checkRequest) {
  const others = [...checkRequest.site.regions].filter(([id]) => id !== checkRequest.region.id);
  others.sort(([one], [other]) => (one === ELSEWHERE) - (other === ELSEWHERE));
  return {
    code: checkRequest.region.id,
    name: checkRequest.region.name,
    choices: others.map(([id, region]) => ({ label: region.name, href: checkRequest.links.withRegion(id) })),
  };
}
