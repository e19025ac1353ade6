"""The pack people use: whole, reachable from end to end, and in words a tired person understands."""

import re
from statistics import median

import pytest
import yaml

from tests.builders import ANYWHERE, ELECTRIC_OVEN, electric_oven
from triage.authoring.reading_grade import grade
from triage.engine.belief import infer_belief
from triage.engine.model import compile_model
from triage.engine.pack import NONE_OF_THESE, SCREEN

PACK = electric_oven()
MODEL = compile_model(PACK, ANYWHERE)
KEBAB = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*")
# An answer that no level gives oftener than this comes from slips of the tongue alone.
SLIP = 0.02
# Answers that stand for no level: two openings that lead elsewhere, and a danger that ends the check by itself.
WITHOUT_A_LEVEL = ["complaint: will-not-light", "complaint: something-else", "smell-type: gas"]
# Flags no question asks after: a line of the danger page that is shared speaks for them too.
SPOKEN_FOR = {"co-alarm": "gas-smell", "burn": "shut-in"}
ASKED = yaml.safe_load((ELECTRIC_OVEN / "text" / "en" / "observations.yaml").read_text("utf-8"))


def evidence():
    """Every question whose answer says something about the oven, tasks' outcomes aside."""
    return [o for o in PACK.observations.values() if o.reports and not o.task]


def test_the_pack_is_as_large_as_the_trade_knows_it():
    assert len(PACK.faults) >= 64
    assert len(PACK.observations) >= 49


def test_there_is_normal_behaviour_a_cause_on_the_users_side_and_one_fault_for_none_of_these():
    kinds = [fault.kind for fault in PACK.faults.values()]
    assert kinds.count("other") == 1
    assert kinds.count("normal") >= 5
    assert kinds.count("user") >= 3


def test_every_id_is_lower_case_words_joined_by_hyphens():
    ids = [
        *PACK.faults,
        *PACK.observations,
        *PACK.conditions,
        *PACK.variants,
        *PACK.red_flags,
        *PACK.tasks,
        *(option for o in PACK.observations.values() for option in o.options),
        *(level for c in PACK.conditions.values() for level in c.levels),
        *(option for v in PACK.variants.values() for option in v.options),
        *(fault.family for fault in PACK.faults.values()),
    ]
    assert [name for name in ids if not KEBAB.fullmatch(name)] == []


def test_every_fault_is_made_half_as_likely_again_by_some_answer():
    before = infer_belief(MODEL, {}).faults
    best = dict.fromkeys(before, 0.0)
    for question in evidence():
        for option in question.options:
            after = infer_belief(MODEL, {question.id: option}).faults
            best = {fault: max(best[fault], after[fault] / before[fault]) for fault in best}
    assert {fault: raised for fault, raised in best.items() if raised < 1.5} == {}


def test_every_fault_leads_when_a_person_answers_as_it_would_have_them():
    """The most likely answer to every question, told at once, brings its family to the top three."""
    lost = [fault for fault in PACK.faults if not leads(fault)]
    assert len(lost) <= len(PACK.faults) // 8, lost


def leads(fault):
    h = next(i for i, hypothesis in enumerate(MODEL.hypotheses) if hypothesis.faults == (fault,))
    answers = {SCREEN: NONE_OF_THESE}
    for question in evidence():
        if question.reports in PACK.conditions and not question.requires_answers and not question.requires_variant:
            table = MODEL.answer_tables[question.id][usual_kind(question, h)]
            row = table.distinct[table.index[h]]
            answers[question.id] = question.options[row.index(max(row))]
    families = list(infer_belief(MODEL, answers).families)[:3]
    return PACK.faults[fault].family in families


def usual_kind(question, h):
    given = PACK.conditions[question.reports].parent
    if given is None:
        return 0
    shares = [row[h] for row in MODEL.variant_weights[given]]
    return shares.index(max(shares))


