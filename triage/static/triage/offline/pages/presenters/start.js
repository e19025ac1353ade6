/* The first page: as `triage/check_pages/presenters/start.py`. */

import { OPENING } from "../../engine/pack.js";
import { raisedFlags } from "../../engine/safety.js";
import { ELSEWHERE } from "../place.js";
import { typedWords } from "./typed_words.js";

export function startPage(visit) {
  const words = visit.texts.start;
  return {
    heading: words.heading,
    intro: words.intro,
    filter_label: words.filter_label,
    filter_hint: words.filter_hint,
    none_found: words.none_found,
    complaints: visit.pack.complaints.map((complaint, at) => ({
      words: words.entries[at].words,
      also: typedWords(words.entries[at].also),
      href: visit.links.step([[OPENING, complaint.option], ...complaint.answers]),
      part: complaint.picture,
    })),
    not_mine: [...words.exits].map(([reason, exit]) => ({ label: exit.words, href: visit.links.leave(reason) })),
    readings: readingLinks(visit),
    region: regionChoice(visit),
  };
}

/* What has a page of its own: the readings and the energy label; none once something dangerous was said. */
function readingLinks(visit) {
  if (raisedFlags(visit.pack, visit.reading.answers).length) return [];
  const measured = [...visit.texts.readings].map(([kind, { name }]) => ({
    label: name,
    href: visit.links.reading(kind),
  }));
  return [...measured, { label: visit.say("The energy label"), href: visit.links.costs() }];
}

function regionChoice(visit) {
  const others = [...visit.site.places].filter(([id]) => id !== visit.place.region.id);
  others.sort(([one], [other]) => (one === ELSEWHERE) - (other === ELSEWHERE));
  return {
    code: visit.place.region.id,
    name: visit.place.name,
    choices: others.map(([id, place]) => ({ label: place.name, href: visit.links.at(id) })),
  };
}
