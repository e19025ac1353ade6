"""No outcome is forecast by numbers that it taught."""

from random import Random

import pytest

from tests.builders import PACK
from tests.learning.visits import SMALL_REGIONS, drawn_visits, real_regions, visit, visits, written_library
from triage.engine.belief import infer_belief
from triage.engine.model import compile_model
from triage.knowledge.overlay import Numbers, apply_overlay, observed_by_technician
from triage.learning.cross_validation import FOLDS, compare, fold_of, forecasts
from triage.learning.fit import prepare


def test_the_fifth_of_a_reference_is_the_same_everywhere_and_the_fifths_are_even():
    """SHA-256 of "visit-1" as sha256sum gives it gives, taken modulo five."""
    folds = [fold_of(f"visit-{number}") for number in range(1000)]
    assert set(folds) == set(range(FOLDS))
    assert all(160 <= folds.count(fold) <= 240 for fold in range(FOLDS))
    assert fold_of("visit-1") == 4


def test_a_forecast_is_what_the_pack_says_to_a_van():
    answers = {"complaint": "stays-cold", "heats": "no-heat"}
    (forecast,) = forecasts(PACK, SMALL_REGIONS, [visit(("lamp-failed", "element-open"), answers)])
    belief = infer_belief(compile_model(observed_by_technician(PACK), SMALL_REGIONS["anywhere"]), answers)
    assert sum(forecast.probabilities.values()) == pytest.approx(1.0)
    assert forecast.found == "element-open"
    assert forecast.probabilities["lamp-failed"] == pytest.approx(
        belief.probabilities[
            belief.model.hypotheses.index(next(h for h in belief.model.hypotheses if h.faults == ("lamp-failed",)))
        ]
    )


def test_a_fault_of_one_fifth_only_is_forecast_by_numbers_that_never_saw_it():
    """The other four fifths hold none, so what they teach makes it less likely."""
    taught = next(f"odd-{n}" for n in range(100) if fold_of(f"odd-{n}") == 0)
    others = [visit("element-open", reference=ref) for n in range(60) if fold_of(ref := f"visit-{n}") != 0]
    lesson = prepare(PACK, SMALL_REGIONS, [visit("other", reference=taught), *others])
    comparison = compare(lesson, PACK)
    (odd,) = forecasts(PACK, SMALL_REGIONS, [visit("other")])
    (after,) = forecasts(lesson.pack(range(1, len(lesson.outcomes))), SMALL_REGIONS, [visit("other")])
    (cheating,) = forecasts(lesson.pack(range(len(lesson.outcomes))), SMALL_REGIONS, [visit("other")])
    assert after.found_probability < odd.found_probability
    assert cheating.found_probability > after.found_probability
    assert comparison.outcomes == len(lesson.outcomes)


def test_outcomes_the_pack_foretold_wrongly_make_the_proposal_better():
    pack = written_library().pack
    truth = apply_overlay(
        pack, Numbers(calls={"fan-element-open": 5 * pack.faults["fan-element-open"].calls_per_1000}), "truth"
    )
    lesson = prepare(pack, real_regions(), drawn_visits(truth, 300, Random(4)))
    comparison = compare(lesson, pack)
    assert comparison.better
    assert comparison.after.log_score < comparison.before.log_score
    assert comparison.gain[0] == pytest.approx(comparison.before.log_score - comparison.after.log_score)


def test_outcomes_as_the_pack_foretold_them_are_not_called_better():
    pack = written_library().pack
    comparison = compare(prepare(pack, real_regions(), drawn_visits(pack, 200, Random(5))), pack)
    assert not comparison.better


def test_findings_the_pack_held_impossible_are_counted():
    lesson = prepare(
        PACK, SMALL_REGIONS, [*visits("element-open"), visit("board-dead", {"control": "mechanical"}, "odd")]
    )
    assert compare(lesson, PACK).unexpected == 1
