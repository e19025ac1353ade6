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

const SAID = { yes: "off", no: "on" };

/** The whole of it as plain text, for the file; what is known so far where the questions are not over. */
export function summaryText(checkRequest) {
  const verdict = checkRequest.step.verdict;
  const weights = verdict?.causes[0].weights.map(({ observation, decibans }) => [observation, decibans]);
  return `${plainText(checkRequest.site.pages, `summary/${verdict ? "long" : "unfinished"}`, { check: summaryOf(checkRequest, new Map(weights)) })}\n`;
}

/** What the texts are made of; with `weights`, each answer with what it weighs. */
export function summaryOf(checkRequest, weights = new Map()) {
  const { answers, pack, region, step, texts } = checkRequest;
  const flags = step.flags ?? step.cautions ?? [];
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
    band: step.verdict?.band,
    causes: step.verdict?.causes.map((cause) => causeFacts(checkRequest, cause)),
    related: step.verdict?.alsoCheck.map((fault) => texts.faults.get(fault)),
    pack: { version: pack.version },
    region: { name: region.name },
    check_url: checkRequest.origin + checkRequest.links.step(),
  };
}

/* The line of the first page that fits best, else the name of the complaint. */
function complaintLabel(checkRequest) {
  const { answers } = checkRequest;
  let best = null;
  checkRequest.pack.complaints.forEach((complaint, at) => {
    const fits =
      complaint.option === answers.get(OPENING) && [...complaint.answers].every(([o, told]) => answers.get(o) === told);
    const { size } = complaint.answers;
    if (fits && (!best || size > best.size)) best = { size, words: checkRequest.texts.start.entries[at].label };
  });
  if (best) return best.words;
  return answers.has(OPENING)
    ? answerLabel(checkRequest, OPENING, answers.get(OPENING))
    : checkRequest.site.pages.labels.not_said;
}

/* Every answer that holds, by where it stands. */
function answersByPlace(checkRequest, weights) {
  const { variants } = checkRequest.pack;
  const found = { oven: [], answers: [], readings: [], attempted: [] };
  for (const [observation, answer] of checkRequest.answers) {
    const told = {
      question: questionLabel(checkRequest, observation),
      text: answerLabel(checkRequest, observation, answer),
    };
    const weight = weights.has(observation) ? signedTenths(weights.get(observation)) : "";
    if (variants.has(observation)) found.oven.push(told);
    if (observation.startsWith(DID)) found.attempted.push({ ...told, weight });
    else if (isTrialOrNumbers(checkRequest, observation, answer)) found.readings.push({ ...told, weight });
    else if (![SCREEN, OPENING].includes(observation) && !variants.has(observation)) {
      found.answers.push({ ...told, weight });
    }
  }
  return found;
}

/* Whether it was measured or tried out rather than seen or remembered. */
function isTrialOrNumbers(checkRequest, observation, answer) {
  const known = checkRequest.pack.observations.get(observation);
  if (!known) return false;
  return known.method === "trial" || ![...known.options, CANT_TELL].includes(answer);
}

function causeFacts(checkRequest, { fault, chance }) {
  const { name, trade } = checkRequest.texts.faults.get(fault);
  return {
    name,
    trade,
    probability_text: plainText(checkRequest.site.pages, "sentences/share", { per_ten: perTen(chance) }),
  };
}

/* Where one flag forbids every switch, the pages show what that one says and no other's advice. */
function instructedLines(checkRequest, flag, flags) {
  const untouchable = flags.some(({ switches }) => switches === "never");
  const isShown = flag.switches === "never" || !untouchable;
  return isShown ? checkRequest.texts.flags.get(flag.id).first.filter((line) => line !== ISOLATE) : [];
}
