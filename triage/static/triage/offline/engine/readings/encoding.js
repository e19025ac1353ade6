/* How a reading is written in a trail: its raw inputs as short text, `f21~s30~k1000` or `c180~r30-172_35-190`.
   Nothing is worked out here. */

/** @typedef {{letter: string, low: number, high: number, whole: boolean}} Field
 * @typedef {Map<string, Field>} FieldTable
 * @typedef {Map<string, string>} RawFields */

const MAX_TEXT_LENGTH = 800;
export const MAX_ITEMS = 60;
const NUMBER = /^-?[0-9]{1,9}(?:[.,][0-9]{1,6})?$/;
const FIELD = /^([a-z])([0-9a-z.,_-]*)$/;

/** A reading that cannot be used. Thrown and caught within the engine, never beyond it. */
export class InvalidReading extends Error {
  /** @param {string} reason @param {string} field */
  constructor(reason, field = "") {
    super(`${reason} ${field}`);
    this.reason = reason;
    this.field = field;
  }
}

/** A table of fields from `[name, letter, low, high, whole]` lines.
 * @param {...[string, string, number, number, boolean?]} lines @returns {FieldTable} */
export function fieldTable(...lines) {
  return new Map(lines.map(([name, letter, low, high, whole = false]) => [name, { letter, low, high, whole }]));
}

/** The text of figures by name; fields left empty are left out. It may still be unreadable: see the kinds.
 * @param {FieldTable} table @param {Map<string, string>} figures @returns {string} */
export function encode(table, figures) {
  const filled = [...table].filter(([name]) => figures.get(name));
  return filled.map(([name, { letter }]) => letter + figures.get(name)).join("~");
}

/** The raw value of each field by name.
 * @param {FieldTable} table @param {string} text @returns {RawFields} */
export function decodeFields(table, text) {
  if (!text || text.length > MAX_TEXT_LENGTH) throw new InvalidReading("not-a-reading");
  const names = new Map([...table].map(([name, field]) => [field.letter, name]));
  const found = new Map();
  for (const piece of text.split("~")) {
    const match = FIELD.exec(piece);
    if (!match) throw new InvalidReading("not-a-reading");
    const name = names.get(match[1]);
    if (name === undefined) throw new InvalidReading("unknown-field");
    if (found.has(name)) throw new InvalidReading("twice", name);
    found.set(name, match[2]);
  }
  return found;
}

/** The field's number within its limits.
 * @param {FieldTable} table @param {RawFields} raw @param {string} name */
export function readNumber(table, raw, name) {
  if (!raw.has(name)) throw new InvalidReading("missing", name);
  return checkedNumber(table.get(name), name, raw.get(name));
}

/** The same, or null where the field was left out.
 * @param {FieldTable} table @param {RawFields} raw @param {string} name */
export function readOptional(table, raw, name) {
  return raw.has(name) ? readNumber(table, raw, name) : null;
}

/** The field's list of numbers, each above the one before it.
 * @param {FieldTable} table @param {RawFields} raw @param {string} name */
export function readNumbers(table, raw, name) {
  const found = readItems(raw, name).map((item) => checkedNumber(table.get(name), name, item));
  refuseDisorder(found, name);
  return found;
}

/** The list under `first` of pairs whose second part keeps the limits of `second`; first parts rise.
 * @param {FieldTable} table @param {RawFields} raw @param {string} first @param {string} second
 * @returns {[number, number][]} */
export function readPairs(table, raw, first, second) {
  /** @type {[number, number][]} */
  const found = readItems(raw, first).map((item) => {
    const dash = item.indexOf("-");
    if (dash < 0) throw new InvalidReading("not-a-number", first);
    const one = checkedNumber(table.get(first), first, item.slice(0, dash));
    return [one, checkedNumber(table.get(second), second, item.slice(dash + 1))];
  });
  refuseDisorder(
    found.map(([one]) => one),
    first,
  );
  return found;
}

/** @param {RawFields} raw @param {string} name */
function readItems(raw, name) {
  if (!raw.has(name)) throw new InvalidReading("missing", name);
  const items = raw.get(name).split("_");
  if (items.length > MAX_ITEMS) throw new InvalidReading("too-many", name);
  return items;
}

/** @param {Field} field @param {string} name @param {string} item */
function checkedNumber(field, name, item) {
  if (!NUMBER.test(item)) throw new InvalidReading("not-a-number", name);
  const value = Number(item.replace(",", "."));
  if (value < field.low) throw new InvalidReading("too-small", name);
  if (value > field.high) throw new InvalidReading("too-large", name);
  if (field.whole && !Number.isInteger(value)) throw new InvalidReading("not-whole", name);
  return value;
}

/** @param {number[]} times @param {string} name */
function refuseDisorder(times, name) {
  if (times.some((time, at) => at > 0 && time <= times[at - 1])) throw new InvalidReading("out-of-order", name);
}
