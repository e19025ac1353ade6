"""Region files to what a place changes: its words, its numbers, its rules, and its ovens for the engine.

A region must have an emergency number. A gas or network number is passed on only where its file says it may be shown;
otherwise it comes back empty and the region's sentence stands alone.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from triage.engine.pack import Pack, Region
from triage.knowledge.build_conditions import SUM_TOLERANCE
from triage.knowledge.entry import Entry
from triage.knowledge.problems import PackProblem
from triage.knowledge.text_builder import check_terms
from triage.knowledge.wording import REGION_TERMS, with_terms
from triage.knowledge.yaml_reader import LocatedDict, read_yaml

MESSAGES = "messages"
NUMBER_WORD = "emergency"
# How sure each fact is and where it was seen: for the people who review a region, and not loaded.
FOR_REVIEW = {"flag", "sure", "seen", "sources", "local_words", "local_switch", "also"}


@dataclass(frozen=True, slots=True)
class RegionProfile:
    """One place. `hardwired` and `appliance_inside` are sentences on who may do such work; `isolation_note` follows
    the steps that cut the supply; `unsure` lists facts a person still has to confirm, and with whom. `territory` is
    the two-letter code, empty for the generic region."""

    region: Region
    name: str
    territory: str
    languages: tuple[str, ...]
    terms: Mapping[str, str]
    emergency: str
    emergency_for: str
    gas: str
    gas_text: str
    network: str
    network_text: str
    temperature: str
    currency: str
    nominal_voltage: str
    isolation_note: str
    local_line: str
    hardwired: str
    appliance_inside: str
    recall: str
    claim_first: str
    unverified: tuple[tuple[str, str], ...]

    @property
    def id(self) -> str:
        return self.region.id


def build_regions(folder: Path, language: str, pack: Pack, problems: list[PackProblem]) -> dict[str, RegionProfile]:
    """Every region in `folder` by id, in the order of their names; `language` names the file of its sentences."""
    messages = _messages(folder, f"{MESSAGES}.{language}", problems)
    found = {}
    for path in sorted(folder.glob("*.yaml")):
        if path.name.startswith(f"{MESSAGES}."):
            continue
        shown = f"regions/{path.name}"
        fields = read_yaml(path, shown, problems)
        if fields is not None:
            check_terms(shown, fields, problems)
            profile = _build(Entry(shown, path.stem, fields, problems), pack, messages)
            found[path.stem] = with_terms(profile, profile.terms)
    return dict(sorted(found.items(), key=lambda item: item[1].name))


def _build(top: Entry, pack: Pack, messages: Mapping[str, Mapping[str, str]]) -> RegionProfile:
    emergency, gas, network = (_below(top, key) for key in (NUMBER_WORD, "gas", "network"))
    units, supply, who_may = (_below(top, key) for key in ("units", "supply", "who_may"))
    claim, recall = _below(top, "claim_first"), _below(top, "recall")
    profile = RegionProfile(
        region=Region(top.where, _shares(top, pack), frozenset(top.ids("removed_tasks", pack.tasks))),
        name=top.text("name"),
        territory=_territory(top.where),
        languages=top.ids("languages"),
        terms=_terms(top, emergency),
        emergency=emergency.text("number"),
        emergency_for=emergency.text("for"),
        gas=_shown_number(gas),
        gas_text=gas.text("text"),
        network=_shown_number(network),
        network_text=network.text("text"),
        temperature=units.choice("temperature", ("C", "F")),
        currency=units.text("currency"),
        nominal_voltage=supply.text("nominal_voltage"),
        isolation_note=supply.text("note"),
        local_line=top.text("local_line"),
        hardwired=_sentence(who_may, "hardwired", messages),
        appliance_inside=_sentence(who_may, "appliance_inside", messages),
        recall=recall.text("body"),
        claim_first=claim.text("text"),
        unverified=tuple(
            (item.text("fact"), item.text("check_with")) for item in top.items("unverified", required=False)
        ),
    )
    for entry in (top, emergency, gas, network, units, supply, who_may, claim, recall):
        entry.used |= FOR_REVIEW
        entry.close()
    return profile


def _below(top: Entry, key: str) -> Entry:
    return top.below(key, required=True) or Entry(top.file, f"{top.where}, {key}", LocatedDict(top.fields.line), [])


def _territory(region: str) -> str:
    code = region.split("-")[0].upper()
    return code if len(code) == 2 else ""


def _shown_number(below: Entry) -> str:
    """The number if it may be shown, else nothing."""
    shown = below.flag("show", False)
    below.used.add("number")
    number = str(below.fields.get("number") or "")
    if shown and not number:
        below.report("show", "is true but there is no number.", "Give the number or write show: false.")
    return number if shown else ""


def _terms(top: Entry, emergency: Entry) -> dict[str, str]:
    below = _below(top, "terms")
    words = {name: below.text(name) for name in REGION_TERMS if name != NUMBER_WORD}
    below.close()
    return words | {NUMBER_WORD: str(emergency.fields.get("number", ""))}


def _shares(top: Entry, pack: Pack) -> dict[str, Mapping[str, float]]:
    shares: dict[str, Mapping[str, float]] = {}
    for name, below in top.names("variant_shares"):
        if not below.is_known(name, name, list(pack.variants)):
            continue
        entry = below.below(name, required=True)
        if entry is None:
            continue
        shares[name] = {option: entry.number(option, 0.0001, 1) for option in pack.variants[name].options}
        entry.close()
        if abs(sum(shares[name].values()) - 1) > SUM_TOLERANCE:
            below.report(name, f"adds up to {sum(shares[name].values()):g}.", "Make the shares add up to 1.")
    return shares


def _messages(folder: Path, name: str, problems: list[PackProblem]) -> dict[str, dict[str, str]]:
    """Sentences by topic and key."""
    shown = f"regions/{name}.yaml"
    fields = read_yaml(folder / f"{name}.yaml", shown, problems) or LocatedDict(1)
    top = Entry(shown, MESSAGES, fields, problems)
    return {topic: {key: below.text(key) for key in below.fields} for topic in fields if (below := top.below(topic))}


def _sentence(who_may: Entry, topic: str, messages: Mapping[str, Mapping[str, str]]) -> str:
    known = messages.get(topic, {})
    if not known:
        who_may.used.add(topic)
        return ""
    return known[who_may.choice(topic, known)]
