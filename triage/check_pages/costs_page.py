"""What the page on costs is given to show. Texts are finished; the template decides nothing."""

from dataclasses import dataclass

from triage.check_pages.drawings.drawing import Drawing
from triage.check_pages.presenters.problems import ProblemNote
from triage.check_pages.view_models import Choice


@dataclass(frozen=True)
class TypedField:
    """One thing to type; `value` is what was typed, `problem` what is wrong with it, if anything. Where there are
    `choices`, one of them is picked instead."""

    name: str
    label: str
    hint: str
    value: str
    problem: str
    choices: tuple[str, ...] = ()


@dataclass(frozen=True)
class CostsPart:
    """One thing that costs money, in sentences and, where there are ranges to compare, drawn."""

    heading: str
    lines: list[str]
    drawing: Drawing | None = None


@dataclass(frozen=True)
class CostsPage:
    """What the fault may cost: `parts` worked out so far, and `fields` to say more, none where there is no advice yet;
    `label_open` once anything was typed about the label. `kept` is what the form carries along unseen, `back` the way
    to the check."""

    heading: str
    intro: str
    parts: list[CostsPart]
    fields: list[TypedField]
    label_fields: list[TypedField]
    label_open: bool
    kept: list[tuple[str, str]]
    action: str
    back: Choice
    local_line: str
    part: str
    problems: list[ProblemNote]
