"""What must hold of the texts for calls: no danger sign goes unread, and nothing is heard that is no answer."""

from collections import Counter

from triage.engine.pack import Pack
from triage.knowledge.problems import PackProblem
from triage.knowledge.texts import Texts
from triage.knowledge.yaml_reader import LocatedDict

MAX_WORDS = 50  # twenty seconds at 150 words a minute


def check_calls(file: str, fields: LocatedDict, pack: Pack, texts: Texts, problems: list[PackProblem]) -> None:
    """Every mistake in the texts for calls is added to `problems`."""
    lines = fields.lines
    named = Counter(sign for spoken in texts.calls.rounds for sign in spoken.signs)
    wanted = {flag.id for flag in pack.red_flags.values() if flag.signs}
    for sign in sorted({*named, *wanted}):
        if sign not in wanted or named[sign] != 1:
            what = f"names {sign} {named[sign]} times; it must be {1 if sign in wanted else 0}."
            remedy = "Each red flag with a line on the danger page stands in one round, and no other."
            problems.append(PackProblem(file, lines.get("rounds", 1), "rounds", what, remedy))
    for spoken in texts.calls.rounds:
        if len(spoken.say.split()) > MAX_WORDS:
            what = f"takes {len(spoken.say.split())} words; at most {MAX_WORDS} can be said in one breath."
            problems.append(
                PackProblem(file, lines.get("rounds", 1), "rounds", what, "Make it shorter or part it in two.")
            )
    for question, answers in texts.calls.heard.items():
        for option in answers:
            if question not in texts.questions or option not in texts.questions[question].options:
                what = f"has phrases for {option}, which is no answer to {question}."
                remedy = "Use the ids of a question and its options, or take the line out."
                problems.append(PackProblem(file, lines.get("heard", 1), question, what, remedy))
