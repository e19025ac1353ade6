/* The first page: as `triage/check_pages/presenters/start.py`. */

import { OPENING } from "../../engine/pack.js";
import { ELSEWHERE } from "../region.js";

export function startPage(checkRequest) {
  const words = checkRequest.texts.start;
  return {
    heading: words.heading,
    intro: words.intro,
    filter_label: words.filter_label,
    filter_hint: words.filter_hint,
    none_found: words.none_found,
    complaints: checkRequest.pack.complaints.map((complaint, at) => ({
      words: words.entries[at].label,
      also: words.entries[at].search_terms,
      href: checkRequest.links.step([[OPENING, complaint.option], ...complaint.answers]),
      part: complaint.picture,
    })),
    not_mine: [...words.exits].map(([reason, exit]) => ({ label: exit.label, href: checkRequest.links.leave(reason) })),
    readings: readingLinks(checkRequest),
    label_href: checkRequest.links.costs(),
    region: regionChoice(checkRequest),
  };
}

/* The readings with a page of their own; none once something dangerous was said, nor the energy label then. */
function readingLinks(checkRequest) {
  if (checkRequest.check.flags.length) return [];
  return [...checkRequest.texts.readings].map(([kind, { name }]) => ({
    label: name,
    href: checkRequest.links.reading(kind),
  }));
}

function regionChoice(checkRequest) {
  const others = [...checkRequest.site.regions].filter(([id]) => id !== checkRequest.region.id);
  others.sort(([one], [other]) => (one === ELSEWHERE) - (other === ELSEWHERE));
  const choices = others.map(([id, place]) => ({ label: place.name, href: checkRequest.links.withRegion(id) }));
  return { name: checkRequest.region.name, choices };
}
