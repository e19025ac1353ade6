"""pyAgrum, imported with care, and the network it reads from the export.

Its generated binding warns while it is imported; where warnings are errors, as in these tests, that ends the
whole interpreter, so they are let pass there and nowhere else.
"""

import warnings

from triage.engine import CANT_TELL, NONE_OF_THESE, SCREEN
from triage.engine.readings import option_likelihoods
from triage.knowledge.exports import CAUSE, answer_name, dismissed_dangers, kind_name, to_xmlbif

with warnings.catch_warnings():
    warnings.simplefilter("ignore", DeprecationWarning)
    import pyagrum


def read_by_library(model, folder):
    """The library's own network, from the exported text."""
    file = folder / "model.bifxml"
    file.write_text(to_xmlbif(model), "utf-8")
    return pyagrum.loadBN(str(file))


def inference_on(network):
    """Exact inference about the cause; reused from trail to trail, so only the evidence changes."""
    inference = pyagrum.LazyPropagation(network)
    inference.addTarget(CAUSE)
    return inference


def chances_by_library(inference, evidence):
    inference.setEvidence(evidence)
    inference.makeInference()
    return [float(chance) for chance in inference.posterior(CAUSE).toarray()]


def _answer(observation, answer):
    """An option as it is, a reading as the likelihood of each option."""
    return answer if answer in observation.options else list(option_likelihoods(observation, answer).values())


def evidence_of(model, answers):
    """What `answers` mean to any reader of the network, following the export's own description."""
    observations = model.pack.observations
    told = {observations[o]: a for o, a in answers.items() if o != SCREEN and a != CANT_TELL}
    evidence = {answer_name(o.id): _answer(o, answer) for o, answer in told.items() if o.reports}
    if answers.get(SCREEN) == NONE_OF_THESE:
        dismissed = dismissed_dangers(model)
        evidence |= {
            answer_name(o): list(row) for o, row in dismissed.items() if answers.get(o, CANT_TELL) == CANT_TELL
        }
    said = {o.reports: answer for o, answer in told.items() if o.reports in model.variant_weights}
    for observation in told:
        for kind, allowed in observation.requires_variant.items():
            if said.get(kind) is None or said[kind] in allowed:
                options = model.pack.variants[kind].options
                before = evidence.get(kind_name(kind), [1.0] * len(options))
                pairs = zip(options, before, strict=True)
                evidence[kind_name(kind)] = [chance * (option in allowed) for option, chance in pairs]
    return evidence
