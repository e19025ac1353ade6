/* What was said, matched with every answer there is: an inverted index over the phrases of the pack, in memory.
   A phrase fits as far as its words were said in one clause; a word negated on one side only makes it the opposite,
   which is never offered. Danger comes first, then what fits best. */

import { editDistance, splitClauses } from "./tokens.js";

/** @typedef {import("./tokens.js").Token} Token
 * @typedef {[stem: string, weight: number]} WeightedStem
 * @typedef {{pairs: Object<string, string>, question: string, answer: string, danger: number, heard: string[],
 *   after?: Object<string, string[]>, needs?: Object<string, string[]>}} Answer
 * @typedef {{row: number, tokens: Map<string, boolean>, weight: number}} Phrase `tokens`: whether each stem is negated
 * @typedef {{answers: Answer[], phrases: Phrase[], phrasesByStem: Map<string, number[]>, weights: Map<string, number>,
 *   byLetter: Map<string, string[]>, cache: Map<string, WeightedStem[]>}} Index
 * @typedef {{score: number, explainedBy: number[]}} Fit `explainedBy` are rows that explain all that this one does and more
 * @typedef {Answer & Fit & {row: number}} Line */

const MAX_LENGTH = 4000; // letters of one text that are matched
export const MAX_SUGGESTIONS = 9; // suggestions shown: one for each number key
const MAX_PER_QUESTION = 2;
const MIN_SHARE = 0.6; // the share of a phrase that must have been said
const PREFIX_WEIGHT = 0.8; // what a word not typed to its end counts
const MISSPELLING_WEIGHT = 0.7;

/** @param {Answer[]} answers @returns {Index} */
export function readIndex(answers) {
  /** @type {Phrase[]} */
  const phrases = [];
  /** @type {Map<string, number[]>} */
  const phrasesByStem = new Map();
  answers.forEach((answer, row) => {
    for (const heard of answer.heard) {
      const tokens = splitClauses(heard).flat();
      if (tokens.length === 0) continue;
      const phrase = { row, tokens: new Map(tokens.map((token) => [token.stem, token.negated])), weight: 0 };
      for (const stem of phrase.tokens.keys()) {
        if (!phrasesByStem.has(stem)) phrasesByStem.set(stem, []);
        phrasesByStem.get(stem).push(phrases.length);
      }
      phrases.push(phrase);
    }
  });
  const weights = new Map([...phrasesByStem].map(([stem, at]) => [stem, Math.log(1 + phrases.length / at.length)]));
  for (const phrase of phrases) for (const stem of phrase.tokens.keys()) phrase.weight += weights.get(stem);
  return { answers, phrases, phrasesByStem, weights, byLetter: grouped(phrasesByStem.keys()), cache: new Map() };
}

/** @param {Iterable<string>} stems */
function grouped(stems) {
  /** @type {Map<string, string[]>} */
  const groups = new Map();
  for (const stem of stems) groups.set(stem[0], [...(groups.get(stem[0]) ?? []), stem]);
  return groups;
}

/** The known stems a word may stand for, each with its weight. Cached, because words come again.
 * @param {Index} index @param {Token} token @param {boolean} unfinished */
function stemsMeant(index, token, unfinished) {
  if (index.phrasesByStem.has(token.stem) && !unfinished) return [[token.stem, 1]];
  const key = `${token.stem} ${unfinished}`;
  if (!index.cache.has(key)) index.cache.set(key, lookUp(index, token, unfinished));
  return index.cache.get(key);
}

/** @param {Index} index @param {Token} token @param {boolean} unfinished @returns {WeightedStem[]} */
function lookUp(index, token, unfinished) {
  const near = index.byLetter.get(token.stem[0]) ?? [];
  /** @type {WeightedStem[]} */
  const exact = index.phrasesByStem.has(token.stem) ? [[token.stem, 1]] : [];
  /** @type {WeightedStem[]} */
  const begun =
    unfinished && token.typed.length > 2
      ? near.filter((stem) => stem !== token.stem && stem.startsWith(token.stem)).map((stem) => [stem, PREFIX_WEIGHT])
      : [];
  if (exact.length + begun.length > 0 || token.stem.length < 3) return [...exact, ...begun];
  const allowed = token.stem.length > 7 ? 2 : 1;
  const shortest = Math.max(4, token.stem.length < 4 ? token.stem.length + 1 : 0); // of a short word a letter may be missing
  return near
    .filter((stem) => stem.length >= shortest && editDistance(token.stem, stem) <= allowed)
    .map((stem) => [stem, MISSPELLING_WEIGHT]);
}

