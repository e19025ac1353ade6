"""What the pages say and show, against definitions that others have published.

Each test names its source. "Memory" marks what was written down without the document at hand.
"""

import re

import pytest
from django.template.loader import render_to_string

from tests.reading_pages import read_page
from tests.safety.browsing import open_page
from tests.safety.css_colours import contrast, hue, schemes, signal
from tests.safety.emergency_numbers import EMERGENCY, SHOWN_BESIDES
from tests.safety.leading_to import trail_to
from triage.check_pages.view_models import ISO_SIGNS
from triage.engine.enums import Competence, SignalWord
from triage.knowledge.library import REGIONS, library
from triage.knowledge.yaml_reader import read_yaml

PACK, TEXTS = library().pack, library().texts_for("gb-eng")
CAUTIONS = [(name, caution) for name, task in TEXTS.tasks.items() for caution in task.cautions]
HURTS = re.compile(r"\b(shock|burn|cut you|trap|kill|fire|hurt|harm you|injur)\w*", re.IGNORECASE)


def test_the_signal_words_are_the_four_of_the_standards():
    """ANSI Z535.4 and ISO 3864-2: DANGER, WARNING, CAUTION; ANSI Z535.4 adds NOTICE. Memory."""
    assert tuple(SignalWord) == ("DANGER", "WARNING", "CAUTION", "NOTICE")
    used = {flag.signal for flag in PACK.red_flags.values()} | {caution.signal for _, caution in CAUTIONS}
    assert used <= set(SignalWord)


def test_notice_is_never_used_where_somebody_could_be_hurt():
    """ANSI Z535.4: NOTICE is for practices not related to physical injury. Memory."""
    assert not [flag.id for flag in PACK.red_flags.values() if flag.signal == "NOTICE"]
    notices = [(name, caution.consequence) for name, caution in CAUTIONS if caution.signal == "NOTICE"]
    assert notices
    assert not [told for told in notices if HURTS.search(told[1])]


def test_danger_and_warning_stand_where_somebody_could_die_and_caution_where_not():
    """ANSI Z535.4: DANGER will, WARNING could result in death or serious injury, CAUTION in minor injury. Memory."""
    for flag in PACK.red_flags.values():
        if flag.level.value == "emergency":
            assert flag.signal in ("DANGER", "WARNING"), flag.id
        elif flag.level.value == "stop":
            assert flag.signal != "CAUTION", flag.id
    fatal = [(name, caution.signal) for name, caution in CAUTIONS if re.search(r"\bkill\b", caution.consequence)]
    assert fatal
    assert all(word in ("DANGER", "WARNING") for _, word in fatal)


def test_a_safety_message_names_hazard_consequence_and_how_to_avoid_it_in_that_order():
    """IEC/IEEE 82079-1 and ANSI Z535.6: content of a safety message. Memory."""
    task = "look-at-seal"
    pairs = [*trail_to(task, "gb-eng"), *((gate, "yes") for gate in PACK.tasks[task].gates)]
    shown = open_page("gb-eng", pairs, f"/check/task/{task}/", task)
    panels = [e.text for e in shown.elements if "signal" in e.attributes.get("class", "").split()]
    for panel, caution in zip(panels, TEXTS.tasks[task].cautions, strict=True):
        parts = (caution.signal, caution.hazard, caution.consequence, caution.avoid)
        places = [panel.find(part) for part in parts]
        assert places == sorted(places)
        assert places[0] >= 0


@pytest.mark.parametrize(
    ("word", "low", "high", "letters"),
    [
        ("DANGER", 345, 365, "#ffffff"),
        ("WARNING", 20, 40, "#000000"),
        ("CAUTION", 45, 60, "#000000"),
        ("NOTICE", 205, 235, "#ffffff"),
    ],
)
def test_signal_words_have_the_colours_of_the_standard_and_can_be_read(word, low, high, letters):
    """ANSI Z535.1 and Z535.4: white on red, black on orange, black on yellow, white on blue (memory). WCAG 2.2, 1.4.3:
    at least 4.5 to 1."""
    ground, own = signal(word)
    assert own == letters
    assert low <= hue(ground) + (360 if word == "DANGER" and hue(ground) < 180 else 0) <= high
    assert contrast(ground, own) >= 4.5


@pytest.mark.parametrize("scheme", ["day", "night"])
@pytest.mark.parametrize("words", ["ink", "soft", "heat-words"])
@pytest.mark.parametrize("ground", ["enamel", "well"])
def test_words_stand_out_from_their_ground(scheme, words, ground):
    """WCAG 2.2, 1.4.6: at least 7 to 1 for body text."""
    colours = schemes()[scheme]
    assert contrast(colours[words], colours[ground]) >= 7


