/* The form of a reading and, once it was sent, what comes of it: the same on a task's page and on a page of its own. As
   `triage/check_pages/presenters/readings/form.py`. */

import { flagsRaisedBy } from "../../../engine/readings/evidence.js";
import { InvalidReading } from "../../../engine/readings/encoding.js";
import { applies, ruledOut } from "../../../engine/answers.js";
import { capital } from "../../wording.js";
import { readingText } from "../reading_text.js";
import { degreesOf } from "./degrees.js";
import { boundGroups, errorOf, FormInput, READ, SENT } from "./form_input.js";
import { doorPlaces } from "./gasket.js";
import { interpret } from "./interpretation.js";
import { READING_KINDS } from "./kinds.js";
import { usualVolts } from "./plate.js";

/** @typedef {import("../../request.js").CheckRequest} CheckRequest
 * @typedef {import("../../../engine/pack.js").Observation} Observation
 * @typedef {import("../../../engine/pack.js").Pack} Pack
 * @typedef {import("../../../engine/pack.js").Task} Task */

const FOR = "for";
const CHEAP_TOLERANCE = 10;
/* Where a list of readings is typed in rows, the field of its first one. */
/** @type {Object<string, string>} */
const FIRST_FIELD = { readings: "time-1", temperature: "shown-1" };

/** What the figures of a task can answer; nothing where its outcome is not a reading.
 * @param {Pack} pack @param {Task} task */
export function measuredBy(pack, task) {
  const first = pack.observations.get(task.outcome);
  if (!first?.measurement) return [];
  const others = [...task.furtherOutcomes].map((name) => pack.observations.get(name));
  return [first, ...others].filter(({ measurement }) => measurement?.kind === first.measurement.kind);
}

/** The form for figures that answer `observations`, the first of them always; `action` is the page it stands on.
 * @param {CheckRequest} checkRequest @param {Observation[]} observations @param {string} action */
export function readingForm(checkRequest, observations, action) {
  const kind = observations[0].measurement.kind;
  const { intro, groups } = checkRequest.texts.readings.get(kind);
  const { limits, parseMore } = READING_KINDS.get(kind);
  const found = new FormInput(checkRequest.typed, degreesOf(checkRequest));
  found.parse(groups, limits);
  parseMore?.(found, groups);
  const meant = meantOf(checkRequest, observations, found);
  const form = {
    kind,
    intro,
    action,
    hidden: [...checkRequest.links.contextParams(), ...checkRequest.answers, [SENT, "1"]],
    groups: [
      ...whichMeasured(checkRequest, observations, meant),
      ...boundGroups(found, groups, paramsOf(checkRequest)),
    ],
    places: kind === "gasket" ? doorPlaces(checkRequest, found) : [],
  };
  return found.isSent ? { ...form, ...readingOutcome(checkRequest, form, found, meant, observations) } : form;
}

/** What labels and hints name. @param {CheckRequest} checkRequest */
function paramsOf(checkRequest) {
  const { unit, differenceText } = degreesOf(checkRequest);
  return { volts: usualVolts(checkRequest), unit, tolerance: differenceText(CHEAP_TOLERANCE) };
}

/** What is wrong or missing, or else the result.
 * @param {CheckRequest} checkRequest @param {{kind: string, groups: any[]}} form @param {FormInput} found @param {Observation[]} meant
 * @param {Observation[]} observations */
function readingOutcome(checkRequest, { kind, groups }, found, meant, observations) {
  /** @type {import("./form_input.js").InputField[]} */
  const fields = groups.flatMap((group) => group.fields);
  const labels = new Map(fields.map(({ name, label }) => [name, label]));
  if (found.errors.size) return { errors: [...found.errors].map(([name, error]) => [labels.get(READ + name), error]) };
  const text = READING_KINDS.get(kind).write(checkRequest, found);
  if (!text) return { empty: true };
  try {
    return { result: readingResult(checkRequest, text, meant, observations) };
  } catch (fault) {
    if (!(fault instanceof InvalidReading)) throw fault;
    const { field, reason } = fault;
    const label = labels.get(READ + field) || labels.get(READ + (FIRST_FIELD[field] ?? field));
    return { errors: [["", errorOf(reason, label)]] };
  }
}

/** A red flag is raised by whatever the figures can answer, whether or not it was asked for on this oven.
 * @param {CheckRequest} checkRequest @param {string} text @param {Observation[]} meant @param {Observation[]} observations */
function readingResult(checkRequest, text, meant, observations) {
  const { measurement } = meant[0];
  const headline = readingText(checkRequest, text, measurement);
  /** @param {Observation} one */
  const isAsked = (one) => meant.includes(one) || one.measurement.quantity !== measurement.quantity;
  const alarming = observations.filter((one) => isAsked(one) && flagsRaisedBy(one, text).length);
  const answering = [...new Set([...meant, ...alarming])].filter(
    (one) => alarming.includes(one) || isFitting(checkRequest, one),
  );
  /** @type {[string, string][]} */
  const answers = answering.map(({ id }) => [id, text]);
  const href = alarming.length ? checkRequest.links.step(answers) : checkRequest.links.continueUrl(answers);
  return {
    headline: capital(headline),
    interpretations: meant.map((one) => interpret(checkRequest, one, text)),
    drawing: READING_KINDS.get(measurement.kind).drawing(checkRequest, text),
    has_range: headline.includes("±"),
    continue_href: answers.length ? href : "",
    alarm: alarming.length > 0,
  };
}

/** The one that was measured, and those that other quantities of the same figures answer as well.
 * @param {CheckRequest} checkRequest @param {Observation[]} observations @param {FormInput} found */
function meantOf(checkRequest, observations, found) {
  const alike = alternativesOf(checkRequest, observations);
  const chosen = alike.find(({ id }) => id === found.text(FOR)) ?? alike[0];
  const others = observations.filter(({ measurement }) => measurement.quantity !== chosen.measurement.quantity);
  return [chosen, ...others.filter((one) => isFitting(checkRequest, one))];
}

/** @param {CheckRequest} checkRequest @param {Observation[]} observations */
function alternativesOf(checkRequest, [first, ...others]) {
  const same = others.filter(({ measurement }) => measurement.quantity === first.measurement.quantity);
  return [first, ...same.filter((one) => isFitting(checkRequest, one))];
}

/** The question which of several was measured, where there is more than one.
 * @param {CheckRequest} checkRequest @param {Observation[]} observations @param {Observation[]} meant */
function whichMeasured(checkRequest, observations, meant) {
  const alike = alternativesOf(checkRequest, observations);
  if (alike.length < 2) return [];
  const choices = alike.map(({ id }) => [id, checkRequest.texts.questions.get(id).short]);
  return [{ fields: [{ name: READ + FOR, value: meant[0].id, choices }] }];
}

/** Whether it exists on this oven after these answers.
 * @param {CheckRequest} checkRequest @param {Observation} observation */
function isFitting(checkRequest, observation) {
  const { answers } = checkRequest;
  return applies(observation, answers) && !ruledOut(observation.requiresVariant, answers);
}
