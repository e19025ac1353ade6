/* What was said, matched with every answer there is: an inverted index over the phrases of the pack, in memory.
   A phrase fits as far as its words were said in one clause; a word denied on one side only makes it the opposite,
   which is never offered. Danger comes first, then what fits best. */

import { clausesOf, slips } from "./spoken_words.js";

/** @typedef {import("./spoken_words.js").Word} Word
 * @typedef {[root: string, counts: number]} Meaning
 * @typedef {{pairs: Object<string, string>, question: string, answer: string, danger: number, heard: string[],
 *   after?: Object<string, string[]>, needs?: Object<string, string[]>}} Answer
 * @typedef {{row: number, words: Map<string, boolean>, weight: number}} Phrase `words`: whether each root is denied
 * @typedef {{answers: Answer[], phrases: Phrase[], holders: Map<string, number[]>, weights: Map<string, number>,
 *   byLetter: Map<string, string[]>, meant: Map<string, Meaning[]>}} Index
 * @typedef {{score: number, after: number[]}} Fit `after` are rows that explain all that this one does and more
 * @typedef {Omit<Answer, "after"> & Fit & {row: number}} Line */

const LONGEST = 4000; // letters of one text that are matched
export const MOST = 9; // lines shown: one for each number key
const PER_QUESTION = 2;
const ENOUGH = 0.6; // the share of a phrase that must have been said
const BEGUN = 0.8; // what a word not typed to its end counts
const MISSPELT = 0.7;

/** @param {Answer[]} answers @returns {Index} */
export function readIndex(answers) {
  /** @type {Phrase[]} */
  const phrases = [];
  /** @type {Map<string, number[]>} */
  const holders = new Map();
  answers.forEach((answer, row) => {
    for (const heard of answer.heard) {
      const words = clausesOf(heard).flat();
      if (words.length === 0) continue;
      const phrase = { row, words: new Map(words.map((word) => [word.root, word.denied])), weight: 0 };
      for (const root of phrase.words.keys()) {
        if (!holders.has(root)) holders.set(root, []);
        holders.get(root).push(phrases.length);
      }
      phrases.push(phrase);
    }
  });
  const weights = new Map([...holders].map(([root, at]) => [root, Math.log(1 + phrases.length / at.length)]));
  for (const phrase of phrases) for (const root of phrase.words.keys()) phrase.weight += weights.get(root);
  return { answers, phrases, holders, weights, byLetter: grouped(holders.keys()), meant: new Map() };
}

/** @param {Iterable<string>} roots */
function grouped(roots) {
  /** @type {Map<string, string[]>} */
  const groups = new Map();
  for (const root of roots) groups.set(root[0], [...(groups.get(root[0]) ?? []), root]);
  return groups;
}

/** The known roots a word may stand for, each with what it counts. Remembered, because words come again.
 * @param {Index} index @param {Word} word @param {boolean} unfinished */
function meaningsOf(index, word, unfinished) {
  if (index.holders.has(word.root) && !unfinished) return [[word.root, 1]];
  const key = `${word.root} ${unfinished}`;
  if (!index.meant.has(key)) index.meant.set(key, lookedUp(index, word, unfinished));
  return index.meant.get(key);
}

/** @param {Index} index @param {Word} word @param {boolean} unfinished @returns {Meaning[]} */
function lookedUp(index, word, unfinished) {
  const near = index.byLetter.get(word.root[0]) ?? [];
  /** @type {Meaning[]} */
  const exact = index.holders.has(word.root) ? [[word.root, 1]] : [];
  /** @type {Meaning[]} */
  const begun =
    unfinished && word.typed.length > 2
      ? near.filter((root) => root !== word.root && root.startsWith(word.root)).map((root) => [root, BEGUN])
      : [];
  if (exact.length + begun.length > 0 || word.root.length < 3) return [...exact, ...begun];
  const allowed = word.root.length > 7 ? 2 : 1;
  const shortest = Math.max(4, word.root.length < 4 ? word.root.length + 1 : 0); // of a short word a letter may be missing
  return near
    .filter((root) => root.length >= shortest && slips(word.root, root) <= allowed)
    .map((root) => [root, MISSPELT]);
}

