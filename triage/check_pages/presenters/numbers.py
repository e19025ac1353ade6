"""Telephone numbers of a region, each with what it is for. Only numbers that a region may show ever come here."""

from collections.abc import Iterable

from django.utils.translation import gettext as _

from triage.check_pages.view_models import Number
from triage.knowledge.region_builder import RegionProfile


def emergency_call(region: RegionProfile) -> Number:
    return _number(region.emergency, region.emergency_for)


def calls_for(region: RegionProfile, wanted: Iterable[str]) -> list[Number]:
    """The numbers of `wanted` (emergency, gas, network) that this region shows, in that order, each once."""
    known = {
        "emergency": emergency_call(region),
        "gas": _number(region.gas, _("gas emergency line. %(how)s") % {"how": region.gas_text}),
        "network": _number(region.network, _("electricity network company")),
    }
    numbers = [known[name] for name in dict.fromkeys(wanted)]
    return list({number.number: number for number in numbers if number.number}.values())


def without_number(region: RegionProfile, wanted: Iterable[str]) -> list[str]:
    """What to do instead for each of `wanted` that this region shows no number for."""
    lines = []
    for name in dict.fromkeys(wanted):
        if name == "gas" and not region.gas:
            lines.append(_("Gas emergency line: %(how)s") % {"how": region.gas_text})
        if name == "network" and not region.network:
            words = {"network": region.words["network"], "how": region.network_text}
            lines.append(_("The %(network)s: %(how)s") % words)
    return lines


def _number(number: str, for_what: str) -> Number:
    digits = "".join(sign for sign in number if sign.isdigit() or sign == "+")
    return Number(number, for_what[:1].upper() + for_what[1:], f"tel:{digits}")
