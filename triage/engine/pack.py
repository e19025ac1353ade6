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
from triage.engine.frequency import FrequencyTable, Words
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
    """One fact about the kind of oven; `shares` are its options' shares of ovens when nothing is known (sum 1)."""

    id: str
    options: tuple[str, ...]
    shares: tuple[float, ...]


@dataclass(frozen=True, slots=True, eq=False)
class Condition:
    """A hidden quantity of the oven: `levels` from least to most dominant, `baseline` their probabilities without the
    trouble (sum 1).

    `parent` names the one variant its effects may depend on; `allowed_on` the parent's options a level can exist on.
    `floor` is what `never` stands for here. `frequencies` are the words `baseline` was made of, level by level.
    """

    id: str
    levels: tuple[str, ...]
    baseline: tuple[float, ...]
    floor: float = 0.01
    parent: str | None = None
    allowed_on: Requirement = field(default_factory=dict)
    frequencies: Words = ()


@dataclass(frozen=True, slots=True, eq=False)
class Effect:
    """How one fault leaves one condition: probabilities over its levels, for some options of its parent or for all.

    `frequencies` are the words `levels` was made of; numbers learnt from outcomes have none.
    """

    condition: str
    levels: tuple[float, ...]
    when: frozenset[str] | None = None
    frequencies: Words = ()


@dataclass(frozen=True, slots=True, eq=False)
class Fault:
    """A component in a failure mode, a normal behaviour, a cause on the user's side, or `other`.

    `calls_per_1000` of service calls; `online_ratio` how much oftener it comes to this tool than to a technician's
    visit. `requires_variant` the variant options it can occur on; `rate_multipliers[variant][option]` its rate there
    against elsewhere. `noise_share` is the share of `other`'s answers that fit nothing. `repair_minutes` as written,
    "30" or "30-60".
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
    """Two faults at once: `cause` first. `rate_per_1000` of sessions; `causal` when one leads to the other."""

    cause: str
    effect: str
    rate_per_1000: float
    causal: bool = False


@dataclass(frozen=True, slots=True, eq=False)
class MeasurementSpec:
    """How numbers answer an observation: the kind of measurement, the quantity of it that counts, and what belongs to
    each option.

    `intervals[option]` is from where to where on the quantity's line, in its own unit (equal intervals are one with two
    names); a gasket's options have `patterns` instead. `overrides[option]` are options that another quantity decides
    before the line does: its name and from where on.
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

    `reports` a condition or a variant, or nothing (a record for the repairer). `answer_probabilities[level][option]` is
    P(answer | level), trust included; `frequencies` what it was made of. `requires_variant` is what the oven must have,
    `requires_answers` the answers to other observations that make this one exist. `urgent` ones do not wait their turn
    once the answers of `urgent_after` were given. `flags[option]` is the red flag an answer raises.
    `task` names the task whose outcome this is: it is asked on that task's page only. With a `measurement` the answer
    may also be written figures (`readings/`) instead of one of the options.
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
    frequencies: FrequencyTable | None = None


@dataclass(frozen=True, slots=True, eq=False)
class RedFlag:
    """A danger sign: what it does, its `rank` among those to act on (lowest first), which switches may be touched, whom
    to ask, whose numbers to show, the answers (observation, option) that stand for it on the danger page."""

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
    """Something to do, by whom, and what forbids it.

    `helps` and `cures` are faults; it is not offered while one of `unsafe_with` is plausible, nor after the flags of
    `not_after`. `gates` are asked, never assumed. `needs_heat` when the oven has to be heated for it; `only_after` the
    cautions one of which it answers; `outcome` the observation that records what came of it, `further_outcomes` others
    that the same figures answer.
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
    """When to stop asking, and what counts as plausible. The defaults are author's judgement; a pack states its own.

    `max_questions` after the complaint and the danger page; `stop_probability` of one family ends the questions;
    a question worth less than `min_bits` is not put. A fault below `plausible_probability` forbids no task: it decides
    safety, so it is far below what anyone would call likely. A task that helps with less than `relevant_probability` is
    not worth offering.
    """

    max_questions: int = 12
    stop_probability: float = 0.85
    min_bits: float = 0.04
    plausible_probability: float = 0.01
    relevant_probability: float = 0.1


@dataclass(frozen=True, slots=True, eq=False)
class Pack:
    """One appliance's knowledge, whole. Mappings keep the author's order, which breaks every tie.

    `out_of_scope[observation, option]` says why an answer shows that this is not such an appliance. `retired` ids and
    what replaced them. `jobs[fault]` is what finishing it takes; a fault without one takes no part.
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
