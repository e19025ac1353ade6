/* What was typed into a reading's form: each field read by itself, kept as typed, with what is wrong with it. As
   `triage/check_pages/presenters/readings/form_input.py`; the fields themselves come with the texts. */

import { MAX_ITEMS } from "../../../engine/readings/encoding.js";
import { fixed, sixDigits } from "../../rounding.js";
import { readNumber, SPACE } from "../../typed_number.js";

/** @typedef {{name: string, label: string, hint: string, unit: string, mode: string, conversion: string, tick: boolean,
 *   limits: string}} InputField
 * @typedef {{fields: InputField[], heading: string, summary: string, tool: string, columns: string[],
 *   alternative: boolean}} FieldGroup
 * @typedef {Map<string, {low: number, high: number, whole: boolean}>} Limits
 * @typedef {Object<string, string | number>} Params what labels and hints name */

export const READ = "read-";
export const SENT = `${READ}form`; // tells an empty form that was sent from one that was not

const MIN_ROWS = 6;
const SPARE_ROWS = 2;
const MAX_ROWS = MAX_ITEMS + 1;
const MAX_QUOTED = 20;
const ENDS = new RegExp(`^${SPACE}+|${SPACE}+$`, "g");

/** `figures` are the fields that can be used, in the table's units; `errors` what is wrong, by field. */
export class FormInput {
  /** @param {Map<string, string>} raw @param {import("./degrees.js").Degrees} degrees */
  constructor(raw, degrees) {
    this.raw = raw;
    this.degrees = degrees;
    this.figures = new Map();
    this.errors = new Map();
  }

  get isSent() {
    return this.raw.has(SENT);
  }

  /** @param {string} name */
  asTyped(name) {
    return this.raw.get(READ + name) ?? "";
  }

  /** @param {string} name */
  text(name) {
    return this.asTyped(name).replace(ENDS, "");
  }

  /** @param {string} name */
  isTicked(name) {
    return this.text(name) === "1";
  }

  /** Reads the fields that stand in the form once; one left empty is simply not there.
   * @param {FieldGroup[]} groups @param {Limits} limits */
  parse(groups, limits) {
    for (const field of groups.filter(({ columns }) => !columns.length).flatMap(({ fields }) => fields)) {
      if (field.tick) {
        if (this.isTicked(field.name)) this.figures.set(field.name, "1");
      } else if (field.mode !== "text" && this.text(field.name)) {
        this.parseField(field, field.name, limits);
      }
    }
  }

  /** Keeps the figure typed under `name`, or what is wrong with it.
   * @param {InputField} field @param {string} name @param {Limits} limits */
  parseField({ name: own, label, conversion, limits: known }, name, limits) {
    const { low: least, high: most, whole } = limits.get(known || own);
    const [low, high] = [least, most].map((end) => Number(fixed(this.degrees.toTyped(conversion, end), 1)));
    const text = this.text(name);
    const { number, reason } = readNumber(text, low, high);
    if (reason) this.errors.set(name, errorOf(reason, label, text, sixDigits(low), fixed(high, 0)));
    else if (whole && !Number.isInteger(Number(number))) this.errors.set(name, errorOf("not-whole", label));
    else this.figures.set(name, this.degrees.toStored(conversion, number));
  }

  /** The number of the last row of a group with anything in it. @param {FieldGroup} group */
  lastRow({ fields }) {
    let last = MAX_ROWS;
    while (last && !fields.some(({ name }) => this.text(`${name}-${last}`))) last -= 1;
    return last;
  }

  /** The field for the page; in a row with its `number`.
   * @param {InputField} field @param {Params} params */
  bound(field, params, number = 0) {
    const name = number ? `${field.name}-${number}` : field.name;
    const ticked = this.isTicked(name) ? "1" : "";
    return {
      name: READ + name,
      label: number ? `${field.label} ${number}` : field.label,
      value: field.tick ? ticked : this.asTyped(name),
      hint: withParams(field.hint, params),
      unit: field.conversion && !number ? this.degrees.unit : field.unit,
      mode: field.mode,
      error: this.errors.get(name),
      tick: field.tick,
    };
  }
}

/** The groups for the page. Of alternatives the first is open where nothing stands in any.
 * @param {FormInput} found @param {FieldGroup[]} groups @param {Params} params */
export function boundGroups(found, groups, params) {
  const bound = groups.map((group) => {
    const fields = boundFields(found, group, params);
    const columns = group.columns.map((column) => withParams(column, params));
    return { ...group, fields, columns, open: fields.some(({ value }) => value) };
  });
  const alternatives = bound.filter(({ alternative }) => alternative);
  if (alternatives.length && !alternatives.some(({ open }) => open)) alternatives[0].open = true;
  return bound;
}

/** The fields of a group; in rows there are some to spare while there may be more.
 * @param {FormInput} found @param {FieldGroup} group @param {Params} params */
function boundFields(found, group, params) {
  if (!group.columns.length) return group.fields.map((field) => found.bound(field, params));
  const last = found.lastRow(group);
  const count = Math.max(MIN_ROWS, last, Math.min(last + SPARE_ROWS, MAX_ITEMS));
  const numbers = Array.from({ length: count }, (_, at) => at + 1);
  return numbers.flatMap((number) => group.fields.map((field) => found.bound(field, params, number)));
}

/** Why a figure cannot be used: `_reading_error.html` says it.
 * @param {string} reason @param {string} [label] @param {string} [typed] @param {string} [low]
 * @param {string} [high] */
export function errorOf(reason, label = "", typed = "", low = "", high = "") {
  return { reason, label, typed: [...typed].slice(0, MAX_QUOTED).join(""), low, high };
}

/** @param {string} text @param {Params} params */
function withParams(text, params) {
  return text.replace(/%\((\w+)\)s/g, (_, name) => String(params[name]));
}
