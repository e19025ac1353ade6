/* What comes of a reading in words, kind by kind alike: as `triage/check_pages/presenters/readings/told.py`. */

import { gaugeAnswer } from "../../../engine/readings/evidence.js";

export const CLEAR = 0.7;

/** Which of the answers in words the figures fit, without an edge: near one, both are named. */
export function meaningOf(visit, observation, text) {
  const told = gaugeAnswer(observation, text);
  const { short, options } = visit.texts.questions.get(observation.id);
  const ranked = distinctOptions(observation).sort((one, other) => told[other] - told[one]);
  const total = ranked.reduce((sum, at) => sum + told[at], 0);
  const [first, second] = ranked.map((at) => options.get(observation.options[at]));
  const words = { short, words: first, other: second };
  if (told[ranked[0]] >= CLEAR * total) return visit.say("%(short)s: this fits “%(words)s”.", words);
  return visit.say("%(short)s: this lies between “%(words)s” and “%(other)s”. Both are weighed.", words);
}

/* The places of the options; of two with one span the later one, which says it in figures. */
function distinctOptions({ gauge, options }) {
  return [...new Map(options.map((option, at) => [String(gauge.spans.get(option) ?? option), at])).values()];
}
