"""What a check came to, as plain values: computed once, frozen in a job sheet, told in words by the formats.

Nothing here ever says that the oven is dead: nobody has proved it.
"""

from collections.abc import Iterable, Sequence

from django.utils.translation import gettext as _

from triage.engine import CANT_TELL, NONE_OF_THESE, SCREEN, Emergency, RedFlag, Result, Verdict
from triage.engine import Cause as LikelyCause
from triage.engine.pack import OPENING
from triage.jobsheet.check import Check
from triage.jobsheet.kit import kit_of
from triage.jobsheet.shapes import Answer, Cause, Flag, Named, Pack, Region, Summary, Supply, Told, Weighed
from triage.jobsheet.wording import DID, answer_words, question_words, short_chance
from triage.knowledge.wording import ISOLATE

OFF_AT_THE_SUPPLY = "supply-off"
NEVER = "never"


def summarise(check: Check) -> Summary:
    told = tell(check)
    return Summary({**told, "kit": kit_of(check, told["causes"][0]["fault"])})


def tell(check: Check) -> Told:
    """The summary without the kit, for a page that shows none."""
    step = check.conclusion()
    flags = step.flags if isinstance(step, Emergency) else step.cautions
    causes = [_cause(check, cause) for cause in step.verdict.causes]
    told = _answers(check, step.verdict)
    return Told(
        pack=Pack(id=check.library.pack.id, version=check.library.pack.version),
        region=Region(id=check.place.region.id, name=check.place.name, territory=check.place.territory),
        language=check.texts.language,
        finished=isinstance(check.step, Result | Emergency),
        band=step.verdict.band.value,
        trouble=_trouble(check),
        danger_signs="seen" if flags else "none-seen" if _screened(check) else "not-asked",
        red_flags=_flags(check, flags),
        supply=_supply(check),
        oven=[answer for answer in told if answer["observation"] in check.library.pack.variants],
        answers=[answer for answer in told if _is_plain(check, answer)],
        readings=[answer for answer in told if _is_reading(check, answer)],
        tried=[answer for answer in told if answer["observation"].startswith(DID)],
        causes=causes,
        alike=_named(check, step.verdict.alike),
        also_check=_named(check, step.verdict.also_check),
        dropped=len(check.reading.problems),
        local_rules=check.place.local_line,
        check_again=check.address,
    )


def _screened(check: Check) -> bool:
    return check.reading.answers.get(SCREEN) == NONE_OF_THESE


def _trouble(check: Check) -> str:
    """The line of the first page that fits best, else the name of the complaint."""
    answers, start = check.reading.answers, check.texts.start
    fitting = [
        (len(complaint.answers), entry.words)
        for complaint, entry in zip(check.library.pack.complaints, start.entries, strict=True)
        if complaint.option == answers.get(OPENING) and complaint.answers.items() <= answers.items()
    ]
    if fitting:
        return max(fitting, key=lambda found: found[0])[1]
    told = answers.get(OPENING)
    return answer_words(check.texts, OPENING, told) if told else _("not said")


def _supply(check: Check) -> Supply:
    answer = check.reading.answers.get(OFF_AT_THE_SUPPLY)
    if answer == "yes":
        return Supply(said="off", proved_dead=False, words=_("Said to be off. Not proved dead."))
    if answer == "no":
        return Supply(said="on", proved_dead=False, words=_("Said not to be off."))
    return Supply(said="not-said", proved_dead=False, words=_("Not said to be off."))


def _flags(check: Check, flags: Sequence[RedFlag]) -> list[Flag]:
    """The signs in order. Where one forbids every switch, the pages show what that one says and no other's advice."""
    untouchable = any(flag.switches == NEVER for flag in flags)
    found = []
    for flag in flags:
        text = check.texts.flags[flag.id]
        shown = text.first if flag.switches == NEVER or not untouchable else ()
        told = [line for line in shown if line != ISOLATE]
        found.append(Flag(flag=flag.id, level=flag.level.value, heading=text.heading, told=told))
    return found


def _answers(check: Check, verdict: Verdict) -> list[Answer]:
    """Every answer that holds, in the order given, with its weight for the likeliest cause."""
    weights = {weight.observation: weight.decibans for weight in verdict.causes[0].weights}
    return [
        Answer(
            observation=observation,
            answer=answer,
            question=question_words(check.texts, observation),
            words=answer_words(check.texts, observation, answer),
            decibans=round(weights[observation], 2) if observation in weights else None,
        )
        for observation, answer in check.reading.answers.items()
    ]


def _is_plain(check: Check, told: Answer) -> bool:
    """Whether an answer is told nowhere else on the sheet."""
    observation = told["observation"]
    elsewhere = {SCREEN, OPENING, *check.library.pack.variants}
    return not (observation in elsewhere or observation.startswith(DID) or _is_reading(check, told))


def _is_reading(check: Check, told: Answer) -> bool:
    """Whether it was measured or tried out rather than seen or remembered: a trial, or an answer in numbers."""
    known = check.library.pack.observations.get(told["observation"])
    if known is None or told["observation"].startswith(DID):
        return False
    return known.how == "trial" or told["answer"] not in (*known.options, CANT_TELL)


def _cause(check: Check, cause: LikelyCause) -> Cause:
    text = check.texts.faults[cause.fault]
    return Cause(
        fault=cause.fault,
        name=text.name,
        trade=text.trade,
        chance=cause.chance,
        chance_words=short_chance(cause.chance),
        for_the_repairer=text.repairer,
        bring=list(text.kit),
        weights=[
            Weighed(observation=weight.observation, answer=weight.answer, decibans=round(weight.decibans, 2))
            for weight in cause.weights
        ],
    )


def _named(check: Check, faults: Iterable[str]) -> list[Named]:
    return [Named(fault=fault, name=check.texts.faults[fault].name) for fault in faults]
