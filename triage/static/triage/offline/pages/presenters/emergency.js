/* A red flag ended the questions: as `triage/check_pages/presenters/emergency.py`. */

import { answersSoFar } from "./answers.js";
import { causesOf } from "./causes.js";
import { flagSteps, flagProhibitions, flagNote, prioritiseFlags, graverFlagsFirst } from "./flags.js";
import { numbersFor, numbersNotShown } from "./phone_numbers.js";
import { problemNotes } from "./problems.js";
import { questionPage } from "./question.js";
import { summaryOf } from "./summary.js";

/** @typedef {import("../request.js").CheckRequest} CheckRequest
 * @typedef {import("../../engine/check.js").Emergency} Emergency
 * @typedef {import("./flags.js").RaisedFlags} RaisedFlags */

/** @param {CheckRequest} checkRequest @param {Emergency} step */
export function emergencyPage(checkRequest, step) {
  const raised = prioritiseFlags(step.flags);
  const { evacuate, isolateRemotely: away } = raised;
  const [flag, ...others] = raised.primary;
  const text = checkRequest.texts.flags.get(flag.id);
  const wanted = step.flags.flatMap(({ phoneNumbers }) => phoneNumbers);
  return {
    signal: flag.signal,
    heading: text.heading,
    hazard: text.hazard,
    steps: [...graverFlagsFirst(checkRequest, raised), ...flagSteps(checkRequest, flag, away)],
    prohibitions: flagProhibitions(checkRequest, flag, away),
    mention: raised.mentioned.map(({ id }) => checkRequest.texts.flags.get(id).sign),
    phone_numbers: numbersFor(checkRequest, wanted),
    other_contacts: numbersNotShown(checkRequest, wanted),
    other_flags: others.map((other) => flagNote(checkRequest, other, away)),
    contact: text.who,
    next_step: text.then,
    causes: evacuate ? [] : causesOf(checkRequest, step.verdict),
    follow_up: step.followUpQuestion && !evacuate ? questionPage(checkRequest, step.followUpQuestion) : null,
    answers: answersSoFar(checkRequest, evacuate ? answersThatSaySo(checkRequest, raised) : null),
    problems: evacuate ? [] : problemNotes(checkRequest),
    summary: evacuate ? null : summaryOf(checkRequest),
    evacuate,
    local_rules: evacuate ? "" : checkRequest.region.local_line,
  };
}

/** When people have to leave, only the answers that say so, to put a slip of the finger right.
 * @param {CheckRequest} checkRequest @param {RaisedFlags} raised */
function answersThatSaySo(checkRequest, raised) {
  const ids = raised.primary.map(({ id }) => id);
  /** @param {[string, string]} answered */
  const raises = ([o, answer]) => ids.includes(checkRequest.pack.observations.get(o)?.flags.get(answer));
  return [...checkRequest.answers].filter(raises).map(([observation]) => observation);
}
