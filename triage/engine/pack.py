"""The frozen shapes of one appliance's knowledge. Built by `triage.knowledge`, read by every other engine module.

Ids are kebab-case words. Texts live beside the pack, not in it: the engine reasons about ids only.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import Enum
from math import inf

from triage.engine.enums import (
    Competence,
    Contact,
    FaultKind,
    InterimUse,
    Method,
    PerformedBy,
    PhoneService,
    PriceClass,
    SafetyGate,
    SignalWord,
    SwitchUse,
)
from triage.engine.repairs import Costs, Job, Part

CANT_TELL = "cant-tell"
SCREEN = "danger"
OPENING = "complaint"
NONE_OF_THESE = "none"

# A variant or an observation to the options of it that are meant; all of them together.
Requirement = Mapping[str, frozenset[str]]


class Band(Enum):
    """Advice level, least severe first; the order is the order of severity."""

    NORMAL = "normal"
    SELF_CHECK = "self-check"
    QUALIFIED = "qualified"
    MAKE_SAFE = "make-safe"

    @property
    def severity(self) -> int:
        return list(Band).index(self)


class Level(Enum):
    """What a red flag does: `emergency` and `stop` end the questions, `caution` keeps the band from falling."""

    EMERGENCY = "emergency"
    STOP = "stop"
    CAUTION = "caution"

    @property
    def ends_check(self) -> bool:
        return self is not Level.CAUTION


@dataclass(frozen=True, slots=True, eq=False)
class Variant:
    """One fact about the kind of oven; `shares` are its options' shares when nothing is known (sum 1)."""

    id: str
    options: tuple[str, ...]
    shares: tuple[float, ...]


@dataclass(frozen=True, slots=True, eq=False)
class Condition:
    """A hidden quantity of the oven: `levels` from least to most dominant, `sound` without the trouble (sum 1).

    `given` names the one variant its effects may depend on; `only` the options a level can exist on; `never` is what
    the word stands for here.
    """

    id: str
    levels: tuple[str, ...]
    baseline: tuple[float, ...]
    floor: float = 0.01
    parent: str | None = None
    allowed_on: Requirement = field(default_factory=dict)


@dataclass(frozen=True, slots=True, eq=False)
class Effect:
    """How one fault leaves one condition: probabilities over its levels, for some options of `given` or all."""

    condition: str
    levels: tuple[float, ...]
    when: frozenset[str] | None = None


@dataclass(frozen=True, slots=True, eq=False)
class Fault:
    """A component in a failure mode, a normal behaviour, a user-side cause, or `other`.

    `calls` per 1000 service calls, `sessions` how much oftener it comes to a tool than to a van; `needs` gates by
    variant; `favoured` multiplies the rate on some variant options; `vague` is the share of `other`'s answers that
    fit nothing.
    """

    id: str
    kind: FaultKind
    family: str
    band: Band
    calls_per_1000: float
    performed_by: PerformedBy
    interim_use: InterimUse
    online_ratio: float = 1.0
    requires_variant: Requirement = field(default_factory=dict)
    rate_multipliers: Mapping[str, Mapping[str, float]] = field(default_factory=dict)
    effects: tuple[Effect, ...] = ()
    noise_share: float = 0.0
    price_class: PriceClass = PriceClass.P0
    repair_minutes: str = "0"


@dataclass(frozen=True, slots=True, eq=False)
class FaultPair:
    """Two faults at once: `cause` first. `rate` per 1000 sessions; `chain` when one leads to the other."""

    cause: str
    effect: str
    rate_per_1000: float
    causal: bool = False


@dataclass(frozen=True, slots=True, eq=False)
class MeasurementSpec:
    """How numbers answer an observation: the kind of reading, the quantity of it that counts, and what belongs to
    each option of it.

    `spans[option]` is from where to where on the quantity's line (equal spans are one span with two names); a
    gasket's options have `patterns` instead. `beyond` are options that another quantity decides before the line does:
    its name and from where on.
    """

    kind: str
    quantity: str
    intervals: Mapping[str, tuple[float, float]] = field(default_factory=dict)
    patterns: Mapping[str, str] = field(default_factory=dict)
    overrides: Mapping[str, tuple[str, float]] = field(default_factory=dict)

    def open_interval(self, option: str) -> tuple[float, float]:
        """The option's span, without end where the line ends: what lies beyond belongs to it."""
        low, high = self.intervals[option]
        first, last = min(self.intervals.values()), max(self.intervals.values())
        return (-inf if low == first[0] else low, inf if high == last[1] else high)


