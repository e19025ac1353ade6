/* Cutting the supply, by how this oven is wired, as far as that was said: as `triage/check_pages/presenters/supply.py`. */

import { ISOLATE } from "../wording.js";

export const OFF_AT_THE_SUPPLY = "supply-off";

const SUPPLY = "supply";
const AT_THE_BOARD = "unknown";

/** The steps for this oven's supply. `away`: the supply may be cut only at the board. */
export function supplyText(visit, away) {
  const known = visit.texts.isolation.supplies;
  const answered = visit.reading.answers.get(SUPPLY);
  return known.get(away || !known.has(answered) ? AT_THE_BOARD : answered);
}

function cutSupply(visit, words, away) {
  const text = supplyText(visit, away);
  const cannot = visit.say("If you can’t do that: %(cannot)s", { cannot: text.cannot });
  return { text: words, parts: text.steps, notes: [cannot, visit.place.isolation_note] };
}

/** All there is to know of cutting the supply before a task of one's own. */
export function switchingOff(visit) {
  const text = supplyText(visit, false);
  const known = visit.texts.isolation;
  return {
    before: known.always,
    cut: cutSupply(visit, visit.say("How to cut the power"), false),
    never: text.never,
    cannot_tell: text.looks_off,
    also: known.other_sources,
  };
}

/** Lines as instructions; the line that stands for cutting the supply becomes the steps of the one before it. */
export function instructionsOf(visit, lines, away) {
  const found = [];
  for (const line of lines) {
    if (line !== ISOLATE) found.push(instruction(line));
    else found.push(cutSupply(visit, found.pop()?.text ?? visit.say("Cut the power:"), away));
  }
  return found;
}

/** One thing to do, without steps of its own. */
export function instruction(text) {
  return { text, parts: [], notes: [] };
}
