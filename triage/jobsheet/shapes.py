"""A job sheet as plain values: what is frozen in the database, sent, printed and described by the JSON Schema.

`FullSummary` is what the check came to and names nobody; `SheetData` adds whose oven it is. Ids are the pack's; texts
are those the person saw.
"""

from typing import Literal, TypedDict

FORMAT: Literal[1] = 1


class SheetAnswer(TypedDict):
    """`decibans` is the answer's weight for the likeliest cause, None where no weight was computed."""

    observation: str
    answer: str
    question: str
    text: str
    decibans: float | None


class SheetWeight(TypedDict):
    observation: str
    answer: str
    decibans: float


class SheetCause(TypedDict):
    """`technician_notes` say what to measure, `parts_to_bring` what this cause takes; neither is for householders."""

    fault: str
    name: str
    trade: str
    probability: float
    probability_text: str
    technician_notes: str
    parts_to_bring: list[str]
    weights: list[SheetWeight]


class SheetFlag(TypedDict):
    """`instructed` is what the person was told to do first; whether it was done nobody knows."""

    flag: str
    level: str
    heading: str
    instructed: list[str]


class SheetSupply(TypedDict):
    """`proved_dead` is always false: only a skilled person with test gear can say otherwise."""

    said: Literal["off", "on", "not-said"]
    proved_dead: Literal[False]
    text: str


class SheetKitPart(TypedDict):
    """`gain` is how much the first-visit probability would fall without this part."""

    part: str
    name: str
    gain: float


class SheetKit(TypedDict):
    """`first_visit_probability` is that no part is missing if these are brought, `max_probability` if every part
    there is were."""

    parts: list[SheetKitPart]
    first_visit_probability: float
    first_visit_text: str
    max_probability: float


class SheetPack(TypedDict):
    id: str
    version: str


class CheckRegion(TypedDict):
    id: str
    name: str
    territory: str


class SheetFault(TypedDict):
    fault: str
    name: str


class CheckSummary(TypedDict):
    """What a check came to, without the kit. `finished` is false when the questions were not over; `ignored_answers`
    counts those that could not be used."""

    pack: SheetPack
    region: CheckRegion
    language: str
    finished: bool
    band: str
    complaint: str
    danger_signs: Literal["seen", "none-seen", "not-asked"]
    red_flags: list[SheetFlag]
    supply: SheetSupply
    oven: list[SheetAnswer]
    answers: list[SheetAnswer]
    readings: list[SheetAnswer]
    attempted: list[SheetAnswer]
    causes: list[SheetCause]
    indistinguishable: list[SheetFault]
    related: list[SheetFault]
    ignored_answers: int
    local_rules: str
    check_url: str


class FullSummary(CheckSummary):
    """With the kit, which takes several times as long to work out as all the rest."""

    kit: SheetKit


class SheetContact(TypedDict):
    name: str
    telephone: str
    email: str


class SheetAddress(TypedDict):
    street: str
    postcode: str
    access: str


class SheetPlate(TypedDict, total=False):
    """What the rating plate says, as typed; `photo` whether there is a picture of it."""

    maker: str
    model: str
    serial: str
    power: str
    year: str
    photo: bool


class SheetWindow(TypedDict):
    """When somebody is at home, in the local time of the oven, as ISO 8601 without a zone."""

    start: str
    end: str


class SheetConsent(TypedDict):
    text: str
    given: str


class SheetFirm(TypedDict):
    slug: str
    name: str


class SheetData(TypedDict):
    format: Literal[1]
    reference: str
    spelled: str
    firm: SheetFirm
    created: str
    erase_after: str
    status: str
    contact: SheetContact
    address: SheetAddress
    rating_plate: SheetPlate
    windows: list[SheetWindow]
    consent: SheetConsent
    check: FullSummary
