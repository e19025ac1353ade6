/* Calls saved in this browser, apart for each firm. Each answer, and each thing beside them such as the notes, carries the
   moment it was given or taken back, so that two tabs on one call are merged with nothing lost: of each thing the
   later value holds. Written before anything is sent. */

/** @typedef {Object<string, [value: string | null, at: number]>} Stamped by name, with the moment it was given or, as null,
 *   taken back
 * @typedef {{id: string, region: string, started: number, changed: number, answers: Stamped, caller: Stamped,
 *   beside: Object<string, [value: any, at: number]>, read: string[]}} Call
 * @typedef {{answers: Object<string, string>, caller: Object<string, string>, read: string[], ask: string, id: string,
 *   region: string}} ParsedQuery */

const PREFIX = `oven-call:${document.body.dataset.firm}:`;
const MAX_LINE_IDS_PER_VALUE = 25; // the server truncates longer values
const MAX_AGE_MS = 14 * 24 * 3600 * 1000;
const PARAMS = { region: "region", read: "call-read", ask: "call-ask", id: "call-id" };

/** A query string as answers in order, what is known of the caller, and what was read out.
 * @param {string} query @returns {ParsedQuery} */
export function parse(query) {
  /** @type {ParsedQuery} */
  const parsed = { answers: {}, caller: {}, read: [], ask: "", id: "", region: "" };
  for (const [name, value] of new URLSearchParams(query)) {
    if (name === PARAMS.read) parsed.read.push(...value.split(",").filter(Boolean));
    else if (name === PARAMS.ask) parsed.ask = value;
    else if (name === PARAMS.id) parsed.id = value;
    else if (name === PARAMS.region) parsed.region = value;
    else if (name.startsWith("call-")) parsed.caller[name] = value;
    else parsed.answers[name] = value;
  }
  return parsed;
}

/** @param {string} id @param {string} region @returns {Call} */
export function newCall(id, region) {
  return { id, region, started: Date.now(), changed: Date.now(), answers: {}, caller: {}, beside: {}, read: [] };
}

/** What is saved beside the answers: `notes`, `said`, `state` (held, ended or nothing), `contact` (a booking as far as it
   was typed), `form` (what makes it one booking however often it is sent), `sheet` (the reference of its job sheet).
 * @param {Call} call @param {string} name @returns {any} */
export function extra(call, name) {
  return call.beside?.[name]?.[0] ?? "";
}

/** @param {Call} call @param {Object<string, any>} extras @returns {Call} */
export function withExtras(call, extras, at = Date.now()) {
  /** @type {Call["beside"]} */
  const stamped = {};
  for (const [name, value] of Object.entries(extras)) {
    if (JSON.stringify(value) !== JSON.stringify(extra(call, name))) stamped[name] = [value, at];
  }
  return { ...call, beside: { ...call.beside, ...stamped }, changed: at };
}

/** The call with what changed between two states of its address.
 * @param {Call} call @param {ParsedQuery} from @param {ParsedQuery} to @returns {Call} */
export function withChange(call, from, to, at = Date.now()) {
  const changed = { ...call, answers: { ...call.answers }, caller: { ...call.caller }, changed: at };
  for (const kind of /** @type {const} */ (["answers", "caller"])) {
    for (const name of new Set([...Object.keys(from[kind]), ...Object.keys(to[kind])])) {
      const value = to[kind][name] ?? null;
      if (value !== (from[kind][name] ?? null)) changed[kind][name] = [value, at];
    }
  }
  changed.read = [...new Set([...call.read, ...to.read])];
  return changed;
}

/** Two states of one call: the later value of each thing, and every line that either has read.
 * @param {Call | null} a @param {Call | null} b @returns {Call | null} */
export function merge(a, b) {
  if (!a || !b) return a ?? b;
  const [older, newer] = a.changed <= b.changed ? [a, b] : [b, a];
  /** @param {"answers" | "caller" | "beside"} kind */
  const later = (kind) => {
    const all = { ...older[kind] };
    for (const [name, stamped] of Object.entries(newer[kind] ?? {}))
      if (!all[name] || stamped[1] >= all[name][1]) all[name] = stamped;
    return all;
  };
  return {
    ...newer,
    started: Math.min(a.started, b.started),
    answers: later("answers"),
    caller: later("caller"),
    beside: later("beside"),
    read: [...new Set([...older.read, ...newer.read])],
  };
}

/** @param {Call} call */
export function queryOf(call, ask = "") {
  const given = Object.entries(call.answers)
    .filter(([, [value]]) => value !== null)
    .sort((a, b) => a[1][1] - b[1][1]);
  const about = Object.entries(call.caller).filter(([, [value]]) => value !== null);
  const query = new URLSearchParams();
  if (call.region) query.set(PARAMS.region, call.region);
  for (const [name, [value]] of [...given, ...about]) query.set(name, value);
  query.set(PARAMS.id, call.id);
  for (let at = 0; at < call.read.length; at += MAX_LINE_IDS_PER_VALUE)
    query.append(PARAMS.read, call.read.slice(at, at + MAX_LINE_IDS_PER_VALUE).join(","));
  if (ask) query.set(PARAMS.ask, ask);
  return query.toString().replaceAll("%2C", ",");
}

/** Null where nothing is saved under that reference, or this browser saves nothing.
 * @param {string} id @returns {Call | null} */
export function load(id) {
  try {
    return JSON.parse(localStorage.getItem(PREFIX + id));
  } catch {
    return null;
  }
}

/** Merged with what another tab may have written meanwhile; null where this browser saves nothing.
 * @param {Call} call @returns {Call | null} */
export function save(call) {
  const whole = merge(load(call.id), call);
  try {
    localStorage.setItem(PREFIX + call.id, JSON.stringify(whole));
    return whole;
  } catch {
    return null;
  }
}

/** @param {string | null} key */
export function idOfKey(key) {
  return key?.startsWith(PREFIX) ? key.slice(PREFIX.length) : "";
}

/* Every saved call, those on hold first, then the latest; calls past their time are deleted here. */
export function savedCalls() {
  const calls = [];
  try {
    for (const key of Object.keys(localStorage).filter(idOfKey)) {
      const call = load(idOfKey(key));
      if (!call || Date.now() - call.changed > MAX_AGE_MS) localStorage.removeItem(key);
      else calls.push(call);
    }
  } catch {
    return [];
  }
  /** @type {Object<string, number>} */
  const weight = { held: 0, "": 1, ended: 2 };
  return calls.sort((a, b) => weight[extra(a, "state")] - weight[extra(b, "state")] || b.changed - a.changed);
}
