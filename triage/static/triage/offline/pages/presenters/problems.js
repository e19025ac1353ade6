/* What could not be used of an address: as `triage/check_pages/presenters/problems.py`. */

import { answerLabel, questionLabel } from "./answers.js";

/** @typedef {import("../../engine/answers.js").AnswerProblem} AnswerProblem
 * @typedef {import("../request.js").CheckRequest} CheckRequest */

const MAX_SHOWN = 4;

/** Each once, the first few of them, and how many more there were. @param {CheckRequest} checkRequest */
export function problemNotes(checkRequest) {
  const notes = checkRequest.problems.map((problem) => problemNote(checkRequest, problem));
  const once = [...new Map(notes.map((note) => [JSON.stringify(note), note])).values()];
  const more = once.length - MAX_SHOWN;
  return more <= 1 ? once : [...once.slice(0, MAX_SHOWN), { kind: "more", count: more }];
}

/** What is not named in its sentence is left out, so equal notes are equal sentences.
 * @param {CheckRequest} checkRequest @param {AnswerProblem} problem */
function problemNote(checkRequest, { kind, observation, answer }) {
  if (kind === "too-many") return { kind };
  const named = kind === "unknown-answer" ? { answer: answerLabel(checkRequest, observation, answer) } : {};
  return { kind, question: questionLabel(checkRequest, observation), ...named };
}
