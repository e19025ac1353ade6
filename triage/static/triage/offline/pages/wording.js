/* The texts of the pages, opened from the bundle, in the words of a region: as `triage/knowledge/wording.py`. */

/** @typedef {Map<string, string>} Words */

const PLACEHOLDER = /(\b[Aa] )?\{([a-z_]*)\}/g;
const VOWEL = /^[aeiou]/i;
const SENTENCE_ENDS = /[.?!] $/;

export const ISOLATE = "{isolate}";

/** `text` with the region's words, a capital where a sentence begins and "an" before a vowel.
 * @param {string} text @param {Words} words */
export function fillWords(text, words) {
  return text.replace(PLACEHOLDER, (whole, article, name, at) => {
    const told = words.get(name);
    if (told === undefined) return whole;
    if (article) return (VOWEL.test(told) ? `${article[0]}n ` : article) + told;
    return at === 0 || SENTENCE_ENDS.test(text.slice(0, at)) ? capital(told) : told;
  });
}

/** @param {string} text */
export function capital(text) {
  return text.slice(0, 1).toUpperCase() + text.slice(1);
}

/** @param {string} text */
export function lowerFirst(text) {
  return text.slice(0, 1).toLowerCase() + text.slice(1);
}

/** Texts as the presenters read them. A table has its rows by the ids of the pack, everything else its own ids.
 * @param {object} told `texts` of the bundle @param {import("../engine/pack.js").Pack} pack @param {Words} words */
export function openTexts(told, pack, words) {
  const filled = (value) => inWordsOf(value, words);
  const texts = {
    language: told.language,
    questions: tableBy(pack.observations, filled(told.questions)),
    faults: tableBy(pack.faults, filled(told.faults)),
    flags: tableBy(pack.redFlags, filled(told.flags)),
    tasks: tableBy(pack.tasks, filled(told.tasks)),
    families: mapBy(filled(told.families)),
    gates: mapBy(filled(told.gates)),
    isolation: filled(told.isolation),
    start: filled(told.start),
    readings: mapBy(filled(told.readings)),
  };
  for (const [id, text] of texts.questions) text.options = optionsOf(pack.observations.get(id), text.options);
  texts.isolation.supplies = mapBy(texts.isolation.supplies);
  texts.isolation.cooling = mapBy(texts.isolation.cooling);
  texts.start.exits = mapBy(texts.start.exits);
  return texts;
}

function mapBy(object) {
  return new Map(Object.entries(object));
}

/* A row for each shape of the pack, in its order; nothing where there is no text. */
function tableBy(shapes, rows) {
  return new Map([...shapes.keys()].map((id, at) => [id, rows[at]]).filter(([, row]) => row));
}

function optionsOf(observation, words) {
  return new Map(observation.options.map((option, at) => [option, words[at]]));
}

/* Every string in the region's words, and each table as a list of shapes. */
function inWordsOf(value, words) {
  if (typeof value === "string") return value.includes("{") ? fillWords(value, words) : value;
  if (Array.isArray(value)) return value.map((item) => inWordsOf(item, words));
  if (!value || typeof value !== "object") return value;
  if (value.rows) return value.rows.map((row) => row && shapeOf(value.of, inWordsOf(row, words)));
  return shapeOf(
    Object.keys(value),
    Object.values(value).map((item) => inWordsOf(item, words)),
  );
}

function shapeOf(names, values) {
  return Object.fromEntries(names.map((name, at) => [name, values[at]]));
}
