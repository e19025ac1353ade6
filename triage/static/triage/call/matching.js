/* What was said, matched with every answer there is: an inverted index over the phrases of the pack, in memory.
   A phrase fits as far as its words were said in one clause; a word denied on one side only makes it the opposite,
   which is never offered. Danger comes first, then what fits best. */

import { editDistance, splitClauses } from "./tokens.js";

const MAX_LENGTH = 4000; // letters of one text that are matched
export const MAX_SUGGESTIONS = 9; // suggestions shown: one for each number key
const MAX_PER_QUESTION = 2;
const MIN_SHARE = 0.6; // the share of a phrase that must have been said
const PREFIX_WEIGHT = 0.8; // what a word not typed to its end counts
const MISSPELLING_WEIGHT = 0.7;

export function readIndex(answers) {
  const phrases = [];
  const phrasesByStem = new Map();
  answers.forEach((answer, row) => {
    for (const heard of answer.heard) {
      const tokens = splitClauses(heard).flat();
      if (tokens.length === 0) continue;
      const phrase = { row, tokens: new Map(tokens.map((word) => [word.stem, word.denied])), weight: 0 };
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

function grouped(stems) {
  const groups = new Map();
  for (const stem of stems) groups.set(stem[0], [...(groups.get(stem[0]) ?? []), stem]);
  return groups;
}

/* The known stems a word may stand for, each with its weight. Cached, because words come again. */
function stemsMeant(index, word, unfinished) {
  if (index.phrasesByStem.has(word.stem) && !unfinished) return [[word.stem, 1]];
  const key = `${word.stem} ${unfinished}`;
  if (!index.cache.has(key)) index.cache.set(key, lookUp(index, word, unfinished));
  return index.cache.get(key);
}

function lookUp(index, word, unfinished) {
  const near = index.byLetter.get(word.stem[0]) ?? [];
  const exact = index.phrasesByStem.has(word.stem) ? [[word.stem, 1]] : [];
  const begun =
    unfinished && word.typed.length > 2
      ? near.filter((stem) => stem !== word.stem && stem.startsWith(word.stem)).map((stem) => [stem, PREFIX_WEIGHT])
      : [];
  if (exact.length + begun.length > 0 || word.stem.length < 3) return [...exact, ...begun];
  const allowed = word.stem.length > 7 ? 2 : 1;
  const shortest = Math.max(4, word.stem.length < 4 ? word.stem.length + 1 : 0); // of a short word a letter may be missing
  return near
    .filter((stem) => stem.length >= shortest && editDistance(word.stem, stem) <= allowed)
    .map((stem) => [stem, MISSPELLING_WEIGHT]);
}

/* For one clause: how well each phrase that shares a word with it fits, best phrase of a row only; and which harmless
   rows explain all that a row of danger does and more ("the clock is flashing" is no flash). */
function scoreClause(index, tokens, unfinished, best) {
  const spoken = new Map();
  tokens.forEach((word, at) => {
    for (const [stem, weight] of stemsMeant(index, word, unfinished && at === tokens.length - 1)) {
      const known = spoken.get(stem);
      if (!known || weight > known.weight) spoken.set(stem, { weight, denied: word.denied });
    }
  });
  const sums = new Map();
  for (const [stem, { weight, denied }] of spoken) {
    for (const at of index.phrasesByStem.get(stem)) {
      const opposite = index.phrases[at].tokens.get(stem) !== denied;
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

/* Whether the answers an observation depends on were given, and no answer rules that kind of oven out. */
function isAskable(answer, answers) {
  const given = Object.entries(answer.after ?? {}).every(([name, options]) => options.includes(answers[name]));
  const possible = Object.entries(answer.needs ?? {}).every(
    ([name, options]) => !answers[name] || answers[name] === "cant-tell" || options.includes(answers[name]),
  );
  return given && possible;
}

/* A line of the first page is too broad to come first for its danger: the answer it holds has a line of its own. */
function dangerRank(line) {
  return line.pairs.complaint ? 0 : line.danger;
}

/* The answers that fit what was said, danger first; `answers` are the answers recorded so far. */
export function match(index, text, answers = {}) {
  const best = new Map();
  const clauses = splitClauses(text.slice(0, MAX_LENGTH));
  const unfinished = text.length <= MAX_LENGTH && /[\p{L}\p{N}]$/u.test(text);
  clauses.forEach((tokens, at) => scoreClause(index, tokens, unfinished && at === clauses.length - 1, best));
  const explaining = new Set([...best.values()].flatMap(({ explainedBy }) => explainedBy));
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
