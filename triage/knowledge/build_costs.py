"""What repairs cost and what faults waste, from YAML."""

from collections.abc import Mapping

from triage.engine.enums import InterimUse, PriceClass
from triage.engine.pack import Fault
from triage.engine.repairs import Costs, Range, Waste
from triage.knowledge.entry import Entry
from triage.knowledge.problems import PackProblem
from triage.knowledge.yaml_reader import LocatedDict

# With less than this share of its power a usual oven never gets hot at all.
MIN_POWER_SHARE = 0.4


def build_costs(file: str, fields: LocatedDict, faults: Mapping[str, Fault], problems: list[PackProblem]) -> Costs:
    top = Entry(file, "file", fields, problems)
    prices = {}
    for name, below in top.names("prices", required=True):
        currency = below.below(name, required=True)
        if currency is not None:
            prices[name] = _classes(currency, 1_000_000)
    multiples = top.below("call_out_multiples", required=True)
    costs = Costs(
        prices=prices,
        call_out_multiples=_classes(multiples, 100) if multiples else {},
        life_years=read_range(top, "life_years", 1, 60),
        failure_rate=read_range(top, "failure_rate", 0, 1),
        interest_rate=top.number("interest_rate", 0, 0.5),
        waste=_wastes(top, faults),
    )
    top.close()
    return costs


def read_range(entry: Entry, key: str, least: float, most: float) -> Range:
    """Two numbers in order, as [low, high]."""
    entry.used.add(key)
    value = entry.fields.get(key)
    numbers = isinstance(value, list) and all(isinstance(n, int | float) and not isinstance(n, bool) for n in value)
    if numbers and len(value or ()) == 2 and least <= value[0] <= value[1] <= most:  # type: ignore[index]
        return Range(float(value[0]), float(value[1]))  # type: ignore[index]
    what = f"must be a range, not {value!r}." if key in entry.fields else f"`{key}` is missing."
    entry.report(key, what, f"Write [low, high], both from {least:g} to {most:g}.")
    return Range(least, least)


def _classes(entry: Entry, most: float) -> dict[str, Range]:
    """A range for every price class."""
    spans = {name.value: read_range(entry, name, 0, most) for name in PriceClass}
    entry.close()
    return spans


def _wastes(top: Entry, faults: Mapping[str, Fault]) -> dict[str, Waste]:
    wastes = {}
    for name, below in top.names("waste"):
        entry = below.below(name, required=True) if below.is_known(name, name, list(faults)) else None
        if entry is None:
            continue
        wastes[name] = Waste(
            gap_cm2=_optional(entry, "gap_cm2", 0, 1000),
            power_share=_optional(entry, "power_share", MIN_POWER_SHARE, 1),
            too_hot_kelvin=_optional(entry, "too_hot_kelvin", 0, 150),
            always_watts=_optional(entry, "always_watts", 0, 5000),
        )
        if faults[name].interim_use == InterimUse.LEAVE_OFF:
            below.report(name, "has to be left off, so it wastes nothing.", "Take it out.")
        entry.close()
    return wastes


def _optional(entry: Entry, key: str, least: float, most: float) -> Range | None:
    entry.used.add(key)
    return read_range(entry, key, least, most) if entry.has(key) else None
