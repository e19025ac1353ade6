/* What could not be read in an address, as plain sentences: as `triage/check_pages/presenters/problems.py`. */

import { answerWords, questionWords } from "./answers.js";

const MOST_SHOWN = 4;

/** One sentence each, the first few of them, and how many more there were. */
export function problemSentences(checkRequest) {
  const sentences = [...new Set(checkRequest.problems.map((problem) => problemSentence(checkRequest, problem)))];
  const more = sentences.length - MOST_SHOWN;
  if (more <= 1) return sentences;
  const rest = checkRequest.sayCounted(
    "%(n)s more answer could not be used either.",
    "%(n)s more answers could not be used either.",
    more,
  );
  return [...sentences.slice(0, MOST_SHOWN), rest];
}

function problemSentence(checkRequest, { kind, observation, answer }) {
  const words = {
    question: questionWords(checkRequest, observation),
    answer: answerWords(checkRequest, observation, answer),
  };
  switch (kind) {
    case "unknown-answer":
      return checkRequest.say("We did not know the answer “%(answer)s” to “%(question)s”. It was left out.", words);
    case "unreadable-reading":
      return checkRequest.say("The figures given for “%(question)s” could not be used. Please give them again.", words);
    case "contradiction":
      return checkRequest.say(
        "“%(question)s” had two different answers. The safer one is used, or it is asked again.",
        words,
      );
    case "retired":
      return checkRequest.say("The question “%(question)s” is asked in another way now. It may be asked again.", words);
    case "out-of-place":
      return checkRequest.say("“%(question)s” does not go with the other answers. It was left out.", words);
    case "too-many":
      return checkRequest.say("There were more answers than we can read. The first ones are used.");
    default:
      return checkRequest.say("We did not know the question “%(question)s”. It was left out.", words);
  }
}
