/* Chances as natural frequencies, and which answers speak for and against a cause: as
   `triage/check_pages/presenters/causes.py`. */

import { answerWords, questionWords } from "./answers.js";

const SPEAKS = 1.0;
const MOST_LINES = 4;
const SMALL = 0.1;
const GREAT = 0.95;

export function causesOf(visit, verdict) {
  return verdict.causes.map((cause) => causeShown(visit, cause));
}

/** A chance as so many of ten; never certain, never nothing. */
export function shortChance(visit, chance) {
  if (chance < SMALL) return visit.say("Fewer than 1 in 10");
  if (chance >= GREAT) return visit.say("More than 9 in 10");
  return visit.say("About %(n)s in 10", { n: tenthsOf(chance) });
}

function tenthsOf(chance) {
  return chance < SMALL ? 0 : Math.min(9, Math.floor(chance * 10 + 0.5));
}

function causeShown(visit, { fault, chance, weights }) {
  const text = visit.texts.faults.get(fault);
  return {
    name: text.name,
    chance_words: visit.say("%(share)s ovens that answer like this", { share: shortChance(visit, chance) }),
    tenths: tenthsOf(chance),
    explanation: text.means,
    points_to: heaviestLines(
      visit,
      weights.filter(({ decibans }) => decibans >= SPEAKS),
    ),
    points_away: heaviestLines(
      visit,
      weights.filter(({ decibans }) => decibans <= -SPEAKS),
    ),
    part: text.picture,
  };
}

/* The heaviest answers first, as "question: answer". */
function heaviestLines(visit, weights) {
  const heaviest = weights.sort((one, other) => Math.abs(other.decibans) - Math.abs(one.decibans));
  return heaviest.slice(0, MOST_LINES).map(({ observation, answer }) => {
    return `${questionWords(visit, observation)}: ${answerWords(visit, observation, answer)}`;
  });
}
