/* A red flag ended the questions: as `triage/check_pages/presenters/make_safe.py`. */

import { answersSoFar } from "./answers.js";
import { causesOf } from "./causes.js";
import { firstOf, neverOf, noteOf, sortOut, urgentFirst } from "./flags.js";
import { callsFor, withoutNumber } from "./numbers.js";
import { problemSentences } from "./problems.js";
import { questionPage } from "./question.js";
import { shortSummary } from "./summary.js";

export function makeSafePage(visit, step) {
  const raised = sortOut(step.flags);
  const { bare, away } = raised;
  const [flag, ...others] = raised.acting;
  const text = visit.texts.flags.get(flag.id);
  const wanted = step.flags.flatMap(({ phoneNumbers }) => phoneNumbers);
  return {
    signal: flag.signal,
    heading: text.heading,
    hazard: text.hazard,
    first: [...urgentFirst(visit, raised), ...firstOf(visit, flag, away)],
    never: neverOf(visit, flag, away),
    tell_them: raised.told.map(({ id }) => visit.texts.flags.get(id).sign),
    call: callsFor(visit, wanted),
    other_calls: withoutNumber(visit, wanted),
    also: others.map((other) => noteOf(visit, other, away)),
    who: text.who,
    then: text.then,
    causes: bare ? [] : causesOf(visit, step.verdict),
    memory: step.memory && !bare ? questionPage(visit, step.memory) : null,
    answers: answersSoFar(visit, bare ? answersThatSaySo(visit, raised) : null),
    problems: bare ? [] : problemSentences(visit),
    summary: bare ? "" : shortSummary(visit),
    bare,
    local_line: bare ? "" : visit.place.local_line,
  };
}

/* When people have to leave, only the answers that say so, to put a slip of the finger right. */
function answersThatSaySo(visit, raised) {
  const ids = raised.acting.map(({ id }) => id);
  const raises = ([o, answer]) => ids.includes(visit.pack.observations.get(o)?.flags.get(answer));
  return [...visit.reading.answers].filter(raises).map(([observation]) => observation);
}
