"""Pages broken on purpose: a template, a presenter or a text that breaks one rule is caught by the check of that rule.

Each mutation lasts for one test. `found_on` first looks at the page as it is, so that what is found is the mutation.
"""

from dataclasses import replace
from pathlib import Path

import pytest

import triage
from tests.safety.browsing import look_at_page
from tests.safety.leading_to import trail_to
from tests.safety.result import SearchResult
from triage.check_pages.presenters import emergency, flags, isolation, result, task
from triage.check_pages.presenters.professional_work import ProfessionalJob
from triage.check_pages.presenters.readings import page
from triage.household.views import reading
from triage.knowledge.library import library

HERE = "gb-eng"
TEMPLATES = Path(triage.__file__).parent / "templates"
GAS, FIRE = ("smell-type", "gas"), ("smoke-source", "flames")
HOT_SWITCH, HOT_PLUG, HOT_BOARD = (("burn-marks", place) for place in ("wall-switch", "plug-or-socket", "fuse-board"))
BURNING, RUNAWAY = ("smell-type", "plastic-or-fishy"), ("heat-when-off", "keeps-heating")
PLUG_IN, HARD_WIRED = ("supply", "plug-in"), ("supply", "hard-wired")
LOOSE_PANE = ("glass-state", "pane-loose")
ADVICE, SEAL = trail_to("photo-plate", HERE), trail_to("look-at-seal", HERE)
SURE = (("cold", "yes"), ("supply-off", "yes"))
LOOKED = ("danger", "none")


def found_on(*pairs, of_task=""):
    found = SearchResult()
    look_at_page(found, HERE, pairs, f"/check/task/{of_task}/" if of_task else "/check/", of_task)
    return found.violations


@pytest.fixture
def with_template(settings):
    """Changes one template for the rest of the test."""

    def change(name, *replaced):
        text = (TEMPLATES / "triage" / name).read_text("utf-8")
        for old, new in replaced:
            assert old in text
            text = text.replace(old, new)
        here = {f"triage/{name}": text}
        loaders = [
            ("django.template.loaders.locmem.Loader", here),
            "django.template.loaders.app_directories.Loader",
        ]
        usual = settings.TEMPLATES[0]
        settings.TEMPLATES = [{**usual, "APP_DIRS": False, "OPTIONS": {**usual["OPTIONS"], "loaders": loaders}}]

    return change


@pytest.fixture
def with_flag_text(monkeypatch):
    """Changes what one red flag says for the rest of the test."""

    def change(name, **texts):
        words = library().texts_for(HERE)
        broken = {**words.flags, name: replace(words.flags[name], **texts)}
        monkeypatch.setitem(library()._worded, (HERE, "en"), replace(words, flags=broken))

    return change


@pytest.mark.parametrize(
    "pairs",
    [(GAS,), (FIRE, HOT_BOARD), (HOT_SWITCH, BURNING, HARD_WIRED), (HOT_PLUG, PLUG_IN), (RUNAWAY,), ADVICE, SEAL],
)
def test_nothing_is_found_on_pages_as_they_are(pairs):
    assert found_on(*pairs) == ""


def test_nothing_is_found_on_an_open_task_as_it_is():
    assert found_on(*SEAL, *SURE, of_task="look-at-seal") == ""


def test_1_a_page_of_another_flag_than_the_gravest_is_caught(monkeypatch):
    monkeypatch.setattr(emergency, "prioritise_flags", lambda raised: flags.prioritise_flags(raised[::-1]))
    assert "The first action is not that of fire-inside but" in found_on(FIRE, BURNING)


def test_1_a_bad_board_that_hides_a_fire_is_caught(monkeypatch):
    monkeypatch.setattr(emergency, "graver_flags_first", lambda *_: [])
    found = found_on(FIRE, HOT_BOARD)
    assert "The first action is not that of fire-inside but" in found
    assert "There is fire inside, and nothing says to keep the oven door shut." in found


def test_1_a_first_action_that_is_not_first_is_caught(monkeypatch):
    monkeypatch.setattr(emergency, "flag_steps", lambda *given: flags.flag_steps(*given)[::-1])
    assert "The first action is not that of gas-smell but" in found_on(GAS)