@dataclass(frozen=True, slots=True, eq=False)
class Observation:
    """One thing a person can see, hear, smell or read.

    `reports` a condition or a variant, or nothing (a record for the repairer). `says[level][option]` are the
    probabilities of each answer for each level, trust included. `how` is memory, look or trial. `effort` in seconds.
    `after` names the answers of other observations that make this one exist; `first` ones do not wait their turn
    once the answers of `first_after` were given.
    `task` names the task whose outcome this is: it is asked on that task's page only.
    With a `gauge` the answer may also be a written reading (`readings/`) instead of one of the options.
    """

    id: str
    options: tuple[str, ...]
    method: Method
    effort_seconds: float
    picture: str
    reports: str | None = None
    answer_probabilities: tuple[tuple[float, ...], ...] = ()
    requires_variant: Requirement = field(default_factory=dict)
    requires_answers: Requirement = field(default_factory=dict)
    flags: Mapping[str, str] = field(default_factory=dict)
    urgent: bool = False
    urgent_after: Requirement = field(default_factory=dict)
    task: str = ""
    measurement: MeasurementSpec | None = None


@dataclass(frozen=True, slots=True, eq=False)
class RedFlag:
    """A danger sign: its level, how switches may be touched (never, away, any), whom to call, where it is shown."""

    id: str
    level: Level
    rank: int
    signal: SignalWord
    switches: SwitchUse
    contact: Contact
    phone_numbers: tuple[PhoneService, ...] = ()
    signs: tuple[tuple[str, str], ...] = ()
    picture: str = "front"


@dataclass(frozen=True, slots=True, eq=False)
class Task:
    """Something an ordinary person may do, and what forbids it.

    `heat` when the oven has to be heated for it; `only_after` the cautions one of which it answers; `outcome` the
    observation that records what came of it, `also` further ones that the same readings answer.
    """

    id: str
    competence: Competence
    helps: frozenset[str]
    cures: frozenset[str]
    unsafe_with: frozenset[str]
    not_after: frozenset[str]
    gates: tuple[SafetyGate, ...]
    needs_heat: bool
    minutes: float
    picture: str
    outcome: str
    only_after: frozenset[str] = frozenset()
    requires_variant: Requirement = field(default_factory=dict)
    further_outcomes: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, eq=False)
class Complaint:
    """One sentence of the start page: the option it records and the other answers it already gives."""

    option: str
    answers: Mapping[str, str]
    picture: str


@dataclass(frozen=True, slots=True, eq=False)
class Region:
    """What a place changes in the reasoning: shares of ovens in use, tasks its rules remove."""

    id: str
    shares: Mapping[str, Mapping[str, float]] = field(default_factory=dict)
    removed_tasks: frozenset[str] = frozenset()


@dataclass(frozen=True, slots=True)
class Limits:
    """When to stop asking, and what counts as plausible.

    `questions` after the complaint and the danger page; `settled` is the chance of one family that ends the
    questions; `worth` the bits below which a question is not put; below `plausible` a fault forbids no task; below
    `relevant` (chance that it helps) a task is not worth offering.
    """

    max_questions: int = 12
    stop_probability: float = 0.85
    min_bits: float = 0.04
    plausible_probability: float = 0.01
    relevant_probability: float = 0.1


@dataclass(frozen=True, slots=True, eq=False)
class Pack:
    """One appliance's knowledge, whole. Mappings keep the author's order, which breaks every tie.

    `jobs[fault]` is what finishing it takes; a fault without one takes no part.
    """

    id: str
    version: str
    variants: Mapping[str, Variant]
    conditions: Mapping[str, Condition]
    observations: Mapping[str, Observation]
    faults: Mapping[str, Fault]
    fault_pairs: tuple[FaultPair, ...]
    red_flags: Mapping[str, RedFlag]
    tasks: Mapping[str, Task]
    complaints: tuple[Complaint, ...] = ()
    look_alikes: tuple[frozenset[str], ...] = ()
    retired: Mapping[str, str] = field(default_factory=dict)
    out_of_scope: Mapping[tuple[str, str], str] = field(default_factory=dict)
    limits: Limits = field(default_factory=Limits)
    parts: Mapping[str, Part] = field(default_factory=dict)
    jobs: Mapping[str, Job] = field(default_factory=dict)
    costs: Costs = field(default_factory=Costs)
