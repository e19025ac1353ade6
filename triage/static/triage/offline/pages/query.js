/* What an address says, and the addresses of the other pages: as `triage/query.py` and
   `triage/check_pages/links.py`. */

import { OPENING } from "../engine/pack.js";

/** @typedef {[name: string, value: string][]} Pairs
 * @typedef {{pairs: Pairs, region: string | null, truncated: boolean, typed: Map<string, string>, firm: string}}
 *   ParsedQuery `typed` is what stands in fields of a form beside the answers */

const REGION = "region";
const FIRM = "firm";
const TYPED = ["cost-", "read-"];
const MAX_PAIRS = 1000;
const MAX_VALUE_LENGTH = 800;

/** The pairs of a query string (without its question mark), in order; never throws.
 * @param {string} query @returns {ParsedQuery} */
export function parseQuery(query) {
  const pieces = query.split("&");
  const pairs = pieces.slice(0, MAX_PAIRS).filter(Boolean).map(pairOf);
  /** @param {string} wanted */
  const lastOf = (wanted) => pairs.filter(([name]) => name === wanted).at(-1)?.[1];
  /** @param {[string, string]} pair */
  const isTyped = ([name]) => TYPED.some((begins) => name.startsWith(begins));
  return {
    pairs: pairs.filter((pair) => ![REGION, FIRM].includes(pair[0]) && !isTyped(pair)),
    region: lastOf(REGION) ?? null,
    truncated: pieces.length > MAX_PAIRS,
    typed: new Map(pairs.filter(isTyped)),
    firm: lastOf(FIRM) ?? "",
  };
}

/** @param {string} piece @returns {[string, string]} */
function pairOf(piece) {
  const at = piece.indexOf("=");
  return at < 0 ? [plainText(piece), ""] : [plainText(piece.slice(0, at)), plainText(piece.slice(at + 1))];
}

/** Percent signs that stand for no byte stay as they are; bytes that are no UTF-8 become replacement signs.
 * @param {string} text */
function plainText(text) {
  if (!/[+%\u0080-\uffff]/.test(text)) return text.slice(0, MAX_VALUE_LENGTH);
  /** @type {number[]} */
  const bytes = [];
  for (const piece of text.replaceAll("+", " ").split(/(%[0-9a-fA-F]{2})/)) {
    if (/^%[0-9a-fA-F]{2}$/.test(piece)) bytes.push(parseInt(piece.slice(1), 16));
    else bytes.push(...new TextEncoder().encode(piece));
  }
  const decoded = new TextDecoder("utf-8", { ignoreBOM: true }).decode(new Uint8Array(bytes));
  return [...decoded].slice(0, MAX_VALUE_LENGTH).join("");
}

/** Addresses that carry the good answers of this check, its region and its firm, and nothing else. */
export class Links {
  /** @param {Object<string, string>} paths by page @param {string} region @param {Map<string, string>} answers
   * @param {string} firm its name in addresses, or nothing */
  constructor(paths, region, answers, firm) {
    this.paths = paths;
    this.region = region;
    this.answers = answers;
    this.firm = firm;
  }

  /** @param {Pairs} more @param {string[]} without */
  step(more = [], without = []) {
    return this.to(this.paths.step, more, without);
  }

  danger() {
    return this.to(this.paths.danger);
  }

  /** @param {string} task @param {Pairs} more */
  task(task, more = []) {
    return this.to(this.taskPath(task), more);
  }

  /** The address without answers, for a form that carries them itself. @param {string} task */
  taskPath(task) {
    return this.paths.task.replace("*", task);
  }

  /** @param {string} kind @param {Pairs} more */
  reading(kind, more = []) {
    return this.to(this.readingPath(kind), more);
  }

  /** @param {string} kind */
  readingPath(kind) {
    return this.paths.reading.replace("*", kind);
  }

  /** The check, or the first page for somebody who has not said what is wrong yet. @param {Pairs} more */
  continueUrl(more = []) {
    return this.answers.has(OPENING) ? this.step(more) : this.start(more);
  }

  summary() {
    return this.to(this.paths.summary);
  }

  costs() {
    return this.to(this.paths.costs);
  }

  /** @param {string} reason */
  leave(reason) {
    return this.to(this.paths.exit.replace("*", reason));
  }

  /** The first page afresh: the region goes along, the answers do not. */
  restart() {
    return new Links(this.paths, this.region, new Map(), this.firm).start();
  }

  /** The first page with the answers kept. @param {Pairs} more */
  start(more = []) {
    return this.to(this.paths.start, more);
  }

  /** @param {string} region */
  withRegion(region) {
    return new Links(this.paths, region, this.answers, this.firm).start();
  }

  handOver() {
    return this.to(this.paths.hand_over);
  }

  /** What goes along with the answers and is none. @returns {[string, string][]} */
  contextParams() {
    /** @type {[string, string]} */
    const region = [REGION, this.region];
    return this.firm ? [region, [FIRM, this.firm]] : [region];
  }

  /** @param {string} path @param {Pairs} more @param {string[]} without */
  to(path, more = [], without = []) {
    const kept = new Map([...this.answers].filter(([name]) => !without.includes(name)));
    for (const [name, answer] of more) kept.set(name, answer);
    const pairs = [...this.contextParams(), ...kept];
    return `${path}?${pairs.map(([name, answer]) => `${quoted(name)}=${quoted(answer)}`).join("&")}`;
  }
}

/** @param {string} text */
function quoted(text) {
  /** @param {string} sign */
  const inHex = (sign) => `%${sign.charCodeAt(0).toString(16).toUpperCase()}`;
  return encodeURIComponent(text)
    .replace(/[!'()*]/g, inHex)
    .replaceAll("%2F", "/");
}
