/* Calls saved in this browser, apart for each firm. Each answer, and each thing beside them such as the notes, carries the
   moment it was given or taken back, so that two tabs on one call are merged with nothing lost: of each thing the
   later value holds. Written before anything is sent. */

const PREFIX = `oven-call:${document.body.dataset.firm}:`;
const MAX_LINE_IDS_PER_VALUE = 25; // the server truncates longer values
const MAX_AGE_MS = 14 * 24 * 3600 * 1000;
const PARAMS = { region: "region", read: "call-read", ask: "call-ask", id: "call-id" };

/* A query string as answers in order, what is known of the caller, and what was read out. */
export function parse(query) {
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

export function newCall(id, region) {
  return { id, region, started: Date.now(), changed: Date.now(), answers: {}, caller: {}, beside: {}, read: [] };
}

/* What is saved beside the answers: `notes`, `said`, `state` (held, ended or nothing), `contact` (a booking as far as it
   was typed), `form` (what makes it one booking however often it is sent), `sheet` (the reference of its job sheet). */
export function extra(call, name) {
  return call.beside?.[name]?.[0] ?? "";
}

export function withExtras(call, extras, at = Date.now()) {
  const entries = Object.entries(extras).filter(
    ([name, value]) => JSON.stringify(value) !== JSON.stringify(extra(call, name)),
  );
  const stamped = Object.fromEntries(entries.map(([name, value]) => [name, [value, at]]));
  return { ...call, beside: { ...call.beside, ...stamped }, changed: at };
}

/* The call with what changed between two states of its address. */
export function withChange(call, from, to, at = Date.now()) {
  const changed = { ...call, answers: { ...call.answers }, caller: { ...call.caller }, changed: at };
  for (const kind of ["answers", "caller"]) {
    for (const name of new Set([...Object.keys(from[kind]), ...Object.keys(to[kind])])) {
      const value = to[kind][name] ?? null;
      if (value !== (from[kind][name] ?? null)) changed[kind][name] = [value, at];
    }
  }
  changed.read = [...new Set([...call.read, ...to.read])];
  return changed;
}

/* Two states of one call: the later value of each thing, and every line that either has read. */
export function merge(a, b) {
  if (!a || !b) return a ?? b;
  const [older, newer] = a.changed <= b.changed ? [a, b] : [b, a];
  const later = (kind) => {
    const all = { ...older[kind] };
    for (const [name, entry] of Object.entries(newer[kind] ?? {}))
      if (!all[name] || entry[1] >= all[name][1]) all[name] = entry;
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

export function queryOf(call, ask = "") {
  const entries = Object.entries(call.answers)
    .filter(([, [value]]) => value !== null)
    .sort((a, b) => a[1][1] - b[1][1]);
  const about = Object.entries(call.caller).filter(([, [value]]) => value !== null);
  const query = new URLSearchParams();
  if (call.region) query.set(PARAMS.region, call.region);
  for (const [name, [value]] of [...entries, ...about]) query.set(name, value);
  query.set(PARAMS.id, call.id);
  for (let at = 0; at < call.read.length; at += MAX_LINE_IDS_PER_VALUE)
    query.append(PARAMS.read, call.read.slice(at, at + MAX_LINE_IDS_PER_VALUE).join(","));
  if (ask) query.set(PARAMS.ask, ask);
  return query.toString().replaceAll("%2C", ",");
}

/* Null where nothing is saved under that reference, or this browser saves nothing. */
export function load(id) {
  try {
    return JSON.parse(localStorage.getItem(PREFIX + id));
  } catch {
    return null;
  }
}

/* Merged with what another tab may have written meanwhile; null where this browser saves nothing. */
export function save(call) {
  const whole = merge(load(call.id), call);
  try {
    localStorage.setItem(PREFIX + call.id, JSON.stringify(whole));
    return whole;
  } catch {
    return null;
  }
}

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
  const weight = { held: 0, "": 1, ended: 2 };
  return calls.sort((a, b) => weight[extra(a, "state")] - weight[extra(b, "state")] || b.changed - a.changed);
}
