/* What outranks any probability: red flags, and which tasks may be offered. Rules over answers, never odds.

   The only chance used here is whether a fault is still plausible at all, and it can only take a task away. */

import { sumOf } from "./arithmetic.js";
import { stops } from "./pack.js";
import { flagsRaisedBy } from "./readings/evidence.js";
import { ruledOut } from "./answers.js";

/** @typedef {import("./belief.js").Answers} Answers
 * @typedef {import("./belief.js").Belief} Belief
 * @typedef {import("./pack.js").Pack} Pack
 * @typedef {import("./pack.js").RedFlag} RedFlag
 * @typedef {import("./pack.js").Task} Task */

const ORDINARY = "ordinary";
const FINDING_OUT = 0.1;

/** The red flags these answers raise, the first to act on first.
 * @param {Pack} pack @param {Answers} answers @returns {RedFlag[]} */
export function raisedFlags(pack, answers) {
  const known = [...answers].filter(([o]) => pack.observations.has(o));
  const ids = new Set(known.flatMap(([o, answer]) => flagsRaisedBy(pack.observations.get(o), answer)));
  const flags = [...pack.redFlags.values()].filter((flag) => ids.has(flag.id));
  return flags.sort((one, other) => one.rank - other.rank);
}

/** @param {RedFlag[]} flags */
export function endsCheck(flags) {
  return flags.some(stops);
}

/** Tasks an ordinary person may do now, the most useful first: each is safe under every fault still plausible, helps
 * with one, and nothing that was said forbids it. None at all once a flag ended the check.
 * @param {import("./pack.js").Region} region @param {Belief} belief @param {Answers} answers @returns {Task[]} */
export function offeredTasks(region, belief, answers) {
  const allowed = mayBeOffered(region, belief, answers, [...belief.model.pack.tasks.values()]);
  const uses = new Map(allowed.map((task) => [task, useOf(belief, task)]));
  return allowed.sort((one, other) => uses.get(other) - uses.get(one));
}

/** Those of `tasks` that hold to every rule of `offeredTasks`, in the order given.
 * @param {import("./pack.js").Region} region @param {Belief} belief @param {Answers} answers @param {Task[]} tasks */
export function mayBeOffered(region, belief, answers, tasks) {
  const { pack } = belief.model;
  const flags = raisedFlags(pack, answers);
  if (!tasks.length || endsCheck(flags)) return [];
  const raised = flags.map((flag) => flag.id);
  const plausible = plausibleFaults(belief);
  /** @param {Task} task */
  const isSafe = (task) =>
    task.competence === ORDINARY &&
    !region.removedTasks.has(task.id) &&
    !meets(task.unsafeWith, plausible) &&
    !meets(task.notAfter, raised) &&
    (!task.onlyAfter.size || meets(task.onlyAfter, raised)) &&
    !(task.needsHeat && flags.length) &&
    !ruledOut(task.requiresVariant, answers);
  /** @param {Task} task */
  const isUseful = (task) =>
    meets(task.helps, plausible) && chanceOfAny(belief, task.helps) >= pack.limits.relevantProbability;
  return tasks.filter((task) => isSafe(task) && isUseful(task));
}

/** What nobody is to look for now: the outcomes of tasks that a caution or a plausible fault forbids.
 * @param {Belief} belief @param {Answers} answers @returns {Set<string>} */
export function forbiddenLooks(belief, answers) {
  const { pack } = belief.model;
  const raised = raisedFlags(pack, answers).map((flag) => flag.id);
  const plausible = plausibleFaults(belief);
  /** @param {Task} task */
  const isForbidden = (task) => meets(task.notAfter, raised) || meets(task.unsafeWith, plausible);
  const outcomes = [...pack.tasks.values()].filter(isForbidden).map((task) => task.outcome);
  return new Set(outcomes.filter((outcome) => pack.observations.get(outcome)?.method === "look"));
}

/** @param {Belief} belief */
function plausibleFaults(belief) {
  const least = belief.model.pack.limits.plausibleProbability;
  return [...belief.faults].filter(([, chance]) => chance >= least).map(([fault]) => fault);
}

/** @param {Set<string>} set @param {string[]} list */
function meets(set, list) {
  return list.some((item) => set.has(item));
}

/** The chances of some faults together, added in the pack's order.
 * @param {Belief} belief @param {Set<string>} faults */
function chanceOfAny(belief, faults) {
  return sumOf([...belief.faults].filter(([fault]) => faults.has(fault)).map(([, chance]) => chance));
}

/** Chance that the task helps, per minute. A cure counts in full, a task that only finds something out in part.
 * @param {Belief} belief @param {Task} task */
function useOf(belief, task) {
  const cured = chanceOfAny(belief, task.cures);
  return (cured + FINDING_OUT * (chanceOfAny(belief, task.helps) - cured)) / (task.minutes + 1);
}
