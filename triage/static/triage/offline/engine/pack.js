/* The pack as the engine reads it, opened from the JSON that `triage/knowledge/offline_pack.py` writes. Defaults are
   those of `triage/engine/pack.py`. Everything a trail can name is looked up in a Map, never in an object: a forged
   answer may be called "constructor". */

import { mixWithBaseline, distribution } from "./frequency.js";

/** @typedef {any} Json what JSON.parse gives
 * @typedef {import("./arithmetic.js").Row} Row
 * @typedef {Map<string, Set<string>>} Gate
 * @typedef {"normal" | "self-check" | "qualified" | "make-safe"} Band
 * @typedef {{id: string, options: string[], shares: Row}} Variant
 * @typedef {{id: string, levels: string[], baseline: Row, floor: number, parent: string | null,
 *   allowedOn: Gate}} Condition
 * @typedef {{levels: Row, when: Set<string> | null}} Effect
 * @typedef {{id: string, kind: string, family: string, band: Band, callsPer1000: number, onlineRatio: number,
 *   performedBy: string, interimUse: string, requiresVariant: Gate, rateMultipliers: Map<string, Map<string, number>>,
 *   effects: Map<string, Effect[]>, noiseShare: number, priceClass: string, repairMinutes: string}} Fault
 * @typedef {{kind: string, quantity: string, intervals: Map<string, [number, number]>, patterns: Map<string, string>,
 *   overrides: Map<string, [string, number]>}} MeasurementSpec
 * @typedef {{cause: string, effect: string, ratePer1000: number, causal: boolean}} FaultPair
 * @typedef {{id: string, options: string[], method: string, effortSeconds: number, picture: string,
 *   reports: string | null, answerProbabilities: Row[], requiresVariant: Gate, requiresAnswers: Gate,
 *   flags: Map<string, string>, urgent: boolean, urgentAfter: Gate, task: string,
 *   measurement: MeasurementSpec | null}} Observation
 * @typedef {{id: string, level: "emergency" | "stop" | "caution", rank: number, signal: string, switches: string,
 *   contact: string, phoneNumbers: string[], signs: [string, string][], picture: string}} RedFlag
 * @typedef {{id: string, competence: string, helps: Set<string>, cures: Set<string>, unsafeWith: Set<string>,
 *   notAfter: Set<string>, onlyAfter: Set<string>, gates: string[], needsHeat: boolean, minutes: number,
 *   picture: string, outcome: string, furtherOutcomes: string[], requiresVariant: Gate}} Task
 * @typedef {{option: string, answers: Map<string, string>, picture: string}} Complaint
 * @typedef {{id: string, shares: Map<string, Map<string, number>>, removedTasks: Set<string>}} Region
 * @typedef {{maxQuestions: number, stopProbability: number, minBits: number, plausibleProbability: number,
 *   relevantProbability: number}} Limits
 * @typedef {{version: string, variants: Map<string, Variant>, conditions: Map<string, Condition>,
 *   observations: Map<string, Observation>, faults: Map<string, Fault>, faultPairs: FaultPair[],
 *   redFlags: Map<string, RedFlag>, tasks: Map<string, Task>, complaints: Complaint[], lookAlikes: Set<string>[],
 *   retired: Map<string, string>, outOfScope: [string, string, string][], limits: Limits}} Pack */

export const CANT_TELL = "cant-tell";
export const SCREEN = "danger";
export const OPENING = "complaint";
export const NONE_OF_THESE = "none";

/** Advice levels, least severe first. @type {Band[]} */
export const BANDS = ["normal", "self-check", "qualified", "make-safe"];

/** @type {Limits} */
const DEFAULT_LIMITS = {
  maxQuestions: 12,
  stopProbability: 0.85,
  minBits: 0.04,
  plausibleProbability: 0.01,
  relevantProbability: 0.1,
};

/** @param {Band} band */
export function severity(band) {
  return BANDS.indexOf(band);
}

/** Whether a red flag ends the questions. @param {RedFlag} flag */
export function stops(flag) {
  return flag.level !== "caution";
}

/** @param {Json} packed @returns {{pack: Pack, regions: Map<string, Region>}} */
export function openPack(packed) {
  const conditions = mapOf(packed.conditions, openCondition);
  const pack = {
    version: packed.version,
    variants: mapOf(packed.variants, (variant) => variant),
    conditions,
    observations: mapOf(packed.observations, (observation) => openObservation(observation, conditions)),
    faults: mapOf(packed.faults, (fault) => openFault(fault, conditions)),
    faultPairs: packed.fault_pairs.map(openFaultPair),
    redFlags: mapOf(packed.red_flags, openRedFlag),
    tasks: mapOf(packed.tasks, openTask),
    complaints: (packed.complaints ?? []).map((/** @type {Json} */ line) => ({
      ...line,
      answers: mapOf(line.answers),
    })),
    lookAlikes: (packed.look_alikes ?? []).map((/** @type {string[]} */ group) => new Set(group)),
    retired: mapOf(packed.retired),
    outOfScope: packed.out_of_scope,
    limits: { ...DEFAULT_LIMITS, ...camelCased(packed.limits) },
  };
  return { pack, regions: mapOf(packed.regions, openRegion) };
}

