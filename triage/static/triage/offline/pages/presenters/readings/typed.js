/* What was typed into a reading's form: each field read by itself, kept as typed, with what is wrong with it. As
   `triage/check_pages/presenters/readings/typed.py`. */

import { fixed, sixDigits } from "../../rounding.js";
import { SPACE, readNumber } from "../../typed_number.js";
import { reasonSentence } from "./reasons.js";

/** @typedef {{name: string, label: string, hint: string, unit: string, mode: string, kept: (typed: string) => string,
 *   shown: (kept: number) => number}} Blank one field to fill; `kept` and `shown` where it is typed in another unit */

export const READ = "read-";
export const SENT = `${READ}form`; // tells an empty form that was sent from one that was not

const MOST_QUOTED = 20;
const ENDS = new RegExp(`^${SPACE}+|${SPACE}+$`, "g");
const asItIs = (value) => value;

/** @returns {Blank} */
export function blankFor(name, label, hint = "", unit = "", mode = "decimal", kept = asItIs, shown = asItIs) {
  return { name, label, hint, unit, mode, kept, shown };
}

/** The beginning of what was typed, for a sentence about it. @param {string} text */
export function quotedStart(text) {
  return [...text].slice(0, MOST_QUOTED).join("");
}

/** `figures` are the fields that can be used, in the table's units; `problems` the sentences by field. */
export class Typed {
  constructor(visit) {
    Object.assign(this, { visit, raw: visit.typed, figures: new Map(), problems: new Map() });
  }

  get sent() {
    return this.raw.has(SENT);
  }

  asTyped(name) {
    return this.raw.get(READ + name) ?? "";
  }

  text(name) {
    return this.asTyped(name).replace(ENDS, "");
  }

  ticked(name) {
    return this.text(name) === "1";
  }

  /** Reads these fields; one left empty is simply not there. */
  read(blanks, table) {
    for (const blank of blanks) {
      if (this.text(blank.name)) this.put(blank, blank.name, table.get(blank.name));
    }
  }

  /** Keeps the figure typed under `name`, or what is wrong with it. */
  put(blank, name, limits) {
    const text = this.text(name);
    const [low, high] = [limits.low, limits.high].map((end) => Number(fixed(blank.shown(end), 1)));
    const found = readNumber(text, low, high);
    const reason = found.reason || (limits.whole && !Number.isInteger(Number(found.number)) ? "not-whole" : "");
    if (!reason) {
      this.figures.set(name, blank.kept(found.number));
      return;
    }
    const words = { typed: quotedStart(text), low: sixDigits(low), high: fixed(high, 0), label: blank.label };
    this.problems.set(name, reasonSentence(this.visit, reason, words));
  }

  /** The field for the page, with what was typed and what is wrong with it. */
  fieldOf({ name: own, label, hint, unit, mode }, name = own) {
    return { name: READ + name, label, value: this.asTyped(name), hint, unit, mode, problem: this.problems.get(name) };
  }

  tick(name, label, hint = "") {
    return { name: READ + name, label, value: this.ticked(name) ? "1" : "", hint, tick: true };
  }
}
