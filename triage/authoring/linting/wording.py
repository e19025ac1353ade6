"""Words a tired person understands, in every language the regions speak.

Limits: no question above the sixth school year and half of them at most the fourth (Flesch-Kincaid, made for English
and so used on English only); what an agent says aloud takes no more than fifty words.
"""

from collections.abc import Mapping
from pathlib import Path
from statistics import median

from triage.authoring.linting.finding import Gravity, LintFinding, PackSource
from triage.authoring.reading_grade import grade
from triage.knowledge.library import FIRST_LANGUAGE
from triage.knowledge.region_builder import MESSAGES, RegionProfile
from triage.knowledge.texts import QuestionText, Texts

MAX_GRADE = 6.0
MAX_MEDIAN_GRADE = 4.0
MAX_WORDS_ALOUD = 50


def hard_to_read(texts: Mapping[str, Texts], places: PackSource) -> list[LintFinding]:
    """A mistake for every text over a limit."""
    found = []
    for language, spoken in texts.items():
        file = f"text/{language}/observations"
        for name, question in spoken.questions.items():
            found += [_mistake(places, file, name, *wrong) for wrong in _too_hard(language, question)]
        grades = [grade(question.ask) for question in spoken.questions.values()]
        if language == FIRST_LANGUAGE and grades and median(grades) > MAX_MEDIAN_GRADE:
            what = f"half of the questions are above school year {MAX_MEDIAN_GRADE:g} (median {median(grades):.1f})."
            found.append(_mistake(places, file, "file", what, "Shorten sentences and take plainer words."))
    return found


def missing_languages(
    texts: Mapping[str, Texts], regions: Mapping[str, RegionProfile], regions_folder: Path, places: PackSource
) -> list[LintFinding]:
    """A remark on the languages that regions speak and the pack, or the sentences of the regions, do not. What a
    language folder lacks of the first one is refused when the pack is loaded."""
    speakers: dict[str, list[str]] = {}
    for code, profile in regions.items():
        for language in profile.languages:
            speakers.setdefault(language, []).append(code)
    sentences = {path.name for path in regions_folder.glob(f"{MESSAGES}.*.yaml")}
    lacking = {
        f"text/<language> of {places.folder.name}": [language for language in speakers if language not in texts],
        f"regions/{MESSAGES}.<language>.yaml": [n for n in speakers if f"{MESSAGES}.{n}.yaml" not in sentences],
    }
    found = []
    for files, languages in lacking.items():
        if languages:
            listed = ", ".join(f"{language} ({' '.join(speakers[language])})" for language in sorted(languages))
            what = f"there is no {files} for languages that regions speak: {listed}."
            problem = places.problem("pack", "languages", what, f"Translate {FIRST_LANGUAGE}; it is shown until then.")
            found.append(LintFinding(Gravity.REMARK, "language", problem))
    return found


def _too_hard(language: str, question: QuestionText) -> list[tuple[str, str]]:
    wrong = []
    if language == FIRST_LANGUAGE and grade(question.ask) > MAX_GRADE:
        what = f"`ask` is of school year {grade(question.ask):.1f}, {MAX_GRADE:g} is the most."
        wrong.append((what, "Shorten its sentences and take plainer words."))
    words = len(question.say.split())
    if words > MAX_WORDS_ALOUD:
        wrong.append((f"`say` takes {words} words aloud, {MAX_WORDS_ALOUD} are the most.", "Say it more shortly."))
    return wrong


def _mistake(places: PackSource, file: str, name: str, what: str, remedy: str) -> LintFinding:
    return LintFinding(Gravity.MISTAKE, "wording", places.problem(file, name, what, remedy))
