"""What callers may say, for the page to match as an agent types: every answer with the words people use for it.

`answers` holds one row per answer a question can get, and one per line of the first page, in the order they are tried
on a tie. `pairs` is what picking it records, `heard` the phrases to match, `danger` 2 where it ends the check and 1
where it is a caution, `after` and `needs` the answers without which the question does not exist.

The questions that only a trial answers, all of them by an instrument, are left out on purpose: their answers are worked
out of the numbers of a reading, and nobody tells those in words. A caller who has numbers types them on the phone.
"""

from collections.abc import Iterator, Mapping
from typing import Any

from triage.check_pages.presenters.answers import question_label
from triage.check_pages.request import CheckRequest
from triage.engine.enums import Method
from triage.engine.pack import OPENING, Observation, Pack, Requirement


def build_phrase_index(check_request: CheckRequest) -> dict[str, Any]:
    return {
        "version": check_request.pack.version,
        "answers": [*_lines(check_request), *_answers(check_request)],
    }


def _lines(check_request: CheckRequest) -> Iterator[dict[str, Any]]:
    """The first page's lines; each records the complaint and what its words truly state."""
    pack, texts = check_request.pack, check_request.texts
    for complaint, entry in zip(pack.complaints, texts.start.entries, strict=True):
        pairs = {OPENING: complaint.option, **complaint.answers}
        danger = max(_danger(pack, pack.observations[name], option) for name, option in pairs.items())
        yield _row(
            question_label(texts, OPENING),
            entry.label,
            pairs,
            danger,
            [entry.label, *_split_phrases(entry.search_terms)],
        )


def _answers(check_request: CheckRequest) -> Iterator[dict[str, Any]]:
    pack, texts = check_request.pack, check_request.texts
    for name, text in texts.questions.items():
        asked = pack.observations[name]
        if name == OPENING or asked.method == Method.TRIAL:
            continue
        for option in asked.options:
            phrases = [text.options[option], *_split_phrases(texts.calls.heard.get(name, {}).get(option, ""))]
            row = _row(text.short, text.options[option], {name: option}, _danger(pack, asked, option), phrases)
            yield row | _gates(asked)


def _row(question: str, answer: str, pairs: Mapping[str, str], danger: int, heard: list[str]) -> dict[str, Any]:
    return {"question": question, "answer": answer, "pairs": dict(pairs), "danger": danger, "heard": heard}


def _danger(pack: Pack, asked: Observation, option: str) -> int:
    flag = asked.flags.get(option)
    return 0 if flag is None else 2 if pack.red_flags[flag].level.ends_check else 1


def _gates(asked: Observation) -> dict[str, dict[str, list[str]]]:
    gates: dict[str, Requirement] = {"after": asked.requires_answers, "needs": asked.requires_variant}
    return {name: {o: sorted(options) for o, options in gate.items()} for name, gate in gates.items() if gate}


def _split_phrases(phrases: str) -> list[str]:
    return [phrase.strip() for phrase in phrases.split(",") if phrase.strip()]