def test_a_contrast_worked_out_by_hand_comes_out_the_same():
    """WCAG 2.2: black on white is 21 to 1; the grey #767676 on white is known as the lightest that passes 4.5."""
    assert contrast("#000000", "#ffffff") == pytest.approx(21)
    assert 4.5 <= contrast("#767676", "#ffffff") < 4.6
    assert contrast("#777777", "#ffffff") < 4.5


def test_persons_are_those_of_the_electrotechnical_vocabulary():
    """IEC 60050-195: 195-04-01 (electrically) skilled, 195-04-02 instructed, 195-04-03 ordinary person."""
    assert set(Competence) == {"ordinary", "instructed", "skilled"}
    assert {task.competence for task in PACK.tasks.values()} <= set(Competence)


def test_signs_carry_the_numbers_and_names_of_the_register():
    """ISO 7010, by number: W012 electricity, W017 hot surface, W021 flammable material, W022 sharp element, W001
    general warning; M021 disconnect before carrying out maintenance or repair. Memory."""
    names = {
        "electricity": "W012",
        "hot": "W017",
        "fire": "W021",
        "sharp": "W022",
        "general": "W001",
        "disconnect": "M021",
    }
    assert dict(ISO_SIGNS) == names
    assert {caution.sign for _, caution in CAUTIONS} <= set(names)


@pytest.mark.parametrize(
    ("number", "words"),
    [
        ("W012", "electricity"),
        ("W017", "hot surface"),
        ("W021", "flammable material"),
        ("W022", "sharp element"),
        ("M021", "disconnect before you start"),
    ],
)
def test_a_sign_is_named_for_those_who_do_not_see_it(number, words):
    """ISO 7010 names, as the sign's label says them; M021 in plain words."""
    drawn = read_page(render_to_string("triage/_sign.html", {"sign": number, "quiet": False}))
    assert drawn.one("svg").attributes["aria-label"] == f"Sign: {words}"


FIVE_STEPS = re.compile(
    r"secure (it )?against|against re-?connection|absence of voltage|prove(d|n)? dead|test(ed)? for voltage"
    r"|short-?circuit|connect to earth|live parts? nearby|adjacent live",
    re.IGNORECASE,
)


def test_the_five_steps_of_dead_working_are_never_an_ordinary_persons():
    """EN 50110-1, 6.2: disconnect, secure against reconnection, verify absence of voltage, earth and short-circuit,
    guard adjacent live parts. Scope seen, steps from memory. A householder's text names none of the last four."""
    told = [line for task in TEXTS.tasks.values() for line in (*task.steps, task.why, task.fixed, task.not_fixed)]
    told += [line for flag in TEXTS.flags.values() for line in (*flag.first, *flag.never, flag.then)]
    told += [line for supply in TEXTS.isolation.supplies.values() for line in (*supply.steps, supply.cannot)]
    told += [line for gate in TEXTS.gates.values() for line in (gate.ask, gate.if_not, gate.looks_off)]
    told += [question.look for question in TEXTS.questions.values()]
    assert [line for line in told if FIVE_STEPS.search(line)] == []


def test_emergency_numbers_are_those_of_the_table():
    """The table in `emergency_numbers.py` says where each number was seen, or that it is from memory."""
    assert {region: place.emergency for region, place in library().regions.items()} == {
        region: number for region, (number, _) in EMERGENCY.items()
    }


@pytest.mark.parametrize("region", EMERGENCY)
def test_a_region_file_says_itself_where_its_number_was_seen(region):
    fields = read_yaml(REGIONS / f"{region}.yaml", region, [])
    assert fields["emergency"]["flag"] == EMERGENCY[region][1]


def test_gas_and_network_numbers_are_shown_only_where_an_official_page_was_seen():
    shown = {
        (region, kind): number
        for region, place in library().regions.items()
        for kind, number in (("gas", place.gas), ("network", place.network))
        if number
    }
    assert shown == SHOWN_BESIDES


def test_the_leakage_figures_a_repairer_is_told_add_up():
    """Ohm's law; BS 7671, 531.3.2: standing leakage of at most 30 % of the rated residual current (memory)."""
    words = " ".join(" ".join(text.repairer.split()) for text in TEXTS.faults.values())
    amperes, volts, kilohms = map(float, re.search(r"(\d+) mA at (\d+) V is ([\d.]+) kohm", words).groups())
    assert volts / (amperes / 1000) / 1000 == pytest.approx(kilohms, abs=0.05)
    standing, device, percent = map(
        float, re.search(r"above (\d+) mA on a (\d+) mA device \((\d+) % rule", words).groups()
    )
    assert standing == device * percent / 100
