"""A page as it is heard: its heading first, what can be done under it by name and in order, focus on what is new, and
what changes by itself in a live region (WAI-ARIA 1.2)."""

import pytest
from playwright.sync_api import expect

from tests.browser.calling_by_key import sit_down
from tests.browser.spoken_tree import names, of_main, spoken
from tests.household.checks_done import ENGLAND
from tests.household.every_page import PAGES
from triage.engine import run_check
from triage.knowledge.library import library

pytestmark = pytest.mark.django_db(transaction=True)

CANT_TELL = "I can’t tell"
TO_DO = ("link", "button", "textbox", "checkbox", "combobox", "spinbutton")


def asked_after(**answers):
    """The words of the question the engine asks: its own, and its answers'."""
    known = library()
    step = run_check(known.pack, known.regions[ENGLAND].region, {**answers, "danger": "none"}.items()).step
    return known.texts_for(ENGLAND).questions[step.observation]


def heard(page):
    main = of_main(spoken(page))
    first = next(at for at, node in enumerate(main) if node.role == "heading")
    assert main[first].told["level"] == 1
    assert names(main[:first], *TO_DO) == []
    return main[first:]


def test_a_question_is_heard_before_its_answers_and_they_in_the_order_of_the_page(page):
    page.goto(page.site + PAGES["question"])
    asked, main = asked_after(complaint="no-heat"), heard(page)
    assert main[0].name == asked.ask
    assert names(main, *TO_DO) == [*asked.options.values(), CANT_TELL]


def test_after_a_swap_the_reader_is_at_the_new_question(page):
    page.goto(page.site + PAGES["danger"])
    page.get_by_role("link", name="None of these").click()
    expect(page.locator("p.count")).to_be_visible()
    (focused,) = [node for node in spoken(page) if node.told.get("focused") and node.role != "RootWebArea"]
    assert (focused.role, focused.name) == ("heading", asked_after(complaint="no-heat").ask)


def test_a_reading_names_each_thing_to_fill_in_and_says_what_is_wrong_with_it(page):
    page.goto(page.site + PAGES["reading"])
    main = heard(page)
    assert main[0].name == "Power from the home’s meter"
    done = [node for node in main if node.role in TO_DO]
    assert [node for node in done if not node.name] == []
    assert names(done, "textbox", "button")[-1] == "Show what it means"
    (wrong,) = [node for node in done if node.told.get("invalid") == "true"]
    assert wrong.name == "Time from the first to the last"
    expect(page.get_by_label(wrong.name)).to_have_accessible_description(
        "This cannot be less than 1. Check the number and its unit. s"
    )


def test_what_comes_of_a_reading_is_told_as_it_changes(page):
    page.goto(page.site + PAGES["reading shown"])
    (outcome,) = [node for node in of_main(spoken(page)) if node.told.get("live") == "polite"]
    assert outcome.words.startswith("What came of it")


def test_advice_says_first_who_does_it_then_what_to_do_now(page):
    page.goto(page.site + PAGES["advice"])
    main = heard(page)
    assert names(main, "heading")[:4] == [
        "This is a job for an appliance engineer",
        "What to do now",
        "Checks you can do yourself",
        "What it probably is",
    ]
    assert names(main, "image", "img") == []  # each drawing has its words beside it
    changes = [name for name in names(main, "link") if name.startswith("Change: ")]
    assert len(changes) == len(set(changes)) == 5


def test_make_safe_says_what_to_do_before_it_offers_anything_to_press(page):
    page.goto(page.site + PAGES["make safe"])
    main = heard(page)
    assert main[0].name == "Burning smell: switch off and leave off"
    assert names(main, "heading")[1] == "Do this now, in this order"
    (first, *_) = [node for node in main if node.role in TO_DO]
    assert first.name == "Call 999 Fire, ambulance, police"
    steps = [node.words for node in main[: main.index(first)] if node.role == "listitem"]
    assert any("Turn the oven's controls to off" in step for step in steps)


def test_what_the_page_says_by_itself_is_in_a_live_region(page):
    page.goto(page.site + PAGES["question"])
    page.route("**/check/**", lambda route: route.abort())
    page.get_by_role("link", name=CANT_TELL).click()
    expect(page.locator("#step-status")).to_contain_text("did not arrive")
    (status,) = [node for node in spoken(page) if node.role == "status" and node.words]
    assert status.words.startswith("The next page did not arrive.")
    assert status.told["live"] == "polite"
    page.complaints.clear()


def test_an_agent_hears_the_question_before_its_keys_in_their_order(page):
    agent = sit_down(page, page.site)
    agent.open("region=gb-eng&complaint=no-heat&danger=none")
    agent.press(" ")  # how to look safely is read out first; only then are there answers to press
    asked = asked_after(complaint="no-heat")
    tree = spoken(page)
    at = next(at for at, node in enumerate(tree) if node.role == "heading" and node.told["level"] == 1)
    assert tree[at].name == f"Say: “{asked.say}”"
    keys = [name.split(" ", 1)[1] for name in names(tree[at:], "link") if name.split(" ")[0].isdigit()]
    assert keys[: len(asked.options)] == list(asked.options.values())
