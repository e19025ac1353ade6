/* The texts of the pages, opened from the bundle, in the terms of a region: as `triage/knowledge/wording.py`. */

/** @typedef {Map<string, string>} Terms the region's own, by placeholder
 * @typedef {{ask: string, why: string, look: string, short: string, options: Map<string, string>}} QuestionText
 * @typedef {{name: string, trade: string, picture: string, means: string, now: string, job: string,
 *   why_them: string}} FaultText
 * @typedef {{sign: string, heading: string, hazard: string, first: string[], never: string[], then: string,
 *   who: string}} FlagText
 * @typedef {{signal: string, sign: string, hazard: string, consequence: string, avoid: string}} CautionText
 * @typedef {{title: string, why: string, cautions: CautionText[], tools: string[], steps: string[], stop_if: string[],
 *   fixed: string, not_fixed: string}} TaskText
 * @typedef {{language: string, questions: Map<string, QuestionText>, faults: Map<string, FaultText>,
 *   flags: Map<string, FlagText>, tasks: Map<string, TaskText>, families: Map<string, {split: string}>,
 *   gates: Map<string, any>, isolation: any, start: any, readings: Map<string, any>}} Texts as
 *   `triage/knowledge/texts.py`, what pages of a check show of it */

const PLACEHOLDER = /(\b[Aa] )?\{([a-z_]*)\}/g;
const VOWEL = /^[aeiou]/i;
const SENTENCE_ENDS = /[.?!] $/;

export const ISOLATE = "{isolate}";

/** `text` with the region's terms, a capital where a sentence begins and "an" before a vowel.
 * @param {string} text @param {Terms} terms */
export function fillTerms(text, terms) {
  return text.replace(PLACEHOLDER, (whole, article, name, at) => {
    const term = terms.get(name);
    if (term === undefined) return whole;
    if (article) return (VOWEL.test(term) ? `${article[0]}n ` : article) + term;
    return at === 0 || SENTENCE_ENDS.test(text.slice(0, at)) ? capital(term) : term;
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
 * @param {any} packed `texts` of the bundle @param {import("../engine/pack.js").Pack} pack @param {Terms} terms
 * @returns {Texts} */
export function openTexts(packed, pack, terms) {
  /** @param {any} value */
  const filled = (value) => withTerms(value, terms);
  const texts = {
    language: packed.language,
    questions: tableBy(pack.observations, filled(packed.questions)),
    faults: tableBy(pack.faults, filled(packed.faults)),
    flags: tableBy(pack.redFlags, filled(packed.flags)),
    tasks: tableBy(pack.tasks, filled(packed.tasks)),
    families: mapBy(filled(packed.families)),
    gates: mapBy(filled(packed.gates)),
    isolation: filled(packed.isolation),
    start: filled(packed.start),
    readings: mapBy(filled(packed.readings)),
  };
  for (const [id, text] of texts.questions) text.options = optionsOf(pack.observations.get(id), text.options);
  texts.isolation.supplies = mapBy(texts.isolation.supplies);
  texts.isolation.cooling = mapBy(texts.isolation.cooling);
  texts.start.exits = mapBy(texts.start.exits);
  return texts;
}

/** @template T @param {Object<string, T>} object @returns {Map<string, T>} */
function mapBy(object) {
  return new Map(Object.entries(object));
}

/** A row for each shape of the pack, in its order; nothing where there is no text.
 * @param {Map<string, unknown>} shapes @param {any[]} rows @returns {Map<string, any>} */
function tableBy(shapes, rows) {
  const ids = [...shapes.keys()];
  return new Map(rows.flatMap((row, at) => (row ? [[ids[at], row]] : [])));
}

/** @param {import("../engine/pack.js").Observation} observation @param {string[]} labels */
function optionsOf(observation, labels) {
  return new Map(observation.options.map((option, at) => [option, labels[at]]));
}

/** Every string in the region's terms, and each table as a list of shapes.
 * @param {any} value @param {Terms} terms @returns {any} */
function withTerms(value, terms) {
  if (typeof value === "string") return value.includes("{") ? fillTerms(value, terms) : value;
  if (Array.isArray(value)) return value.map((item) => withTerms(item, terms));
  if (!value || typeof value !== "object") return value;
  if (value.rows) return value.rows.map((/** @type {any} */ row) => row && shapeOf(value.of, withTerms(row, terms)));
  return shapeOf(
    Object.keys(value),
    Object.values(value).map((item) => withTerms(item, terms)),
  );
}

/** @param {string[]} names @param {any[]} values */
function shapeOf(names, values) {
  return Object.fromEntries(names.map((name, at) => [name, values[at]]));
}
