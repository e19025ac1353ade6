/* Cutting the supply, by how this oven is wired, as far as that was said: as `triage/check_pages/presenters/supply.py`. */

import { ISOLATE } from "../wording.js";

export const OFF_AT_THE_SUPPLY = "supply-off";

const SUPPLY = "supply";
const AT_THE_BOARD = "unknown";

/** The steps for this oven's supply. `away`: the supply may be cut only at the board. */
export function supplyText(checkRequest, away) {
  const known = checkRequest.texts.isolation.supplies;
  const answered = checkRequest.answers.get(SUPPLY);
  return known.get(away || !known.has(answered) ? AT_THE_BOARD : answered);
}

function cutSupply(checkRequest, words, away) {
  const text = supplyText(checkRequest, away);
  const cannot = checkRequest.say("If you can’t do that: %(cannot)s", { cannot: text.cannot });
  return { text: words, parts: text.steps, notes: [cannot, checkRequest.region.isolation_note] };
}

/** All there is to know of cutting the supply before a task of one's own. */
export function switchingOff(checkRequest) {
  const text = supplyText(checkRequest, false);
  const known = checkRequest.texts.isolation;
  return {
    before: known.always,
    cut: cutSupply(checkRequest, checkRequest.say("How to cut the power"), false),
    never: text.never,
    cannot_tell: text.looks_off,
    also: known.other_sources,
  };
}

/** Lines as instructions; the line that stands for cutting the supply becomes the steps of the one before it. */
export function instructionsOf(checkRequest, lines, away) {
  const found = [];
  for (const line of lines) {
    if (line !== ISOLATE) found.push(instruction(line));
    else found.push(cutSupply(checkRequest, found.pop()?.text ?? checkRequest.say("Cut the power:"), away));
  }
  return found;
}

/** One thing to do, without steps of its own. */
export function instruction(text) {
  return { text, parts: [], notes: [] };
}
