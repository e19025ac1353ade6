/* Whether a visit may be asked for with these answers: as the server decides when a request is sent. Never where people
   have to leave, never where it is put right or works as it should, never where the electricity network has to come. */

import { isSolved, NETWORK } from "./presenters/result.js";
import { prioritiseFlags } from "./presenters/flags.js";

/** @param {import("./request.js").CheckRequest} checkRequest */
export function mayBook(checkRequest) {
  const { step } = checkRequest;
  if (step.kind === "emergency") return !prioritiseFlags(step.flags).evacuate;
  if (step.kind !== "result" || step.verdict.band === "normal" || isSolved(checkRequest, step)) return false;
  return checkRequest.pack.faults.get(step.verdict.causes[0].fault).performedBy !== NETWORK;
}