/** For one clause: how well each phrase that shares a word with it fits, best phrase of a row only; and which harmless
   rows explain all that a row of danger does and more ("the clock is flashing" is no flash).
 * @param {Index} index @param {Token[]} tokens @param {boolean} unfinished @param {Map<number, Fit>} best */
function scoreClause(index, tokens, unfinished, best) {
  const spoken = new Map();
  tokens.forEach((token, at) => {
    for (const [stem, weight] of stemsMeant(index, token, unfinished && at === tokens.length - 1)) {
      const known = spoken.get(stem);
      if (!known || weight > known.weight) spoken.set(stem, { weight, negated: token.negated });
    }
  });
  const sums = new Map();
  for (const [stem, { weight, negated }] of spoken) {
    for (const at of index.phrasesByStem.get(stem)) {
      const opposite = index.phrases[at].tokens.get(stem) !== negated;
      const sum = opposite ? -Infinity : (sums.get(at) ?? 0) + weight * index.weights.get(stem);
      sums.set(at, Number.isNaN(sum) ? -Infinity : sum);
    }
  }
  const fitting = [];
  for (const [at, sum] of sums) {
    const phrase = index.phrases[at];
    const share = sum / phrase.weight;
    if (share < MIN_SHARE) continue;
    const stems = [...phrase.tokens.keys()].filter((stem) => spoken.has(stem));
    fitting.push({
      row: phrase.row,
      score: sum * share,
      stems,
      whole: share > 0.99,
      harmless: !dangerRank(index.answers[phrase.row]),
    });
  }
  const plain = fitting.filter(({ harmless, whole }) => harmless && whole);
  for (const fit of fitting) {
    const better = fit.harmless
      ? []
      : plain.filter(({ stems }) => stems.length > fit.stems.length && fit.stems.every((stem) => stems.includes(stem)));
    const before = best.get(fit.row);
    if (before && before.score >= fit.score) continue;
    best.set(fit.row, { score: fit.score, explainedBy: better.map(({ row }) => row) });
  }
}

/** Whether the answers an observation depends on were given, and no kind of oven was named that rules it out.
 * @param {Answer} answer @param {Object<string, string | null>} answers */
function isAskable(answer, answers) {
  const given = Object.entries(answer.after ?? {}).every(([name, options]) => options.includes(answers[name]));
  const possible = Object.entries(answer.needs ?? {}).every(
    ([name, options]) => !answers[name] || answers[name] === "cant-tell" || options.includes(answers[name]),
  );
  return given && possible;
}

/** A line of the first page is too broad to come first for its danger: the answer it holds has a line of its own.
 * @param {{pairs: Object<string, string>, danger: number}} line */
function dangerRank(line) {
  return line.pairs.complaint ? 0 : line.danger;
}

/** The answers that fit what was said, danger first; `answers` are those recorded so far.
 * @param {Index} index @param {string} text @param {Object<string, string | null>} answers
 * @returns {{lines: Line[], truncated: boolean}} */
export function match(index, text, answers = {}) {
  /** @type {Map<number, Fit>} */
  const best = new Map();
  const clauses = splitClauses(text.slice(0, MAX_LENGTH));
  const unfinished = text.length <= MAX_LENGTH && /[\p{L}\p{N}]$/u.test(text);
  clauses.forEach((tokens, at) => scoreClause(index, tokens, unfinished && at === clauses.length - 1, best));
  const explaining = new Set([...best.values()].flatMap(({ explainedBy }) => explainedBy));
  /** @param {Line} line */
  const place = (line) =>
    line.explainedBy.length ? 1 : dangerRank(line) ? 2 + dangerRank(line) : explaining.has(line.row) ? 2 : 0;
  const found = [...best]
    .filter(([row]) => isAskable(index.answers[row], answers))
    .map(([row, fit]) => ({ ...index.answers[row], ...fit, row }))
    .sort((a, b) => place(b) - place(a) || b.score - a.score || a.row - b.row);
  const perQuestion = new Map();
  const lines = found.filter(({ question }) => {
    perQuestion.set(question, (perQuestion.get(question) ?? 0) + 1);
    return perQuestion.get(question) <= MAX_PER_QUESTION;
  });
  return { lines: lines.slice(0, MAX_SUGGESTIONS), truncated: text.length > MAX_LENGTH };
}