/** @param {Json} condition @returns {Condition} */
function openCondition(condition) {
  const baseline = distribution(condition.baseline, condition.floor);
  return { parent: null, ...condition, baseline, allowedOn: gateOf(condition.allowed_on) };
}

/** @param {Json} observation @param {Map<string, Condition>} conditions @returns {Observation} */
function openObservation(observation, conditions) {
  const { answer_probabilities: table, measurement } = observation;
  return {
    reports: null,
    urgent: false,
    task: "",
    ...camelCased(observation),
    answerProbabilities: tableOf(table, conditions.get(observation.reports)),
    requiresVariant: gateOf(observation.requires_variant),
    requiresAnswers: gateOf(observation.requires_answers),
    flags: mapOf(observation.flags),
    urgentAfter: gateOf(observation.urgent_after),
    measurement: measurement ? openMeasurement(measurement) : null,
  };
}

/** @param {Json} measurement @returns {MeasurementSpec} */
function openMeasurement(measurement) {
  const { intervals, patterns, overrides } = measurement;
  return { ...measurement, intervals: mapOf(intervals), patterns: mapOf(patterns), overrides: mapOf(overrides) };
}

/** Rows in full, or `[trust, floor, letters of each level]`.
 * @param {Json} table @param {Condition} condition @returns {Row[]} */
function tableOf(table, condition) {
  if (!table || typeof table[0] !== "number") return table ?? [];
  const [trust, floor, letters] = table;
  return mixWithBaseline(
    letters.map((/** @type {string} */ row) => distribution(row, floor)),
    condition.baseline,
    trust,
  );
}

/** @param {Json} fault @param {Map<string, Condition>} conditions @returns {Fault} */
function openFault(fault, conditions) {
  return {
    onlineRatio: 1,
    noiseShare: 0,
    priceClass: "p0",
    repairMinutes: "0",
    ...camelCased(fault),
    requiresVariant: gateOf(fault.requires_variant),
    rateMultipliers: mapOf(fault.rate_multipliers, mapOf),
    effects: effectsOf(fault, conditions),
  };
}

/** @param {Json} pair @returns {FaultPair} */
function openFaultPair([cause, effect, ratePer1000, causal]) {
  return { cause, effect, ratePer1000, causal: Boolean(causal) };
}

/** @param {Json} flag @returns {RedFlag} */
function openRedFlag(flag) {
  return { phoneNumbers: [], signs: [], picture: "front", ...camelCased(flag) };
}

/** By condition: a fault may claim one thing on some options of a variant and another on the rest.
 * @param {Json} fault @param {Map<string, Condition>} conditions @returns {Map<string, Effect[]>} */
function effectsOf(fault, conditions) {
  const effects = new Map();
  for (const [condition, row, ...when] of fault.effects) {
    const levels = distribution(row, conditions.get(condition).floor);
    const effect = { levels, when: when.length ? new Set(when) : null };
    effects.set(condition, [...(effects.get(condition) ?? []), effect]);
  }
  return effects;
}

/** @param {Json} task @returns {Task} */
function openTask(task) {
  return {
    furtherOutcomes: [],
    ...camelCased(task),
    helps: new Set(task.helps),
    cures: new Set(task.cures),
    unsafeWith: new Set(task.unsafe_with),
    notAfter: new Set(task.not_after),
    onlyAfter: new Set(task.only_after),
    requiresVariant: gateOf(task.requires_variant),
  };
}

/** @param {Json} region @returns {Region} */
function openRegion(region) {
  return { ...region, shares: mapOf(region.shares, mapOf), removedTasks: new Set(region.removed_tasks) };
}

/** Python's field names as JavaScript writes them: `price_class` to `priceClass`.
 * @param {Json} shape @returns {Json} */
function camelCased(shape) {
  /** @param {[string, Json]} entry */
  const named = ([name, value]) => [name.replace(/_(.)/g, (_, letter) => letter.toUpperCase()), value];
  return Object.fromEntries(Object.entries(shape ?? {}).map(named));
}

/** @param {Json} gate @returns {Gate} */
function gateOf(gate) {
  return mapOf(gate, (options) => new Set(options));
}

/** An object's entries in their order; a shape among them learns its id.
 * @template T @param {Json} object @param {(value: Json) => T} open @returns {Map<string, T>} */
function mapOf(object, open = (value) => value) {
  return new Map(
    Object.entries(object ?? {}).map(([id, value]) => {
      const opened = open(value);
      const isShape = opened && Object.getPrototypeOf(opened) === Object.prototype;
      return [id, isShape ? { id, ...opened } : opened];
    }),
  );
}
