/* Red flags in order of gravity, and which switches may still be touched: as
   `triage/check_pages/presenters/flags.py`. */

import { ISOLATE } from "../wording.js";
import { instructionsOf, supplyText } from "./isolation.js";

/** @typedef {import("../request.js").CheckRequest} CheckRequest
 * @typedef {import("../../engine/pack.js").RedFlag} RedFlag
 * @typedef {{primary: RedFlag[], mentioned: RedFlag[], isolateRemotely: boolean, evacuate: boolean}} RaisedFlags
 *   `primary` ones give actions, the first of them the page; `mentioned` ones are only spoken of; `isolateRemotely`
 *   where the supply may be cut only away from the trouble; `evacuate` where people have to get out */

const NEVER = "never";
const AWAY = "away";
const EMERGENCY = "emergency";

/** @param {RedFlag[]} flags @returns {RaisedFlags} */
export function prioritiseFlags(flags) {
  const untouchable = flags.filter((flag) => flag.switches === NEVER);
  /** @param {RedFlag} flag */
  const isGraver = (flag) => flag.level === EMERGENCY || flag.rank < untouchable[0].rank;
  const others = untouchable.length ? flags.filter((flag) => flag.switches !== NEVER) : [];
  const primary = untouchable.length ? untouchable : flags;
  return {
    primary,
    mentioned: others.filter(isGraver),
    isolateRemotely: primary.some((flag) => flag.switches === AWAY),
    evacuate: primary.some((flag) => flag.switches === NEVER && flag.level === EMERGENCY),
  };
}

/** The first action of each flag that is graver than those that act.
 * @param {CheckRequest} checkRequest @param {RaisedFlags} raised */
export function graverFlagsFirst(checkRequest, raised) {
  const graver = raised.mentioned.filter((flag) => flag.rank < raised.primary[0].rank);
  return graver.map((flag) => ({ text: checkRequest.texts.flags.get(flag.id).first[0] }));
}

/** @param {CheckRequest} checkRequest @param {RedFlag} flag @param {boolean} isolateRemotely */
export function flagNote(checkRequest, flag, isolateRemotely) {
  const text = checkRequest.texts.flags.get(flag.id);
  return {
    signal: flag.signal,
    heading: text.heading,
    hazard: text.hazard,
    steps: flagSteps(checkRequest, flag, isolateRemotely),
    prohibitions: flagProhibitions(checkRequest, flag, isolateRemotely),
  };
}

/** @param {CheckRequest} checkRequest @param {RedFlag} flag @param {boolean} isolateRemotely */
export function flagSteps(checkRequest, flag, isolateRemotely) {
  return instructionsOf(checkRequest, checkRequest.texts.flags.get(flag.id).first, isolateRemotely);
}

/** What not to do; where the supply is cut, also what not to do while cutting it.
 * @param {CheckRequest} checkRequest @param {RedFlag} flag @param {boolean} isolateRemotely */
export function flagProhibitions(checkRequest, flag, isolateRemotely) {
  const text = checkRequest.texts.flags.get(flag.id);
  return [...text.never, ...(text.first.includes(ISOLATE) ? supplyText(checkRequest, isolateRemotely).never : [])];
}
