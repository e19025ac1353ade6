/* From what somebody says to words that can be compared: clauses, stems, and which words are negated.
   Made for short talk about one appliance, in English. The stems are not those of a dictionary: it is enough that
   "tripping", "tripped" and "trips" come out alike. */

/** @typedef {{stem: string, typed: string, negated: boolean}} Token */

// biome-ignore format: a table
const NEGATIONS = new Set(["not", "no", "never", "without", "nor", "neither", "none", "nothing", "nobody", "cannot", "hardly"]);
const NEGATION_SCOPE = 4; // how many tokens after it a negation still covers
/* Words that tell nothing apart, and those every sentence here may hold. */
const STOP_WORDS = new Set(
  (
    "a an the it its is are was were be been being am i we you he she they them my our your his her their me us this that" +
    " there here of to in for with as at by or if so than have has had having do does did doing get gets got getting just" +
    " still very really quite also well yes please then when which who what my mine oven ovens cooker stove thing any some" +
    " can could would should will may might us about from into onto un le"
  ).split(" "),
);
const CLAUSE_BREAK = /[.,;:!?\n()"“”…]|\s-\s|\b(?:and|but|then|because|though|although|while|however|plus)\b/u;
/* Forms that no rule below brings together. */
// biome-ignore format: a table
/** @type {Object<string, string>} */
const IRREGULAR_FORMS = {
  gone: "go", goes: "go", going: "go", went: "go", died: "dead", dies: "dead", dying: "dead", dead: "dead",
  burnt: "burn", burned: "burn", blew: "blow", blown: "blow", broke: "break", broken: "break", lit: "light",
  came: "come", fell: "fall", fallen: "fall", kept: "keep", heard: "hear", felt: "feel", spun: "spin", smelt: "smell",
  stank: "stink", stinks: "stink", shook: "shake", left: "left", hotter: "hot", colder: "cold", heating: "heat",
  lights: "light", wont: "will", turning: "turn", working: "work", shattered: "shatter", element: "element",
};

/** "won't", "isn't", "cant": whatever negates becomes a word of its own; other endings after ' say nothing here.
 * @param {string} text */
function normalize(text) {
  return text
    .normalize("NFD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .replace(/[’‘`´]/gu, "'")
    .replace(/\bwon'?t\b/gu, "will not")
    .replace(/\bcan'?t\b/gu, "can not")
    .replace(/\b(is|was|are|were|do|does|did|has|have|had|could|would|should)n'?t\b/gu, "$1 not")
    .replace(/'(?:s|re|ve|m|ll|d)\b/gu, "");
}

/** @param {string} word */
export function stemOf(word) {
  if (IRREGULAR_FORMS[word]) return IRREGULAR_FORMS[word];
  let stem = word;
  if (stem.length > 4 && stem.endsWith("ies")) stem = `${stem.slice(0, -3)}y`;
  else if (stem.length > 4 && /(?:s|x|z|ch|sh)es$/.test(stem)) stem = stem.slice(0, -2);
  else if (stem.length > 3 && stem.endsWith("s") && !stem.endsWith("ss") && !stem.endsWith("us"))
    stem = stem.slice(0, -1);
  if (stem.length > 5 && stem.endsWith("ing")) stem = stem.slice(0, -3);
  else if (stem.length > 4 && stem.endsWith("ed")) stem = stem.slice(0, -2);
  if (stem !== word && /([bdgklmnprt])\1$/.test(stem) && stem.length > 3) stem = stem.slice(0, -1);
  if (stem.length > 4 && /[ey]$/.test(stem)) stem = stem.slice(0, -1);
  return stem.replace(/ll$/, "l").replace(/ss$/, "s");
}

/** One clause as words in order: the stem, and whether it is negated. @param {string} clause @returns {Token[]} */
function tokensOf(clause) {
  /** @type {Token[]} */
  const tokens = [];
  let negated = 0;
  for (const word of clause.match(/[\p{L}\p{N}]+/gu) ?? []) {
    if (NEGATIONS.has(word)) {
      negated = NEGATION_SCOPE;
      continue;
    }
    if (STOP_WORDS.has(word)) continue;
    tokens.push({ stem: stemOf(word), typed: word, negated: negated > 0 });
    if (negated > 0) negated -= 1;
  }
  return tokens;
}

/** Clauses of a text; each is matched by itself, so that one sentence can hold several answers.
 * @param {string} text */
export function splitClauses(text) {
  return normalize(text)
    .split(CLAUSE_BREAK)
    .map(tokensOf)
    .filter((tokens) => tokens.length > 0);
}

/** Optimal string alignment, cut off beyond two: a letter wrong, missing, doubled, or two swapped.
 * @param {string} a @param {string} b */
export function editDistance(a, b) {
  if (Math.abs(a.length - b.length) > 2) return 3;
  /** @type {number[] | null} */
  let before = null;
  let row = Array.from({ length: b.length + 1 }, (_, at) => at);
  for (let i = 1; i <= a.length; i += 1) {
    const next = [i];
    for (let j = 1; j <= b.length; j += 1) {
      const change = a[i - 1] === b[j - 1] ? 0 : 1;
      next[j] = Math.min(row[j] + 1, next[j - 1] + 1, row[j - 1] + change);
      if (before && i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) {
        next[j] = Math.min(next[j], before[j - 2] + 1);
      }
    }
    [before, row] = [row, next];
  }
  return row[b.length];
}