def test_every_option_of_every_question_is_the_answer_to_something():
    idle = []
    for question in evidence():
        for place, option in enumerate(question.options):
            if max(row[place] for row in question.answer_probabilities) < SLIP:
                idle.append(f"{question.id}: {option}")
    assert idle == WITHOUT_A_LEVEL


@pytest.mark.parametrize("question", PACK.observations.values(), ids=lambda question: question.id)
def test_every_question_can_come_up(question):
    """What it hangs on exists, without going in a circle, on an oven that can have both."""
    chain, waiting = [], [question]
    while waiting:
        current = waiting.pop()
        assert current not in chain or not current.requires_answers
        chain.append(current)
        waiting += [PACK.observations[parent] for parent in current.requires_answers]
        assert len(chain) < 20
    for variant in PACK.variants.values():
        needed = [set(o.requires_variant[variant.id]) for o in chain if variant.id in o.requires_variant]
        assert not needed or set.intersection(*needed)


def test_every_answer_a_question_hangs_on_is_an_answer_of_its_parent():
    for question in PACK.observations.values():
        for parent, options in question.requires_answers.items():
            assert options <= set(PACK.observations[parent].options)
            assert options


def test_every_red_flag_can_be_raised_and_its_sign_stands_on_a_question():
    raised = {flag for o in PACK.observations.values() for flag in o.flags.values()}
    assert raised == set(PACK.red_flags)
    for flag in PACK.red_flags.values():
        for observation, option in flag.signs:
            assert option in PACK.observations[observation].options
            assert PACK.red_flags[PACK.observations[observation].flags[option]].level.ends_check


def test_every_red_flag_that_ends_the_check_is_asked_after_or_stands_on_the_danger_page():
    asked = {flag for o in evidence() for flag in o.flags.values()}
    ending = [flag for flag in PACK.red_flags.values() if flag.level.ends_check and not flag.signs]
    assert {flag.id for flag in ending} - asked == set(SPOKEN_FOR)


@pytest.mark.parametrize(("flag", "line"), SPOKEN_FOR.items())
def test_the_line_that_speaks_for_a_flag_is_at_least_as_grave(flag, line):
    spoken, speaker = PACK.red_flags[flag], PACK.red_flags[line]
    strictness = ["any", "away", "never"]
    assert speaker.signs
    assert speaker.level.value == "emergency"
    assert strictness.index(speaker.switches) >= strictness.index(spoken.switches)
    assert set(spoken.phone_numbers) <= set(speaker.phone_numbers)


def test_cautions_come_after_the_flags_that_end_the_check():
    """Of contradicting answers to one question the first flag of the file stands, so the graver must come first."""
    ends = [flag.level.ends_check for flag in sorted(PACK.red_flags.values(), key=lambda flag: flag.rank)]
    assert ends == sorted(ends, reverse=True)


def test_no_task_is_safe_and_unsafe_with_the_same_fault():
    for task in PACK.tasks.values():
        assert task.helps, task.id
        assert not task.cures - task.helps, task.id
        assert not task.unsafe_with & task.cures, task.id


def test_nobody_is_told_to_heat_an_oven_that_could_burn_or_shock():
    dangerous = {fault.id for fault in PACK.faults.values() if fault.band.value == "make-safe"}
    for task in PACK.tasks.values():
        if task.needs_heat:
            assert not task.helps & dangerous, task.id
            assert dangerous <= task.unsafe_with, (task.id, dangerous - task.unsafe_with)


def test_the_questions_are_read_with_ease():
    """Flesch-Kincaid: no question above the sixth school year, half of them at most the fourth."""
    grades = {name: grade(text["ask"]) for name, text in ASKED.items()}
    assert {name: round(value, 1) for name, value in grades.items() if value > 6.0} == {}
    assert median(grades.values()) <= 4.0


def test_what_is_said_aloud_takes_no_more_than_fifty_words():
    long = {name: len(text["say"].split()) for name, text in ASKED.items() if len(text["say"].split()) > 50}
    assert long == {}