/** For one clause: how well each phrase that shares a word with it fits, best phrase of a row only; and which harmless
   rows explain all that a row of danger does and more ("the clock is flashing" is no flash).
 * @param {Index} index @param {Word[]} words @param {boolean} unfinished @param {Map<number, Fit>} best */
function scoreClause(index, words, unfinished, best) {
  const said = new Map();
  words.forEach((word, at) => {
    for (const [root, worth] of meaningsOf(index, word, unfinished && at === words.length - 1)) {
      const known = said.get(root);
      if (!known || worth > known.worth) said.set(root, { worth, denied: word.denied });
    }
  });
  const sums = new Map();
  for (const [root, { worth, denied }] of said) {
    for (const at of index.holders.get(root)) {
      const opposite = index.phrases[at].words.get(root) !== denied;
      const sum = opposite ? -Infinity : (sums.get(at) ?? 0) + worth * index.weights.get(root);
      sums.set(at, Number.isNaN(sum) ? -Infinity : sum);
    }
  }
  const fitting = [];
  for (const [at, sum] of sums) {
    const phrase = index.phrases[at];
    const share = sum / phrase.weight;
    if (share < ENOUGH) continue;
    const roots = [...phrase.words.keys()].filter((root) => said.has(root));
    fitting.push({
      row: phrase.row,
      score: sum * share,
      roots,
      whole: share > 0.99,
      harmless: !urgency(index.answers[phrase.row]),
    });
  }
  const plain = fitting.filter(({ harmless, whole }) => harmless && whole);
  for (const fit of fitting) {
    const better = fit.harmless
      ? []
      : plain.filter(({ roots }) => roots.length > fit.roots.length && fit.roots.every((root) => roots.includes(root)));
    const before = best.get(fit.row);
    if (before && before.score >= fit.score) continue;
    best.set(fit.row, { score: fit.score, after: better.map(({ row }) => row) });
  }
}

/** Whether the answers an observation depends on were given, and no kind of oven was named that rules it out.
 * @param {Answer} answer @param {Object<string, string | null>} answers */
function exists(answer, answers) {
  const given = Object.entries(answer.after ?? {}).every(([name, options]) => options.includes(answers[name]));
  const possible = Object.entries(answer.needs ?? {}).every(
    ([name, options]) => !answers[name] || answers[name] === "cant-tell" || options.includes(answers[name]),
  );
  return given && possible;
}

/** A line of the first page is too broad to come first for its danger: the answer it holds has a line of its own.
 * @param {{pairs: Object<string, string>, danger: number}} line */
function urgency(line) {
  return line.pairs.complaint ? 0 : line.danger;
}

/** The answers that fit what was said, danger first; `answers` are those recorded so far.
 * @param {Index} index @param {string} text @param {Object<string, string | null>} answers
 * @returns {{lines: Line[], cut: boolean}} */
export function match(index, text, answers = {}) {
  /** @type {Map<number, Fit>} */
  const best = new Map();
  const clauses = clausesOf(text.slice(0, LONGEST));
  const unfinished = text.length <= LONGEST && /[\p{L}\p{N}]$/u.test(text);
  clauses.forEach((words, at) => scoreClause(index, words, unfinished && at === clauses.length - 1, best));
  const explaining = new Set([...best.values()].flatMap(({ after }) => after));
  /** @param {Line} line */
  const place = (line) =>
    line.after.length ? 1 : urgency(line) ? 2 + urgency(line) : explaining.has(line.row) ? 2 : 0;
  const found = [...best]
    .filter(([row]) => exists(index.answers[row], answers))
    .map(([row, fit]) => ({ ...index.answers[row], ...fit, row }))
    .sort((a, b) => place(b) - place(a) || b.score - a.score || a.row - b.row);
  const perQuestion = new Map();
  const kept = found.filter(({ question }) => {
    perQuestion.set(question, (perQuestion.get(question) ?? 0) + 1);
    return perQuestion.get(question) <= PER_QUESTION;
  });
  return { lines: kept.slice(0, MOST), cut: text.length > LONGEST };
}
