"""What to tell whoever comes, as plain text: read aloud, copied, or kept as a file.

The householder's page shows the short form. The file adds what only a repairer needs: weights, what to measure, what
to bring. Neither ever says that the oven is dead: nobody has proved it.
"""

from collections.abc import Iterable, Iterator

from django.utils.translation import gettext as _

from triage.check_pages.presenters.answers import answer_words, question_words
from triage.check_pages.presenters.causes import short_chance
from triage.check_pages.visit import Visit
from triage.engine import NONE_OF_THESE, OPENING, SCREEN, Advice, Band, MakeSafe, Verdict

OFF_AT_THE_SUPPLY = "supply-off"


def summary_of(visit: Visit, step: Advice | MakeSafe) -> str:
    """The short form, for the page."""
    parts = [
        _head(visit, step),
        _section(_("KIND OF OVEN"), _kinds(visit)),
        _section(_("WHAT WAS SEEN"), (f"{q}: {a}" for q, a, _w in _answers(visit, step.verdict))),
        _section(_("LIKELY CAUSES, of ovens that answer like this"), _causes(visit, step.verdict)),
        _foot(visit),
    ]
    return "\n\n".join(part for part in parts if part)


def summary_text(visit: Visit) -> str:
    """The whole of it, for the file; what is known so far where the questions are not over."""
    step = visit.step
    if not isinstance(step, Advice | MakeSafe):
        told = _section(_("ANSWERS SO FAR"), _plain_answers(visit))
        return "\n\n".join(part for part in (_title(), told, _foot(visit)) if part) + "\n"
    parts = [
        _head(visit, step),
        _section(_("KIND OF OVEN"), _kinds(visit)),
        _section(
            _("ANSWERS (weight for the likeliest cause, in decibans: above zero points to it)"),
            (f"{q}: {a} ({w:+.1f})" for q, a, w in _answers(visit, step.verdict)),
        ),
        _section(_("LIKELY CAUSES, of ovens that answer like this"), _causes(visit, step.verdict)),
        _section(_("ALSO CHECK"), (visit.texts.faults[fault].name for fault in step.verdict.also_check)),
        _section(_("FOR THE REPAIRER: a skilled person with test gear, the oven proved dead"), _trade(visit, step)),
        _foot(visit),
    ]
    return "\n\n".join(part for part in parts if part) + "\n"


def _title() -> str:
    return _("OVEN FAULT CHECK")


def _section(heading: str, lines: Iterable[str]) -> str:
    told = [f"- {line}" for line in lines]
    return "\n".join([heading, *told]) if told else ""


def _head(visit: Visit, step: Advice | MakeSafe) -> str:
    flags = step.flags if isinstance(step, MakeSafe) else step.cautions
    signs = [visit.texts.flags[flag.id].heading for flag in flags]
    lines = [_title(), _("Trouble: %(words)s") % {"words": _trouble(visit)}]
    lines += [_("Danger sign: %(sign)s") % {"sign": sign} for sign in signs]
    if not signs and visit.reading.answers.get(SCREEN) == NONE_OF_THESE:
        lines.append(_("Danger signs: none seen"))
    if step.verdict.band is Band.MAKE_SAFE:
        lines.append(_("Advice given: leave it off until it has been checked"))
    off = visit.reading.answers.get(OFF_AT_THE_SUPPLY) == "yes"
    lines.append(_("Supply: said to be off. Not proved dead.") if off else _("Supply: not said to be off."))
    return "\n".join(lines)


def _trouble(visit: Visit) -> str:
    """The line of the first page that fits best, else the name of the complaint."""
    answers, start = visit.reading.answers, visit.texts.start
    fitting = [
        (len(complaint.answers), entry.words)
        for complaint, entry in zip(visit.library.pack.complaints, start.entries, strict=True)
        if complaint.option == answers.get(OPENING) and complaint.answers.items() <= answers.items()
    ]
    if fitting:
        return max(fitting, key=lambda found: found[0])[1]
    told = answers.get(OPENING)
    return answer_words(visit.texts, OPENING, told) if told else _("not said")


def _kinds(visit: Visit) -> Iterator[str]:
    for name in visit.library.pack.variants:
        if name in visit.reading.answers:
            yield _line(visit, name)


def _answers(visit: Visit, verdict: Verdict) -> Iterator[tuple[str, str, float]]:
    """Question, answer and weight for the likeliest cause, without what stands elsewhere in the text."""
    elsewhere = {SCREEN, OPENING, *visit.library.pack.variants}
    for weight in verdict.causes[0].weights:
        if weight.observation not in elsewhere:
            question = question_words(visit.texts, weight.observation)
            yield question, answer_words(visit.texts, weight.observation, weight.answer), weight.decibans


def _plain_answers(visit: Visit) -> Iterator[str]:
    return (_line(visit, observation) for observation in visit.reading.answers)


def _line(visit: Visit, observation: str) -> str:
    answer = visit.reading.answers[observation]
    return f"{question_words(visit.texts, observation)}: {answer_words(visit.texts, observation, answer)}"


def _causes(visit: Visit, verdict: Verdict) -> Iterator[str]:
    for cause in verdict.causes:
        fault = visit.texts.faults[cause.fault]
        yield f"{short_chance(cause.chance)}: {fault.name} ({fault.trade})"


def _trade(visit: Visit, step: Advice | MakeSafe) -> Iterator[str]:
    for cause in step.verdict.causes:
        fault = visit.texts.faults[cause.fault]
        kit = _(" Bring: %(parts)s.") % {"parts": ", ".join(fault.kit)} if fault.kit else ""
        yield f"{fault.name}: {fault.repairer}{kit}"


def _foot(visit: Visit) -> str:
    version = {"pack": visit.library.pack.version, "place": visit.place.name}
    return "\n".join(
        [
            _("Knowledge: %(pack)s, %(place)s. Local rules and licensed practice come first.") % version,
            _("This check again: %(address)s") % {"address": visit.origin + visit.links.step()},
        ]
    )
