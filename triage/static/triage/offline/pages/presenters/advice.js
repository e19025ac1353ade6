/* The advice: how serious it is, what to do now, what it probably is, and who does the rest. As
   `triage/check_pages/presenters/advice.py`. */

import { roundHalfEven } from "../rounding.js";
import { DID, answersSoFar } from "./answers.js";
import { causesOf } from "./causes.js";
import { noteOf } from "./flags.js";
import { callsFor } from "./numbers.js";
import { priceLines } from "./prices.js";
import { problemSentences } from "./problems.js";
import { HOUSEHOLDER, aPerson, localRules, readyForThem, skilledJobs } from "./skilled.js";
import { shortSummary } from "./summary.js";
import { resultOf } from "./task.js";

const LEAVE_OFF = "leave-off";
const STRICTER_SHARE = 0.25;
const LIKELY = 0.35;
export const NETWORK = "network-operator";

export function advicePage(checkRequest, step) {
  const leading = leadingFault(checkRequest, step);
  const common = {
    band: step.verdict.band,
    cautions: step.cautions.map((flag) => noteOf(checkRequest, flag, false)),
    local_line: localRules(checkRequest, step),
    call: callsFor(checkRequest, leading.performedBy === NETWORK ? ["network"] : []),
    part: checkRequest.texts.faults.get(leading.id).picture,
    answers: answersSoFar(checkRequest),
    problems: problemSentences(checkRequest),
  };
  return { ...common, ...(isSolved(checkRequest, step) ? solvedAdvice(checkRequest) : openAdvice(checkRequest, step)) };
}

/* Whether a task put it right; never while a caution or a grave band stands. */
export function isSolved(checkRequest, { cautions, verdict }) {
  const fixed = [...checkRequest.answers].some(([o, answer]) => o.startsWith(DID) && answer === "fixed");
  return fixed && !cautions.length && ["normal", "self-check"].includes(verdict.band);
}

function solvedAdvice(checkRequest) {
  const cured = [...checkRequest.pack.tasks.values()].filter(
    ({ id }) => checkRequest.answers.get(DID + id) === "fixed",
  );
  return {
    solved: true,
    heading: checkRequest.say("That put it right"),
    meaning: cured.map((task) => resultOf(checkRequest, task)).join(" "),
  };
}

function openAdvice(checkRequest, step) {
  const jobs = skilledJobs(checkRequest, step);
  const priced = step.verdict.band !== "normal";
  return {
    solved: false,
    heading: adviceHeading(checkRequest, step),
    meaning: likeliestCause(checkRequest, step),
    leave_off: keepOff(checkRequest, step),
    first: whatNow(checkRequest, step),
    causes: causesOf(checkRequest, step.verdict),
    cannot_tell: lookAlikes(checkRequest, step),
    also_check: alsoCheck(checkRequest, step),
    tasks: step.tasks.map((task) => taskLink(checkRequest, task)),
    skilled: jobs,
    ready: jobs.length ? readyForThem(checkRequest) : [],
    cost_lines: priced ? priceLines(checkRequest) : [],
    costs_href: priced ? checkRequest.links.costs() : "",
    tell: shortSummary(checkRequest),
  };
}

function adviceHeading(checkRequest, step) {
  switch (step.verdict.band) {
    case "make-safe":
      return checkRequest.say("Leave it off until it has been checked");
    case "qualified":
      return checkRequest.say("This is a job for %(person)s", {
        person: aPerson(checkRequest, leadingFault(checkRequest, step).performedBy),
      });
    case "self-check":
      return checkRequest.say("You may be able to put this right");
    default:
      return checkRequest.say("It seems to work as it should");
  }
}

/* The likeliest cause in one sentence, as sure as it is and no surer. */
function likeliestCause(checkRequest, { verdict }) {
  const [first] = verdict.causes;
  const words = { cause: checkRequest.texts.faults.get(first.fault).name };
  if (first.chance >= LIKELY) return checkRequest.say("Most likely: %(cause)s.", words);
  return checkRequest.say("Your answers fit more than one cause. The likeliest is: %(cause)s.", words);
}

/* Whether nothing on the page may let the oven be used: the band says so, or a caution was raised. */
function isGrave(step) {
  return step.verdict.band === "make-safe" || step.cautions.length > 0;
}

/* The sentence that keeps the oven off, or nothing where it may be used in some way. */
function keepOff(checkRequest, step) {
  const { causes } = step.verdict;
  const off = causes.filter(({ fault }) => checkRequest.pack.faults.get(fault).interimUse === LEAVE_OFF);
  const share = off.reduce((total, { chance }) => total + chance, 0);
  if (off.length && (off[0] === causes[0] || isGrave(step) || share >= STRICTER_SHARE)) {
    return checkRequest.texts.faults.get(off[0].fault).now;
  }
  return isGrave(step) ? checkRequest.say("Leave the oven off until it has been checked.") : "";
}

function whatNow(checkRequest, step) {
  const leading = leadingFault(checkRequest, step);
  const text = checkRequest.texts.faults.get(leading.id);
  const results = isGrave(step)
    ? []
    : [...checkRequest.pack.tasks.values()].map((task) => resultOf(checkRequest, task));
  const checks = step.tasks.length
    ? [checkRequest.say("Do the checks below, if you like. Each one first asks if it is safe to start.")]
    : [];
  const use = keepOff(checkRequest, step) ? [] : [text.now];
  const { band } = step.verdict;
  const lines = [...results, ...(band === "self-check" ? [...checks, ...use] : [...use, ...checks])];
  if (band === "qualified" || band === "make-safe") lines.push(...booking(checkRequest, leading.performedBy));
  else if (leading.performedBy === HOUSEHOLDER) lines.push(text.job);
  return lines.filter(Boolean);
}

/* Nobody books the householder: where a caution makes a screenedLikelihood cause a skilled person's, a technician comes. */
function booking(checkRequest, who) {
  const person = aPerson(checkRequest, who === HOUSEHOLDER ? "technician" : who);
  const book = checkRequest.say("Book %(person)s.", { person });
  return [
    checkRequest.say("Before you pay for a repair: %(claim)s", { claim: checkRequest.region.claim_first }),
    `${book} ${checkRequest.say("Read out or send the summary below.")}`,
  ];
}

function lookAlikes(checkRequest, { verdict }) {
  if (verdict.alike.length < 2) return "";
  const words = {
    names: namesOf(checkRequest, verdict.alike),
    split: checkRequest.texts.families.get(verdict.family).split,
  };
  return checkRequest.say("These cannot be told apart without opening the oven: %(names)s. %(split)s", words);
}

function alsoCheck(checkRequest, { verdict }) {
  if (!verdict.alsoCheck.length) return "";
  const words = { names: namesOf(checkRequest, verdict.alsoCheck) };
  return checkRequest.say("Worth a look at the same visit, as one often leads to the other: %(names)s.", words);
}

function namesOf(checkRequest, faults) {
  return faults.map((fault) => checkRequest.texts.faults.get(fault).name).join("; ");
}

function taskLink(checkRequest, task) {
  const states = { fixed: "fixed", "not-fixed": "no-change" };
  const answer = checkRequest.answers.get(task.outcome);
  return {
    title: checkRequest.texts.tasks.get(task.id).title,
    minutes: roundHalfEven(task.minutes),
    href: checkRequest.links.task(task.id),
    done: answer === undefined ? "" : Object.hasOwn(states, answer) ? states[answer] : "done",
  };
}

function leadingFault(checkRequest, { verdict }) {
  return checkRequest.pack.faults.get(verdict.causes[0].fault);
}
