"""A decision tree as an outline in text: to read from top to bottom, and to sign."""

from collections.abc import Iterator

from triage.authoring.decision_tree import Line, Tree, lines_of
from triage.authoring.tree_labels import TO_SIGN, TreeWords

INDENT = "    "
RULE = 40


def outline(tree: Tree, words: TreeWords) -> str:
    """The whole outline, with the lines to sign at its end."""
    head = [words.title(tree), "", *words.made_from(tree)]
    signing = [f"{label} {'_' * RULE}" for label in TO_SIGN]
    return "\n".join([*head, *_body(tree, words), "", *signing])


def _body(tree: Tree, words: TreeWords) -> Iterator[str]:
    for line in lines_of(tree):
        if line.level == 0:
            yield from ("", f"{line.number}  {words.begins(line)}", f"{INDENT}{words.place(line)}")
        else:
            yield from _answered(line, words)


def _answered(line: Line, words: TreeWords) -> Iterator[str]:
    indent = INDENT * line.level
    yield f"{indent}{line.number}  {words.answers(line)}"
    yield f"{indent}{INDENT}{words.place(line)}"