def test_1_an_emergency_nobody_speaks_of_is_caught(monkeypatch, with_template):
    with_template("_emergency.html", ("page.mention", "page.problems"))
    monkeypatch.setattr(emergency, "summary_of", lambda *_: None)
    assert "Nothing on the page speaks of fire-inside." in found_on(GAS, FIRE)


def test_1_a_link_to_a_task_after_a_red_flag_is_caught(with_template):
    tries = '<a href="/check/task/set-clock/">Try this</a>'
    with_template("_emergency.html", ("{% if page.follow_up %}", tries + "{% if page.follow_up %}"))
    assert "After a red flag a link leads to /check/task/set-clock/." in found_on(BURNING)


def test_2_what_a_repairer_measures_on_the_page_is_caught(with_template):
    notes = "{% for cause in check.causes %}{{ cause.technician_notes }}{% endfor %}"
    with_template("summary/short.txt", ('{% include "triage/summary/_foot.txt" %}', notes))
    assert "What a repairer does about" in found_on(*ADVICE)


def test_2_how_a_job_is_done_on_the_page_is_caught(monkeypatch):
    repairs = [ProfessionalJob(text.repairer, "", "") for text in library().texts_for(HERE).faults.values()]
    monkeypatch.setattr(result, "professional_jobs", lambda *_: repairs[:1])
    assert "What a repairer does about fan-element-open is shown." in found_on(*ADVICE)


def test_2_the_steps_of_a_skilled_persons_task_are_caught(monkeypatch):
    tasks = library().pack.tasks
    monkeypatch.setitem(tasks, "look-at-seal", replace(tasks["look-at-seal"], competence="skilled"))
    monkeypatch.setattr(task, "is_offered", lambda *_: True)
    found = found_on(*SEAL, *SURE, of_task="look-at-seal")
    assert "A step of look-at-seal is shown; it is for a person who is skilled." in found


def test_3_steps_behind_a_shut_gate_are_caught(monkeypatch):
    monkeypatch.setattr(task, "is_open", lambda *_: True)
    found = found_on(*SEAL, ("cold", "yes"), ("supply-off", "unsure"), of_task="look-at-seal")
    assert "The steps of look-at-seal are shown before ['supply-off'] was answered yes." in found


def test_3_steps_of_a_task_that_is_not_offered_are_caught(monkeypatch):
    monkeypatch.setattr(task, "is_offered", lambda *_: True)
    found = found_on(*SEAL, LOOSE_PANE, *SURE, of_task="look-at-seal")
    assert "The steps of look-at-seal are shown; it is not offered for these answers." in found


def test_3_steps_on_another_page_are_caught(monkeypatch):
    steps = library().texts_for(HERE).tasks["look-at-seal"].steps
    monkeypatch.setattr(result, "_actions", lambda *_: [result.Action("text", step) for step in steps])
    assert "Steps of look-at-seal stand on another page." in found_on(*ADVICE)


def test_3_cautions_after_the_steps_are_caught(with_template):
    cautions = '{% for caution in page.cautions %}{% include "triage/_caution.html" %}{% endfor %}'
    stop = '<h2>{% translate "Stop at once if" %}</h2>'
    with_template("_task_steps.html", (cautions, ""), (stop, cautions + stop))
    found = found_on(*SEAL, *SURE, of_task="look-at-seal")
    assert "look-at-seal: 'An oven that is not off' does not stand before the first step." in found


def test_3_half_a_caution_is_caught(with_template):
    with_template("_caution.html", ("{{ caution.consequence }}", ""))
    found = found_on(*SEAL, *SURE, of_task="look-at-seal")
    assert "'They can trap or cut fingers.' does not stand before the first step." in found


def reading_found_on(kind, *pairs):
    found = SearchResult()
    look_at_page(found, HERE, pairs, f"/reading/{kind}/")
    return found.violations


def test_3_a_reading_before_the_danger_signs_is_caught(monkeypatch):
    monkeypatch.setattr(page, "SCREEN", "cold")
    assert "The form is there before the danger signs were looked through." in reading_found_on("meter", SURE[0])


