"""A compiled model (pack and region) as XMLBIF 0.3, the open interchange format for Bayesian networks.

Any library that reads the format must come to the chances of `triage.engine.believe`. The nodes:

- `cause`: one outcome per hypothesis ("a+b" for a pair); its table is the prior before anything is known.
- `kind-<variant>`: the kind of oven, given `cause`.
- `condition-<id>`: a hidden quantity, given `cause` and, where the pack says so, one kind.
- `answer-<id>`: what a person says, given what it reports. Records that report nothing are left out.

What `believe` takes as evidence, in terms of this network:

- an answer: its `answer-` node is that outcome; "can't tell" sets nothing;
- a reading: its `answer-` node has the likelihood of each option that `readings.gauge_answer` gives;
- an answer that exists on some ovens only (`requires_variant`): besides, each `kind-` node it names has likelihood one
  for the options allowed and zero for the rest, unless what was said of that kind itself leaves none of them;
- the danger page answered "none of these": each `answer-` node it asks about that nobody answered otherwise
  has likelihood one for the options that do not end the check, zero for those that do (`dismissed_dangers`).

Numbers are written in full (`repr`), nodes and outcomes in the pack's order: one model, one text.
"""

from collections.abc import Iterable, Iterator, Sequence
from operator import mul
from xml.etree import ElementTree

from triage.engine.frequency import Row
from triage.engine.model import Hypothesis, Model, harmless_options
from triage.engine.pack import Condition, Observation, Variant
from triage.engine.tables import ProbabilityTable

CAUSE = "cause"


def to_xmlbif(model: Model) -> str:
    """The model as one XMLBIF 0.3 document."""
    root = ElementTree.Element("BIF", VERSION="0.3")
    network = ElementTree.SubElement(root, "NETWORK")
    _text(network, "NAME", f"{model.pack.id}-{model.pack.version}-{model.region.id}")
    nodes = list(_nodes(model))
    for name, outcomes, _, _ in nodes:
        variable = ElementTree.SubElement(network, "VARIABLE", TYPE="nature")
        _text(variable, "NAME", name)
        for outcome in outcomes:
            _text(variable, "OUTCOME", outcome)
    for name, _, parents, rows in nodes:
        definition = ElementTree.SubElement(network, "DEFINITION")
        _text(definition, "FOR", name)
        for parent in parents:
            _text(definition, "GIVEN", parent)
        _text(definition, "TABLE", "\n".join(" ".join(map(repr, row)) for row in rows))
    ElementTree.indent(root)
    return ElementTree.tostring(root, encoding="unicode", xml_declaration=True) + "\n"


def cause_name(hypothesis: Hypothesis) -> str:
    """The outcome of `cause` that stands for a hypothesis."""
    return "+".join(hypothesis.faults)


def kind_name(variant: str) -> str:
    return f"kind-{variant}"


def answer_name(observation: str) -> str:
    return f"answer-{observation}"


def dismissed_dangers(model: Model) -> dict[str, Row]:
    """For each screened observation, the likelihood over its options that "none of these" gives."""
    pack = model.pack
    screened = (pack.observations[o] for o in model.screened_likelihood)
    return {o.id: tuple(float(option in harmless_options(pack, o)) for option in o.options) for o in screened}


_Node = tuple[str, Sequence[str], Sequence[str], Iterable[Row]]


def _nodes(model: Model) -> Iterator[_Node]:
    """Name, outcomes, parents and rows of every node; the last parent varies fastest from row to row."""
    pack = model.pack
    yield CAUSE, [cause_name(h) for h in model.hypotheses], [], [_prior(model)]
    for variant in pack.variants.values():
        yield kind_name(variant.id), variant.options, [CAUSE], _kind_rows(model, variant)
    for condition in pack.conditions.values():
        yield _condition_node(model, condition)
    for observation in pack.observations.values():
        if observation.reports is not None:
            yield _answer_node(model, observation)


def _prior(model: Model) -> Row:
    weights = list(model.rates)
    for rows in model.variant_weights.values():
        weights = list(map(mul, weights, map(sum, zip(*rows, strict=True))))
    return _normalised(weights)


def _kind_rows(model: Model, variant: Variant) -> list[Row]:
    return [_normalised(column) for column in zip(*model.variant_weights[variant.id], strict=True)]


def _condition_node(model: Model, condition: Condition) -> _Node:
    tables = model.level_tables[condition.id]
    parents = [CAUSE] if condition.parent is None else [CAUSE, kind_name(condition.parent)]
    rows = [_normalised(_row(table, h)) for h in range(len(model.hypotheses)) for table in tables]
    return f"condition-{condition.id}", condition.levels, parents, rows


def _answer_node(model: Model, observation: Observation) -> _Node:
    reported = str(observation.reports)
    parent = kind_name(reported) if reported in model.variant_weights else f"condition-{reported}"
    return (
        answer_name(observation.id),
        observation.options,
        [parent],
        map(_normalised, observation.answer_probabilities),
    )


def _row(table: ProbabilityTable, hypothesis: int) -> Row:
    return table.distinct[table.index[hypothesis]]


def _normalised(weights: Sequence[float]) -> Row:
    total = sum(weights)
    return tuple(weight / total for weight in weights)


def _text(parent: ElementTree.Element, tag: str, text: str) -> None:
    ElementTree.SubElement(parent, tag).text = text
