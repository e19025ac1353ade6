/* The pack as the engine reads it, opened from the JSON that `triage/knowledge/phone_pack.py` writes. Defaults are
   those of `triage/engine/pack.py`. Everything a trail can name is looked up in a Map, never in an object: a forged
   answer may be called "constructor". */

import { soften, spread } from "./frequency.js";

/** @typedef {import("./arithmetic.js").Row} Row
 * @typedef {Map<string, Set<string>>} Gate
 * @typedef {"normal" | "self-check" | "qualified" | "make-safe"} Band
 * @typedef {{id: string, options: string[], shares: Row}} Variant
 * @typedef {{id: string, levels: string[], sound: Row, never: number, given: string | null, only: Gate}} Condition
 * @typedef {{levels: Row, when: Set<string> | null}} Effect
 * @typedef {{id: string, kind: string, family: string, band: Band, calls: number, sessions: number, who: string,
 *   meanwhile: string, needs: Gate, favoured: Map<string, Map<string, number>>, effects: Map<string, Effect[]>,
 *   vague: number, price: string, minutes: string}} Fault
 * @typedef {{kind: string, quantity: string, spans: Map<string, [number, number]>, patterns: Map<string, string>,
 *   beyond: Map<string, [string, number]>}} Gauge
 * @typedef {{cause: string, effect: string, rate: number, chain: boolean}} Pair
 * @typedef {{id: string, options: string[], how: string, effort: number, picture: string, reports: string | null,
 *   says: Row[], needs: Gate, after: Gate, flags: Map<string, string>, first: boolean, firstAfter: Gate, task: string,
 *   gauge: Gauge | null}} Observation
 * @typedef {{id: string, level: "emergency" | "stop" | "caution", rank: number, signal: string, switches: string,
 *   who: string, calls: string[], signs: [string, string][], picture: string}} RedFlag
 * @typedef {{id: string, who: string, helps: Set<string>, cures: Set<string>, unsafeWith: Set<string>,
 *   notAfter: Set<string>, onlyAfter: Set<string>, gates: string[], heat: boolean, minutes: number, picture: string,
 *   outcome: string, also: string[], needs: Gate}} Task
 * @typedef {{option: string, answers: Map<string, string>, picture: string}} Complaint
 * @typedef {{id: string, shares: Map<string, Map<string, number>>, removes: Set<string>}} Region
 * @typedef {{questions: number, settled: number, worth: number, plausible: number, relevant: number}} Limits
 * @typedef {{version: string, variants: Map<string, Variant>, conditions: Map<string, Condition>,
 *   observations: Map<string, Observation>, faults: Map<string, Fault>, pairs: Pair[],
 *   redFlags: Map<string, RedFlag>, tasks: Map<string, Task>, complaints: Complaint[], lookAlikes: Set<string>[],
 *   retired: Map<string, string>, exits: [string, string, string][], limits: Limits}} Pack */

export const CANT_TELL = "cant-tell";
export const SCREEN = "danger";
export const OPENING = "complaint";
export const NONE_OF_THESE = "none";

/** Advice levels, least severe first. @type {Band[]} */
export const BANDS = ["normal", "self-check", "qualified", "make-safe"];

const LIMITS = { questions: 12, settled: 0.85, worth: 0.04, plausible: 0.01, relevant: 0.1 };

/** @param {Band} band */
export function severity(band) {
  return BANDS.indexOf(band);
}

/** Whether a red flag ends the questions. @param {RedFlag} flag */
export function stops(flag) {
  return flag.level !== "caution";
}

/** @param {object} told the parsed JSON @returns {{pack: Pack, regions: Map<string, Region>}} */
export function openPack(told) {
  const conditions = mapOf(told.conditions, openCondition);
  const pack = {
    version: told.version,
    variants: mapOf(told.variants, (variant) => variant),
    conditions,
    observations: mapOf(told.observations, (observation) => openObservation(observation, conditions)),
    faults: mapOf(told.faults, (fault) => openFault(fault, conditions)),
    pairs: told.pairs.map(([cause, effect, rate, chain]) => ({ cause, effect, rate, chain: Boolean(chain) })),
    redFlags: mapOf(told.red_flags, (flag) => ({ calls: [], signs: [], picture: "front", ...flag })),
    tasks: mapOf(told.tasks, openTask),
    complaints: (told.complaints ?? []).map((line) => ({ ...line, answers: mapOf(line.answers) })),
    lookAlikes: (told.look_alikes ?? []).map((group) => new Set(group)),
    retired: mapOf(told.retired),
    exits: told.exits,
    limits: { ...LIMITS, ...told.limits },
  };
  return { pack, regions: mapOf(told.regions, openRegion) };
}

function openCondition(condition) {
  const sound = spread(condition.sound, condition.never);
  return { given: null, ...condition, sound, only: gateOf(condition.only) };
}

function openObservation(observation, conditions) {
  return {
    reports: null,
    first: false,
    task: "",
    ...observation,
    says: tableOf(observation.says, conditions.get(observation.reports)),
    needs: gateOf(observation.needs),
    after: gateOf(observation.after),
    flags: mapOf(observation.flags),
    firstAfter: gateOf(observation.first_after),
    gauge: observation.gauge ? openGauge(observation.gauge) : null,
  };
}

function openGauge(gauge) {
  return { ...gauge, spans: mapOf(gauge.spans), patterns: mapOf(gauge.patterns), beyond: mapOf(gauge.beyond) };
}

/* Rows in full, or `[trust, never, letters of each level]`. */
function tableOf(says, condition) {
  if (!says || typeof says[0] !== "number") return says ?? [];
  const [trust, never, letters] = says;
  return soften(
    letters.map((row) => spread(row, never)),
    condition.sound,
    trust,
  );
}

function openFault(fault, conditions) {
  return {
    sessions: 1,
    vague: 0,
    price: "p0",
    minutes: "0",
    ...fault,
    needs: gateOf(fault.needs),
    favoured: mapOf(fault.favoured, mapOf),
    effects: effectsOf(fault, conditions),
  };
}

/* By condition: a fault may claim one thing on some options of a variant and another on the rest. */
function effectsOf(fault, conditions) {
  const effects = new Map();
  for (const [condition, row, ...when] of fault.effects) {
    const levels = spread(row, conditions.get(condition).never);
    const effect = { levels, when: when.length ? new Set(when) : null };
    effects.set(condition, [...(effects.get(condition) ?? []), effect]);
  }
  return effects;
}

function openTask(task) {
  return {
    also: [],
    ...task,
    helps: new Set(task.helps),
    cures: new Set(task.cures),
    unsafeWith: new Set(task.unsafe_with),
    notAfter: new Set(task.not_after),
    onlyAfter: new Set(task.only_after),
    needs: gateOf(task.needs),
  };
}

function openRegion(region) {
  return { ...region, shares: mapOf(region.shares, mapOf), removes: new Set(region.removes) };
}

function gateOf(gate) {
  return mapOf(gate, (options) => new Set(options));
}

/* An object's entries in their order; a shape among them learns its id. */
function mapOf(object, open = (value) => value) {
  return new Map(
    Object.entries(object ?? {}).map(([id, value]) => {
      const opened = open(value);
      const isShape = opened && Object.getPrototypeOf(opened) === Object.prototype;
      return [id, isShape ? { id, ...opened } : opened];
    }),
  );
}
