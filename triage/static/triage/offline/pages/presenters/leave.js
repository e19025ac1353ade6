/* The ways out for what this check is not about: as `triage/check_pages/presenters/leave.py`. */

import { answersSoFar } from "./answers.js";
import { callsFor } from "./numbers.js";

const GAS_SMELL = "gas-smell";

export function exitPage(checkRequest, reason) {
  const text = checkRequest.texts.start.exits.get(reason);
  const smells = reason === GAS_SMELL;
  return {
    heading: text.heading,
    lines: text.lines,
    who: text.who,
    call: callsFor(checkRequest, smells ? ["gas", "emergency"] : []),
    no_switches: smells,
    answers: smells ? [] : answersSoFar(checkRequest),
  };
}
