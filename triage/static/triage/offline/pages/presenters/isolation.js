/* Cutting the supply, by how this oven is wired, as far as that was said: as
   `triage/check_pages/presenters/isolation.py`. */

import { ISOLATE } from "../wording.js";

/** @typedef {import("../request.js").CheckRequest} CheckRequest */

export const OFF_AT_THE_SUPPLY = "supply-off";

const SUPPLY = "supply";
const AT_THE_BOARD = "unknown";

/** The steps for this oven's supply. `away`: the supply may be cut only at the board.
 * @param {CheckRequest} checkRequest @param {boolean} away */
export function supplyText(checkRequest, away) {
  const known = checkRequest.texts.isolation.supplies;
  const answered = checkRequest.answers.get(SUPPLY);
  return known.get(away || !known.has(answered) ? AT_THE_BOARD : answered);
}

/** @param {CheckRequest} checkRequest @param {string} text @param {boolean} away */
function isolationSteps(checkRequest, text, away) {
  const { steps, cannot } = supplyText(checkRequest, away);
  return { text, parts: steps, cannot, note: checkRequest.region.isolation_note };
}

/** All there is to know of cutting the supply before a task of one's own. @param {CheckRequest} checkRequest */
export function fullIsolation(checkRequest) {
  const { never, looks_off } = supplyText(checkRequest, false);
  const { always, other_sources } = checkRequest.texts.isolation;
  const steps = isolationSteps(checkRequest, "", false);
  return { before: always, steps, prohibitions: never, cannot_tell: looks_off, also: other_sources };
}

/** Lines as instructions; the line that stands for cutting the supply becomes the steps of the one before it.
 * @param {CheckRequest} checkRequest @param {string[]} lines @param {boolean} away */
export function instructionsOf(checkRequest, lines, away) {
  /** @type {{text: string, [name: string]: any}[]} */
  const found = [];
  for (const line of lines) {
    found.push(line === ISOLATE ? isolationSteps(checkRequest, found.pop()?.text ?? "", away) : { text: line });
  }
  return found;
}
