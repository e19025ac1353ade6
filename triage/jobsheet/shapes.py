"""A job sheet as plain values: what is frozen in the database, sent, printed and described by the JSON Schema.

`Summary` is what the check came to and names nobody; `Sheet` adds whose oven it is. Ids are the pack's; words are
those the person saw.
"""

from typing import Literal, TypedDict

FORMAT: Literal[1] = 1


class Answer(TypedDict):
    """`decibans` is the answer's weight for the likeliest cause, None where no weight was computed."""

    observation: str
    answer: str
    question: str
    words: str
    decibans: float | None


class Weighed(TypedDict):
    observation: str
    answer: str
    decibans: float


class Cause(TypedDict):
    """`for_the_repairer` is what to measure, `bring` what this one cause takes; no householder is shown either."""

    fault: str
    name: str
    trade: str
    chance: float
    chance_words: str
    for_the_repairer: str
    bring: list[str]
    weights: list[Weighed]


class Flag(TypedDict):
    """`told` is what the person was told to do first; whether it was done nobody knows."""

    flag: str
    level: str
    heading: str
    told: list[str]


class Supply(TypedDict):
    """`proved_dead` is always false: only a skilled person with test gear can say otherwise."""

    said: Literal["off", "on", "not-said"]
    proved_dead: Literal[False]
    words: str


class Carried(TypedDict):
    """`gain` is how much the first-visit chance would fall without this part."""

    part: str
    name: str
    gain: float


class Kit(TypedDict):
    """`first_visit_chance` is that no part is missing if these are brought, `at_best` if every part there is were."""

    parts: list[Carried]
    first_visit_chance: float
    first_visit_words: str
    at_best: float


class Pack(TypedDict):
    id: str
    version: str


class Region(TypedDict):
    id: str
    name: str
    territory: str


class Named(TypedDict):
    fault: str
    name: str


class Told(TypedDict):
    """What a check came to, without the kit. `finished` is false when the questions were not over; `dropped` counts
    answers that could not be used."""

    pack: Pack
    region: Region
    language: str
    finished: bool
    band: str
    trouble: str
    danger_signs: Literal["seen", "none-seen", "not-asked"]
    red_flags: list[Flag]
    supply: Supply
    oven: list[Answer]
    answers: list[Answer]
    readings: list[Answer]
    tried: list[Answer]
    causes: list[Cause]
    alike: list[Named]
    also_check: list[Named]
    dropped: int
    local_rules: str
    check_again: str


class Summary(Told):
    """With the kit, which takes several times as long to work out as all the rest."""

    kit: Kit


class Contact(TypedDict):
    name: str
    telephone: str
    email: str


class Address(TypedDict):
    street: str
    postcode: str
    access: str


class Plate(TypedDict, total=False):
    """What the rating plate says, as typed; `photo` whether there is a picture of it."""

    maker: str
    model: str
    serial: str
    power: str
    year: str
    photo: bool


class Window(TypedDict):
    """When somebody is at home, in the local time of the oven, as ISO 8601 without a zone."""

    start: str
    end: str


class Consent(TypedDict):
    words: str
    given: str


class Firm(TypedDict):
    slug: str
    name: str


class Sheet(TypedDict):
    format: Literal[1]
    reference: str
    spoken: str
    firm: Firm
    created: str
    erase_after: str
    status: str
    contact: Contact
    address: Address
    rating_plate: Plate
    windows: list[Window]
    consent: Consent
    check: Summary
