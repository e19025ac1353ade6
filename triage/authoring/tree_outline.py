"""A decision tree as an outline in text: to read from top to bottom, and to sign."""

from collections.abc import Iterator

from triage.authoring.decision_tree import OutlineRow, Tree, outline_rows
from triage.authoring.tree_labels import SIGNATURE_FIELDS, TreeLabels

INDENT = "    "
RULE = 40


def outline(tree: Tree, labels: TreeLabels) -> str:
    """The whole outline, with the lines to sign at its end."""
    head = [labels.title(tree), "", *labels.provenance(tree)]
    signing = [f"{label} {'_' * RULE}" for label in SIGNATURE_FIELDS]
    return "\n".join([*head, *_body(tree, labels), "", *signing])


def _body(tree: Tree, labels: TreeLabels) -> Iterator[str]:
    for line in outline_rows(tree):
        if line.level == 0:
            yield from ("", f"{line.number}  {labels.start_line(line)}", f"{INDENT}{labels.node(line)}")
        else:
            yield from _answered(line, labels)


def _answered(line: OutlineRow, labels: TreeLabels) -> Iterator[str]:
    indent = INDENT * line.level
    yield f"{indent}{line.number}  {labels.answers(line)}"
    yield f"{indent}{INDENT}{labels.node(line)}"
