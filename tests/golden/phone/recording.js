/* A step of the check as plain JSON, written alike by both engines (`tests/golden/recording.py`). */

import { advise, beliefOf } from "../../../triage/static/triage/offline/engine/check.js";
import { openPack } from "../../../triage/static/triage/offline/engine/pack.js";

const KINDS = { ask: "Question", "make-safe": "Emergency", advice: "Result", "not-this": "OutOfScope" };

/** What both engines write down of the step after `pairs`. */
export function recorded(pack, region, pairs) {
  const step = advise(pack, region, pairs);
  const belief = beliefOf(pack, region, step.reading);
  const { verdict } = step;
  return {
    kind: KINDS[step.kind],
    answers: [...step.reading.answers],
    problems: step.reading.problems.map((problem) => {
      return [problem.kind, problem.observation, problem.answer, problem.detail];
    }),
    asks: step.observation ? [step.observation, step.number, step.atMost] : [],
    better: step.better?.id ?? null,
    reason: step.reason ?? null,
    memory: step.memory ?? null,
    flags: (step.flags ?? step.cautions ?? []).map((flag) => flag.id),
    tasks: (step.tasks ?? []).map((task) => task.id),
    band: verdict?.band ?? null,
    family: verdict?.family ?? null,
    causes: verdict?.causes.map((cause) => cause.fault) ?? [],
    alike: verdict?.alike ?? [],
    also_check: verdict?.alsoCheck ?? [],
    ranking: belief.ranking,
    families: [...belief.families.keys()],
    chances: [...belief.faults.values()],
    weights: verdict?.causes.flatMap((cause) => cause.weights.map((weight) => weight.decibans)) ?? [],
  };
}

async function open() {
  return openPack(await (await fetch("/pack.json")).json());
}

/** The records of `[region, pairs]` trails. */
export async function recordAll(trails) {
  const { pack, regions } = await open();
  return trails.map(([region, pairs]) => recorded(pack, regions.get(region), pairs));
}

/** Milliseconds: opening the pack, the first step in a region, and each of the other steps. */
export async function timeAll(trails) {
  const told = await (await fetch("/pack.json")).text();
  const start = performance.now();
  const { pack, regions } = openPack(JSON.parse(told));
  const opened = performance.now();
  const steps = trails.map(([region, pairs]) => {
    const before = performance.now();
    advise(pack, regions.get(region), pairs);
    return performance.now() - before;
  });
  return { opening: opened - start, first: steps[0], steps: steps.slice(1) };
}
