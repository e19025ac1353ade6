/* A red flag ended the questions: as `triage/check_pages/presenters/make_safe.py`. */

import { answersSoFar } from "./answers.js";
import { causesOf } from "./causes.js";
import { firstOf, neverOf, noteOf, sortOut, urgentFirst } from "./flags.js";
import { callsFor, withoutNumber } from "./numbers.js";
import { problemSentences } from "./problems.js";
import { questionPage } from "./question.js";
import { shortSummary } from "./summary.js";

export function makeSafePage(checkRequest, step) {
  const raised = sortOut(step.flags);
  const { bare, away } = raised;
  const [flag, ...others] = raised.acting;
  const text = checkRequest.texts.flags.get(flag.id);
  const wanted = step.flags.flatMap(({ phoneNumbers }) => phoneNumbers);
  return {
    signal: flag.signal,
    heading: text.heading,
    hazard: text.hazard,
    first: [...urgentFirst(checkRequest, raised), ...firstOf(checkRequest, flag, away)],
    never: neverOf(checkRequest, flag, away),
    tell_them: raised.told.map(({ id }) => checkRequest.texts.flags.get(id).sign),
    call: callsFor(checkRequest, wanted),
    other_calls: withoutNumber(checkRequest, wanted),
    also: others.map((other) => noteOf(checkRequest, other, away)),
    who: text.who,
    then: text.then,
    causes: bare ? [] : causesOf(checkRequest, step.verdict),
    memory: step.followUpQuestion && !bare ? questionPage(checkRequest, step.followUpQuestion) : null,
    answers: answersSoFar(checkRequest, bare ? answersThatSaySo(checkRequest, raised) : null),
    problems: bare ? [] : problemSentences(checkRequest),
    summary: bare ? "" : shortSummary(checkRequest),
    bare,
    local_line: bare ? "" : checkRequest.region.local_line,
  };
}

/* When people have to leave, only the answers that say so, to put a slip of the finger right. */
function answersThatSaySo(checkRequest, raised) {
  const ids = raised.acting.map(({ id }) => id);
  const raises = ([o, answer]) => ids.includes(checkRequest.pack.observations.get(o)?.flags.get(answer));
  return [...checkRequest.answers].filter(raises).map(([observation]) => observation);
}
