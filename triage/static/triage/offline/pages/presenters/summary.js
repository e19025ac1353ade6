/* What to tell whoever comes: as `triage/check_pages/presenters/summary.py` and `triage/jobsheet/summary.py`. What to
   bring and what to measure, which only a repairer needs and which takes much to know, is left to the site: its file at
   the same address has both. */

import { CANT_TELL, NONE_OF_THESE, OPENING, SCREEN } from "../../engine/pack.js";
import { plainText } from "../filling.js";
import { signedTenths } from "../rounding.js";
import { ISOLATE } from "../wording.js";
import { answerLabel, DID, questionLabel } from "./answers.js";
import { perTen } from "./causes.js";
import { OFF_AT_THE_SUPPLY } from "./isolation.js";

/** @typedef {import("../../engine/advice.js").Cause} Cause
 * @typedef {import("../request.js").CheckRequest} CheckRequest
 * @typedef {import("../../engine/pack.js").RedFlag} RedFlag
 * @typedef {import("../../engine/check.js").Step} Step
 * @typedef {import("../../engine/advice.js").Verdict} Verdict */

/** @type {Object<string, string>} */
const SAID = { yes: "off", no: "on" };

/** The whole of it as plain text, for the file; what is known so far where the questions are not over.
 * @param {CheckRequest} checkRequest */
export function summaryText(checkRequest) {
  const verdict = verdictOf(checkRequest.step);
  const leading = verdict?.causes[0].weights ?? [];
  const weights = new Map(leading.map(({ observation, decibans }) => [observation, decibans]));
  const check = summaryOf(checkRequest, weights);
  return `${plainText(checkRequest.site.pages, `summary/${verdict ? "long" : "unfinished"}`, { check })}\n`;
}

/** What the texts are made of; with `weights`, each answer with what it weighs.
 * @param {CheckRequest} checkRequest @param {Map<string, number>} [weights] decibans by question */
export function summaryOf(checkRequest, weights = new Map()) {
  const { answers, pack, region, step, texts } = checkRequest;
  const flags = flagsOf(step);
  const verdict = verdictOf(step);
  const isScreened = answers.get(SCREEN) === NONE_OF_THESE;
  return {
    complaint: complaintLabel(checkRequest),
    danger_signs: flags.length ? "seen" : isScreened ? "none-seen" : "not-asked",
    red_flags: flags.map((flag) => ({
      heading: texts.flags.get(flag.id).heading,
      instructed: instructedLines(checkRequest, flag, flags),
    })),
    supply: { said: SAID[answers.get(OFF_AT_THE_SUPPLY)] },
    ...answersByPlace(checkRequest, weights),
    band: verdict?.band,
    causes: verdict?.causes.map((cause) => causeFacts(checkRequest, cause)),
    related: verdict?.alsoCheck.map((fault) => texts.faults.get(fault)),
    pack: { version: pack.version },
    region: { name: region.name },
    check_url: checkRequest.origin + checkRequest.links.step(),
  };
}

/** @param {Step} step @returns {Verdict | undefined} */
function verdictOf(step) {
  return step.kind === "result" || step.kind === "emergency" ? step.verdict : undefined;
}

/** @param {Step} step */
function flagsOf(step) {
  return step.kind === "emergency" ? step.flags : step.kind === "result" ? step.cautions : [];
}

/** The line of the first page that fits best, else the name of the complaint. @param {CheckRequest} checkRequest */
function complaintLabel(checkRequest) {
  const { answers } = checkRequest;
  /** @type {{size: number, label: string} | null} */
  let best = null;
  checkRequest.pack.complaints.forEach((complaint, at) => {
    const fits =
      complaint.option === answers.get(OPENING) &&
      [...complaint.answers].every(([o, answer]) => answers.get(o) === answer);
    const { size } = complaint.answers;
    if (fits && (!best || size > best.size)) best = { size, label: checkRequest.texts.start.entries[at].label };
  });
  if (best) return best.label;
  return answers.has(OPENING)
    ? answerLabel(checkRequest, OPENING, answers.get(OPENING))
    : checkRequest.site.pages.labels.not_said;
}

/** Every answer that holds, by where it stands. @param {CheckRequest} checkRequest @param {Map<string, number>} weights */
function answersByPlace(checkRequest, weights) {
  const { variants } = checkRequest.pack;
  /** @type {Object<string, {question: string, text: string, weight?: string}[]>} */
  const found = { oven: [], answers: [], readings: [], attempted: [] };
  for (const [observation, answer] of checkRequest.answers) {
    const line = {
      question: questionLabel(checkRequest, observation),
      text: answerLabel(checkRequest, observation, answer),
    };
    const weight = weights.has(observation) ? signedTenths(weights.get(observation)) : "";
    if (variants.has(observation)) found.oven.push(line);
    if (observation.startsWith(DID)) found.attempted.push({ ...line, weight });
    else if (isTrialOrNumbers(checkRequest, observation, answer)) found.readings.push({ ...line, weight });
    else if (![SCREEN, OPENING].includes(observation) && !variants.has(observation)) {
      found.answers.push({ ...line, weight });
    }
  }
  return found;
}

/** Whether it was measured or tried out rather than seen or remembered.
 * @param {CheckRequest} checkRequest @param {string} observation @param {string} answer */
function isTrialOrNumbers(checkRequest, observation, answer) {
  const known = checkRequest.pack.observations.get(observation);
  if (!known) return false;
  return known.method === "trial" || ![...known.options, CANT_TELL].includes(answer);
}

/** @param {CheckRequest} checkRequest @param {Cause} cause */
function causeFacts(checkRequest, { fault, chance }) {
  const { name, trade } = checkRequest.texts.faults.get(fault);
  return {
    name,
    trade,
    probability_text: plainText(checkRequest.site.pages, "sentences/share", { per_ten: perTen(chance) }),
  };
}

/** Where one flag forbids every switch, the pages show what that one says and no other's advice.
 * @param {CheckRequest} checkRequest @param {RedFlag} flag @param {RedFlag[]} flags */
function instructedLines(checkRequest, flag, flags) {
  const untouchable = flags.some(({ switches }) => switches === "never");
  const isShown = flag.switches === "never" || !untouchable;
  return isShown ? checkRequest.texts.flags.get(flag.id).first.filter((line) => line !== ISOLATE) : [];
}
