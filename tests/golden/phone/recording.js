/* A step of the check as plain JSON, written alike by both engines (`tests/golden/recording.py`). */

import { runCheck } from "../../../triage/static/triage/offline/engine/check.js";
import { openPack } from "../../../triage/static/triage/offline/engine/pack.js";

const KINDS = { question: "Question", emergency: "Emergency", result: "Result", "out-of-scope": "OutOfScope" };

/** What both engines write down of the step after `pairs`. */
export function recorded(pack, region, pairs) {
  const { answers, problems, belief, step } = runCheck(pack, region, pairs);
  const { verdict } = step;
  return {
    kind: KINDS[step.kind],
    answers: [...answers],
    problems: problems.map((problem) => {
      return [problem.kind, problem.observation, problem.answer, problem.detail];
    }),
    asks: step.observation ? [step.observation, step.number, step.maxQuestions] : [],
    better: step.betterTest?.id ?? null,
    reason: step.reason ?? null,
    memory: step.followUpQuestion ?? null,
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
    runCheck(pack, regions.get(region), pairs).step;
    return performance.now() - before;
  });
  return { opening: opened - start, first: steps[0], steps: steps.slice(1) };
}
