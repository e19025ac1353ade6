/* Fills the site's own templates. They come from the server taken apart by Django itself
   (`triage/offline/page_templates.py`): a string is text, a list is a tag. Everything filled in is escaped. */

/** @typedef {string | [tag: string, ...parts: any[]]} Node
 * @typedef {Object<string, any>} Scope what the templates may name
 * @typedef {{templates: Object<string, Node[]>, blocks?: Object<string, Node[]>, isPlain?: boolean}} Sources `blocks` are those of the page
 *   in hand; a block it does not have is as the base says */

const ESCAPED = new Map([
  ["&", "&amp;"],
  ["<", "&lt;"],
  [">", "&gt;"],
  ['"', "&quot;"],
  ["'", "&#x27;"],
]);

/** @type {Object<string, (sources: Sources, scope: Scope, parts: any[]) => string>} */
const TAGS = {
  v: (sources, scope, [expression]) => (sources.isPlain ? asText : escaped)(evaluate(expression, scope)),
  i: (sources, scope, branches) => fillNodes(sources, scope, chosenBranch(branches, scope)),
  f: (sources, scope, [names, expression, nodes]) =>
    fillLoop(sources, scope, names, evaluate(expression, scope), nodes),
  w: (sources, scope, [more, nodes]) => fillNodes(sources, scopeWith(scope, more), nodes),
  u: (sources, scope, [name, more = {}]) => fillNodes(sources, scopeWith(scope, more), sources.templates[name]),
  b: (sources, scope, [name, nodes]) => fillNodes(sources, scope, sources.blocks?.[name] ?? nodes),
  n: (sources, scope, [expression, which, ...forms]) => {
    return fillNodes(sources, scope, formFor(evaluate(expression, scope), which, forms));
  },
  r: (sources, scope, [expression, most, width]) => {
    return String(Math.round((Number(evaluate(expression, scope)) / most) * width));
  },
  s: (sources, scope, [name, nodes]) => {
    scope[name] = new FilledText(fillNodes(sources, scope, nodes));
    return "";
  },
};

/* A text that a template made itself, for a sentence further on: it is escaped already. */
class FilledText {
  /** @param {string} text */
  constructor(text) {
    this.text = text;
  }
}

/** @type {Object<string, (value: any, ...more: string[]) => unknown>} */
const FILTERS = {
  lower: (text) => text.toLowerCase(),
  capfirst: (text) => text.slice(0, 1).toUpperCase() + text.slice(1),
  length: (list) => list.length,
  join: (list, between) => list.join(between),
};

/** @type {Object<string, (...sides: any[]) => boolean>} */
const TESTS = {
  or: (one, other) => isTruthy(one) || isTruthy(other),
  and: (one, other) => isTruthy(one) && isTruthy(other),
  not: (one) => !isTruthy(one),
  "==": (one, other) => one === other,
  "!=": (one, other) => one !== other,
  "<=": (one, other) => one <= other,
  ">=": (one, other) => one >= other,
  "<": (one, other) => one < other,
  ">": (one, other) => one > other,
};

/** The text of nodes; `scope` holds what the templates may name.
 * @param {Sources} sources @param {Scope} scope @param {Node[]} nodes @returns {string} */
export function fillNodes(sources, scope, nodes) {
  let text = "";
  for (const node of nodes) {
    text += typeof node === "string" ? node : TAGS[node[0]](sources, scope, node.slice(1));
  }
  return text;
}

/** What a template says as plain text, in which nothing is escaped; named without ".txt".
 * @param {Sources} sources @param {string} template @param {object} facts @returns {string} */
export function plainText(sources, template, facts) {
  return fillNodes({ ...sources, isPlain: true }, scopeOf(facts), sources.templates[`${template}.txt`]);
}

/** A scope with nothing in it but these values. @param {Scope} values @returns {Scope} */
export function scopeOf(values) {
  return Object.assign(Object.create(null), values);
}

/** The form of a sentence for `count`: `which` has one digit for each count from nothing up, the last for all above.
 * @template Form @param {number} count @param {string} which @param {Form[]} forms @returns {Form} */
function formFor(count, which, forms) {
  return forms[Number(which[Math.min(count, which.length - 1)])];
}

/** @param {unknown} value */
function asText(value) {
  return value instanceof FilledText ? value.text : String(value ?? "");
}

/** @param {unknown} value */
function escaped(value) {
  if (value instanceof FilledText) return value.text;
  return asText(value).replace(/[&<>"']/g, (sign) => ESCAPED.get(sign));
}

/** "page.heading" is looked up, "page.names|join:; " passed through a filter, "=some text" is meant as it stands.
 * @param {unknown} expression @param {Scope} scope @returns {any} */
function evaluate(expression, scope) {
  if (typeof expression !== "string") return expression;
  if (expression[0] === "=") return expression.slice(1);
  const [path, ...filters] = expression.split("|");
  const [first, ...rest] = path.split(".");
  const found = rest.reduce((value, name) => value?.[name], scope[first]);
  return filters.reduce((value, filter) => {
    const [name, ...texts] = filter.split(":");
    return FILTERS[name](value, ...texts);
  }, found);
}

/** @param {unknown} expression @param {Scope} scope @returns {any} */
function evaluateTest(expression, scope) {
  if (!Array.isArray(expression)) return evaluate(expression, scope);
  const [name, ...sides] = expression;
  return TESTS[name](...sides.map((side) => evaluateTest(side, scope)));
}

/** True as the templates see it: an empty list is nothing. @param {unknown} value */
function isTruthy(value) {
  return Array.isArray(value) ? value.length > 0 : Boolean(value);
}

/** Test and nodes by turns; nodes without a test stand last.
 * @param {any[]} branches @param {Scope} scope @returns {Node[]} */
function chosenBranch(branches, scope) {
  for (let at = 0; at + 1 < branches.length; at += 2) {
    if (isTruthy(evaluateTest(branches[at], scope))) return branches[at + 1];
  }
  return branches.length % 2 ? branches[branches.length - 1] : [];
}

/** @param {Scope} scope @param {Object<string, unknown>} more @returns {Scope} */
function scopeWith(scope, more) {
  const inner = Object.create(scope);
  for (const [name, expression] of Object.entries(more)) inner[name] = evaluate(expression, scope);
  return inner;
}

/** @param {Sources} sources @param {Scope} scope @param {string[]} names @param {Iterable<any> | null} list
 * @param {Node[]} nodes */
function fillLoop(sources, scope, names, list, nodes) {
  const inner = Object.create(scope);
  /** @param {any} item @param {number} at */
  const fillOne = (item, at) => {
    inner.forloop = { counter: at + 1 };
    if (names.length === 1) inner[names[0]] = item;
    else names.forEach((name, place) => (inner[name] = item[place]));
    return fillNodes(sources, inner, nodes);
  };
  return [...(list ?? [])].map(fillOne).join("");
}
