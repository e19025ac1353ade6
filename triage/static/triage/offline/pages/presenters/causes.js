/* Chances as natural frequencies, and which answers speak for and against a cause: as
   `triage/check_pages/presenters/causes.py`. */

import { answerWords, questionWords } from "./answers.js";

const SPEAKS = 1.0;
const MOST_LINES = 4;
const SMALL = 0.1;
const GREAT = 0.95;

export function causesOf(checkRequest, verdict) {
  return verdict.causes.map((cause) => causeShown(checkRequest, cause));
}

/** A chance as so many of ten; never certain, never nothing. */
export function shortChance(checkRequest, chance) {
  if (chance < SMALL) return checkRequest.say("Fewer than 1 in 10");
  if (chance >= GREAT) return checkRequest.say("More than 9 in 10");
  return checkRequest.say("About %(n)s in 10", { n: tenthsOf(chance) });
}

function tenthsOf(chance) {
  return chance < SMALL ? 0 : Math.min(9, Math.floor(chance * 10 + 0.5));
}

function causeShown(checkRequest, { fault, chance, weights }) {
  const text = checkRequest.texts.faults.get(fault);
  return {
    name: text.name,
    chance_words: checkRequest.say("%(share)s ovens that answer like this", {
      share: shortChance(checkRequest, chance),
    }),
    tenths: tenthsOf(chance),
    explanation: text.means,
    points_to: heaviestLines(
      checkRequest,
      weights.filter(({ decibans }) => decibans >= SPEAKS),
    ),
    points_away: heaviestLines(
      checkRequest,
      weights.filter(({ decibans }) => decibans <= -SPEAKS),
    ),
    part: text.picture,
  };
}

/* The heaviest answers first, as "question: answer". */
function heaviestLines(checkRequest, weights) {
  const heaviest = weights.sort((one, other) => Math.abs(other.decibans) - Math.abs(one.decibans));
  return heaviest.slice(0, MOST_LINES).map(({ observation, answer }) => {
    return `${questionWords(checkRequest, observation)}: ${answerWords(checkRequest, observation, answer)}`;
  });
}