def test_3_a_reading_after_a_red_flag_is_caught(monkeypatch):
    monkeypatch.setattr(reading, "page_of", lambda check_request: page.reading_page(check_request, "meter"))
    assert "The form is there after loose-pane." in reading_found_on("meter", LOOKED, LOOSE_PANE)


def test_3_a_reading_behind_a_shut_gate_is_caught(monkeypatch):
    monkeypatch.setattr(page, "is_open", lambda *_: True)
    assert "The form is there before ['cold', 'supply-off'] was answered yes." in reading_found_on("gasket", LOOKED)


def test_3_a_reading_without_its_cautions_is_caught(with_template):
    with_template("_reading.html", ("page.cautions", "page.problems"))
    assert "'A hot oven' is not above the form." in reading_found_on("meter", LOOKED)


def test_3_how_to_heat_an_oven_nobody_asked_about_is_caught(with_template):
    how = library().texts_for(HERE).questions["meter-power"].look
    with_template("_reading.html", ("{% elif page.heat %}", "{% elif page.heat %}<p>" + how + "</p>"))
    assert "The page says how to take a reading that heats the oven." in reading_found_on("meter", LOOKED)


def test_4_leave_to_use_the_oven_under_a_caution_is_caught(monkeypatch):
    monkeypatch.setattr(result, "_leave_off_text", lambda *_: "")
    monkeypatch.setattr(result, "_is_grave", lambda *_: False)
    assert "The oven is to be left off, and the page says" in found_on(*ADVICE, LOOSE_PANE)


def test_6_a_page_without_the_emergency_number_is_caught(with_template):
    with_template("_way_out.html", ("{{ emergency.href }}", "#"))
    assert "The emergency number 999 cannot be pressed." in found_on(*ADVICE)


def test_6_a_page_without_the_way_to_the_danger_signs_is_caught(with_template):
    with_template("_way_out.html", ("{{ danger_href }}", "/"))
    assert "There is no way to the danger signs." in found_on(("complaint", "no-heat"))


def test_7_advice_without_local_rules_is_caught(monkeypatch):
    monkeypatch.setattr(result, "local_rules", lambda *_: "")
    assert "The line on local rules is missing." in found_on(*ADVICE)


def test_a_switch_to_turn_with_gas_about_is_caught(with_flag_text):
    first = library().texts_for(HERE).flags["gas-smell"].first
    with_flag_text("gas-smell", first=(*first, "Switch off the oven at the wall."))
    assert "With gas about, the page says 'Switch off the oven at the wall.'." in found_on(GAS)


def test_a_hot_switch_to_turn_is_caught(monkeypatch):
    near = isolation.supply_text
    monkeypatch.setattr(isolation, "supply_text", lambda check_request, *_: near(check_request))
    found = found_on(HOT_SWITCH, BURNING, HARD_WIRED)
    assert (
        "The wall switch is hot, and the page says 'If the oven has its own switch on the wall, turn that off.'."
        in found
    )


def test_a_hot_plug_to_pull_is_caught(monkeypatch):
    near = isolation.supply_text
    monkeypatch.setattr(isolation, "supply_text", lambda check_request, *_: near(check_request))
    assert "The plug is hot, and the page says 'Pull the plug out by its body" in found_on(HOT_PLUG, BURNING, PLUG_IN)


def test_a_bad_board_to_go_to_is_caught(monkeypatch):
    monkeypatch.setattr(emergency, "prioritise_flags", lambda raised: flags.RaisedFlags(raised, []))
    assert "The board is not safe, and the page says" in found_on(HOT_BOARD, RUNAWAY)


def test_a_fire_whose_door_may_be_opened_is_caught(with_flag_text):
    with_flag_text("fire-inside", heading="Fire in the oven", first=("Open the door a little to look.",))
    found = found_on(FIRE)
    assert "There is fire inside, and nothing says to keep the oven door shut." in found
    assert "There is fire inside, and the page says 'Open the door a little to look.'." in found


def test_a_runaway_oven_that_is_only_turned_off_is_caught(with_flag_text):
    with_flag_text("will-not-stop", heading="It will not stop", first=("Turn the knob to off.",))
    assert "It will not stop, and nothing says to cut the power." in found_on(RUNAWAY)
