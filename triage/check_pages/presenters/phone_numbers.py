"""Telephone numbers of a region, each with what it is for. Only numbers that a region may show ever come here."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from triage.knowledge.region_builder import RegionProfile


@dataclass(frozen=True)
class PhoneNumber:
    """A number as read and its `tel:` address; `how` is what the region says of it (`sentences/phone_number.txt`)."""

    kind: str
    number: str
    href: str
    how: str = ""


@dataclass(frozen=True)
class OtherContact:
    """Somebody whose number is not shown here: `how` to reach them (`sentences/other_contact.txt`)."""

    kind: str
    name: str
    how: str


def emergency_call(place: RegionProfile) -> PhoneNumber:
    return _number("emergency", place.emergency, place.emergency_for)


def numbers_for(place: RegionProfile, wanted: Iterable[str]) -> list[PhoneNumber]:
    """The numbers of `wanted` (emergency, gas, network) that this region shows, in that order, each once."""
    known = {
        "emergency": emergency_call(place),
        "gas": _number("gas", place.gas, place.gas_text),
        "network": _number("network", place.network),
    }
    numbers = [known[name] for name in dict.fromkeys(wanted)]
    return list({number.number: number for number in numbers if number.number}.values())


def numbers_not_shown(place: RegionProfile, wanted: Iterable[str]) -> Iterator[OtherContact]:
    """What to do instead for each of `wanted` that this region shows no number for."""
    for name in dict.fromkeys(wanted):
        if name == "gas" and not place.gas:
            yield OtherContact(name, "", place.gas_text)
        if name == "network" and not place.network:
            yield OtherContact(name, place.terms["network"], place.network_text)


def _number(kind: str, number: str, how: str = "") -> PhoneNumber:
    digits = "".join(sign for sign in number if sign.isdigit() or sign == "+")
    return PhoneNumber(kind, number, f"tel:{digits}", how)
