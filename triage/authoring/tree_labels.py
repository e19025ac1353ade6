"""The words of a decision tree, as the people read them who answer, with the ids an author finds them by."""

from dataclasses import dataclass

from triage.authoring.decision_tree import Node, OutlineRow, Tree
from triage.engine.pack import CANT_TELL, Pack
from triage.knowledge.texts import Texts

OR = " / "
UNKNOWN = "Can't tell"
SIGNATURE_FIELDS = ("Reviewed by (name):", "Date:", "Signature:")


@dataclass(frozen=True, slots=True)
class TreeLabels:
    """What each part of a tree is called, in one language and region."""

    pack: Pack
    region: str
    texts: Texts

    def title(self, tree: Tree) -> str:
        kind = ", ".join(f"{variant} {option}" for variant, option in tree.stated.items())
        return f"Decision tree of {self.pack.id} for {kind or 'any kind of oven'}"

    def provenance(self, tree: Tree) -> tuple[str, ...]:
        """What a signer has to know: the version, the place, the depth, what is left out."""
        return (
            f"Pack {self.pack.id}, version {self.pack.version}; region {self.region}; depth {tree.depth}.",
            "On the danger page no sign is told; any sign there ends the questions and makes it safe first.",
            f"{tree.grown} places were grown, {tree.different} of them differ; what is the same stands once.",
        )

    def start_line(self, line: OutlineRow) -> str:
        """The line of the start page a tree begins with."""
        return f"{self.texts.start.entries[line.start.line].label} [{line.start.option}]"

    def answers(self, line: OutlineRow) -> str:
        """The answers that lead to a place."""
        question = self.texts.questions.get(line.asked)
        labels = question.options if question else {}
        return OR.join(UNKNOWN if a == CANT_TELL else labels.get(a, a) for a in line.answers)

    def node(self, line: OutlineRow) -> str:
        if line.same_as:
            return f"As at {line.same_as}: {line.node.name}"
        return self._node(line.node)

    def _node(self, place: Node) -> str:
        if place.kind == "ask":
            return f"{self._ask(place.name)} [{place.name}]"
        if place.kind == "more":
            return f"Asks on: {self._ask(place.name)} [{place.name}]"
        if place.kind == "exit":
            return f"Another appliance: {place.name}"
        if place.kind == "make-safe":
            return f"MAKE SAFE: {self.texts.flags[place.name].heading} [{place.name}]"
        family = self.texts.families[place.name].name if place.name in self.texts.families else place.name
        caution = f", caution {', '.join(place.flags)}" if place.flags else ""
        return f"Advice, {place.band}: {family} [{place.name}]{caution}"

    def _ask(self, question: str) -> str:
        return self.texts.questions[question].ask if question in self.texts.questions else question
