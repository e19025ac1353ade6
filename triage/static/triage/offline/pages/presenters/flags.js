/* Red flags in order of gravity, and which switches may still be touched: as
   `triage/check_pages/presenters/flags.py`. */

import { ISOLATE } from "../wording.js";
import { instruction, instructionsOf, supplyText } from "./supply.js";

/** @typedef {import("../../engine/pack.js").RedFlag} RedFlag
 * @typedef {{acting: RedFlag[], told: RedFlag[], away: boolean, bare: boolean}} Raised `acting` give actions, the first
 *   of them the page; `told` are only spoken of; `away` where the supply may be cut only away from the trouble; `bare`
 *   where people have to get out */

const NEVER = "never";
const AWAY = "away";
const EMERGENCY = "emergency";

/** @param {RedFlag[]} flags @returns {Raised} */
export function sortOut(flags) {
  const untouchable = flags.filter((flag) => flag.switches === NEVER);
  const isGraver = (flag) => flag.level === EMERGENCY || flag.rank < untouchable[0].rank;
  const others = untouchable.length ? flags.filter((flag) => flag.switches !== NEVER) : [];
  const acting = untouchable.length ? untouchable : flags;
  return {
    acting,
    told: others.filter(isGraver),
    away: acting.some((flag) => flag.switches === AWAY),
    bare: acting.some((flag) => flag.switches === NEVER && flag.level === EMERGENCY),
  };
}

/** The first action of each flag that is graver than those that act. */
export function urgentFirst(checkRequest, raised) {
  const graver = raised.told.filter((flag) => flag.rank < raised.acting[0].rank);
  return graver.map((flag) => instruction(checkRequest.texts.flags.get(flag.id).first[0]));
}

export function noteOf(checkRequest, flag, away) {
  const text = checkRequest.texts.flags.get(flag.id);
  return {
    signal: flag.signal,
    heading: text.heading,
    hazard: text.hazard,
    first: firstOf(checkRequest, flag, away),
    never: neverOf(checkRequest, flag, away),
  };
}

export function firstOf(checkRequest, flag, away) {
  return instructionsOf(checkRequest, checkRequest.texts.flags.get(flag.id).first, away);
}

/** What not to do; where the supply is cut, also what not to do while cutting it. */
export function neverOf(checkRequest, flag, away) {
  const text = checkRequest.texts.flags.get(flag.id);
  return [...text.never, ...(text.first.includes(ISOLATE) ? supplyText(checkRequest, away).never : [])];
}
