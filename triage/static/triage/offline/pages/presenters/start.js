/* The first page: as `triage/check_pages/presenters/start.py`. */

import { OPENING } from "../../engine/pack.js";
import { ELSEWHERE } from "../region.js";

/** @typedef {import("../request.js").CheckRequest} CheckRequest */

/** @param {CheckRequest} checkRequest */
export function startPage(checkRequest) {
  const text = checkRequest.texts.start;
  return {
    heading: text.heading,
    intro: text.intro,
    filter_label: text.filter_label,
    filter_hint: text.filter_hint,
    none_found: text.none_found,
    complaints: checkRequest.pack.complaints.map((complaint, at) => ({
      words: text.entries[at].label,
      also: text.entries[at].search_terms,
      href: checkRequest.links.step([[OPENING, complaint.option], ...complaint.answers]),
      part: complaint.picture,
    })),
    not_mine: [...text.exits].map(([reason, exit]) => ({ label: exit.label, href: checkRequest.links.leave(reason) })),
    readings: readingLinks(checkRequest),
    label_href: checkRequest.links.costs(),
    region: regionChoice(checkRequest),
  };
}

/** The readings with a page of their own; none once something dangerous was said, nor the energy label then.
 * @param {CheckRequest} checkRequest */
function readingLinks(checkRequest) {
  if (checkRequest.check.flags.length) return [];
  return [...checkRequest.texts.readings].map(([kind, { name }]) => ({
    label: name,
    href: checkRequest.links.reading(kind),
  }));
}

/** @param {CheckRequest} checkRequest */
function regionChoice(checkRequest) {
  const others = [...checkRequest.site.regions].filter(([id]) => id !== checkRequest.region.id);
  others.sort(([one], [other]) => Number(one === ELSEWHERE) - Number(other === ELSEWHERE));
  const choices = others.map(([id, place]) => ({ label: place.name, href: checkRequest.links.withRegion(id) }));
  return { name: checkRequest.region.name, choices };
}
