"""What a check came to, as plain values: computed once, frozen in a job sheet, put in words by the formats.

Nothing here ever says that the oven is dead: nobody has proved it.
"""

from collections.abc import Iterable

from django.urls import reverse
from django.utils.translation import gettext

from triage.engine import CANT_TELL, NONE_OF_THESE, SCREEN, Check, Emergency, Result, Verdict
from triage.engine import Cause as LikelyCause
from triage.engine.enums import Method, SafetyGate, SwitchUse
from triage.engine.pack import OPENING
from triage.jobsheet.kit import kit_of
from triage.jobsheet.shapes import (
    CheckRegion,
    CheckSummary,
    FullSummary,
    SheetAnswer,
    SheetCause,
    SheetFault,
    SheetFlag,
    SheetPack,
    SheetSupply,
    SheetWeight,
)
from triage.jobsheet.wording import DID, NOT_SAID, answer_label, question_label, short_chance
from triage.knowledge.library import library
from triage.knowledge.texts import Texts
from triage.knowledge.wording import ISOLATE
from triage.query import check_query


def summarise_with_kit(check: Check, url: str) -> FullSummary:
    """`url` opens the same check again."""
    summary = summarise(check, url)
    return FullSummary({**summary, "kit": kit_of(check, _texts(check), summary["causes"][0]["fault"])})


def summarise(check: Check, url: str) -> CheckSummary:
    """The summary without the kit, for a page that shows none."""
    verdict, texts = check.conclusion().verdict, _texts(check)
    region = library().regions[check.region.id]
    answers = _answers(check, texts, verdict)
    return CheckSummary(
        pack=SheetPack(id=check.pack.id, version=check.pack.version),
        region=CheckRegion(id=region.id, name=region.name, territory=region.territory),
        language=texts.language,
        finished=isinstance(check.step, Result | Emergency),
        band=verdict.band.value,
        complaint=_complaint(check, texts),
        danger_signs="seen" if check.flags else "none-seen" if _screened(check) else "not-asked",
        red_flags=_flags(check, texts),
        supply=_supply(check),
        oven=[answer for answer in answers if answer["observation"] in check.pack.variants],
        answers=[answer for answer in answers if _is_plain(check, answer)],
        readings=[answer for answer in answers if _is_reading(check, answer)],
        attempted=[answer for answer in answers if answer["observation"].startswith(DID)],
        causes=[_cause(texts, cause) for cause in verdict.causes],
        indistinguishable=_named(texts, verdict.alike),
        related=_named(texts, verdict.also_check),
        ignored_answers=len(check.problems),
        local_rules=region.local_line,
        check_url=url,
    )


def check_url(check: Check, origin: str) -> str:
    """Where the same check opens again; `origin` is the site's own address, without a slash."""
    return f"{origin}{reverse('household-step')}?{check_query(check.region.id, check.answers.items())}"


def _texts(check: Check) -> Texts:
    return library().texts_for(check.region.id)


def _screened(check: Check) -> bool:
    return check.answers.get(SCREEN) == NONE_OF_THESE


def _complaint(check: Check, texts: Texts) -> str:
    """The line of the first page that fits best, else the name of the complaint."""
    answers, start = check.answers, texts.start
    fitting = [
        (len(complaint.answers), entry.label)
        for complaint, entry in zip(check.pack.complaints, start.entries, strict=True)
        if complaint.option == answers.get(OPENING) and complaint.answers.items() <= answers.items()
    ]
    if fitting:
        return max(fitting, key=lambda found: found[0])[1]
    option = answers.get(OPENING)
    return answer_label(texts, OPENING, option) if option else gettext(NOT_SAID)


def _supply(check: Check) -> SheetSupply:
    answer = check.answers.get(SafetyGate.SUPPLY_OFF)
    if answer == "yes":
        return SheetSupply(said="off", proved_dead=False, text=gettext("Said to be off. Not proved dead."))
    if answer == "no":
        return SheetSupply(said="on", proved_dead=False, text=gettext("Said not to be off."))
    return SheetSupply(said="not-said", proved_dead=False, text=gettext("Not said to be off."))


def _flags(check: Check, texts: Texts) -> list[SheetFlag]:
    """The signs in order. Where one forbids every switch, the pages show what that one says and no other's advice."""
    untouchable = any(flag.switches == SwitchUse.NEVER for flag in check.flags)
    found = []
    for flag in check.flags:
        text = texts.flags[flag.id]
        shown = text.first if flag.switches == SwitchUse.NEVER or not untouchable else ()
        lines = [line for line in shown if line != ISOLATE]
        found.append(SheetFlag(flag=flag.id, level=flag.level.value, heading=text.heading, instructed=lines))
    return found


def _answers(check: Check, texts: Texts, verdict: Verdict) -> list[SheetAnswer]:
    """Every answer that holds, in the order given, with its weight for the likeliest cause."""
    weights = {weight.observation: weight.decibans for weight in verdict.causes[0].weights}
    return [
        SheetAnswer(
            observation=observation,
            answer=answer,
            question=question_label(texts, observation),
            text=answer_label(texts, observation, answer),
            decibans=round(weights[observation], 2) if observation in weights else None,
        )
        for observation, answer in check.answers.items()
    ]


def _is_plain(check: Check, answer: SheetAnswer) -> bool:
    """Whether an answer stands nowhere else on the sheet."""
    observation = answer["observation"]
    elsewhere = {SCREEN, OPENING, *check.pack.variants}
    return not (observation in elsewhere or observation.startswith(DID) or _is_reading(check, answer))


def _is_reading(check: Check, answer: SheetAnswer) -> bool:
    """Whether it was measured or tried out rather than seen or remembered: a trial, or an answer in numbers."""
    known = check.pack.observations.get(answer["observation"])
    if known is None or answer["observation"].startswith(DID):
        return False
    return known.method == Method.TRIAL or answer["answer"] not in (*known.options, CANT_TELL)


def _cause(texts: Texts, cause: LikelyCause) -> SheetCause:
    text = texts.faults[cause.fault]
    return SheetCause(
        fault=cause.fault,
        name=text.name,
        trade=text.trade,
        probability=cause.chance,
        probability_text=short_chance(cause.chance),
        technician_notes=text.repairer,
        parts_to_bring=list(text.kit),
        weights=[
            SheetWeight(observation=weight.observation, answer=weight.answer, decibans=round(weight.decibans, 2))
            for weight in cause.weights
        ],
    )


def _named(texts: Texts, faults: Iterable[str]) -> list[SheetFault]:
    return [SheetFault(fault=fault, name=texts.faults[fault].name) for fault in faults]
