/* The ways out for what this check is not about: as `triage/check_pages/presenters/out_of_scope.py`. */

import { answersSoFar } from "./answers.js";
import { numbersFor } from "./phone_numbers.js";

/** @typedef {import("../request.js").CheckRequest} CheckRequest */

const GAS_SMELL = "gas-smell";

/** @param {CheckRequest} checkRequest @param {string} reason */
export function outOfScopePage(checkRequest, reason) {
  const { heading, lines, who } = checkRequest.texts.start.exits.get(reason);
  const smells = reason === GAS_SMELL;
  return {
    heading,
    lines,
    contact: who,
    phone_numbers: numbersFor(checkRequest, smells ? ["gas", "emergency"] : []),
    no_switches: smells,
    answers: smells ? [] : answersSoFar(checkRequest),
  };
}
