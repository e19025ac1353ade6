"""What else an agent relies on: the lines found, the calls kept, nothing lost, and nothing in anybody's way."""

import re

import pytest
from playwright.sync_api import expect

from tests.browser.calling_by_key import CALLS, DESK, Agent, sit_down
from tests.browser.examining import assert_no_barriers_by_day_and_night, examine, take_pictures, too_small

pytestmark = pytest.mark.django_db(transaction=True)

WITH_A_MOUSE = 24  # pixels: WCAG 2.5.8
COLD = "region=gb-eng&complaint=no-heat&heat-main=no-heat"
# ICAO Annex 10, Volume II, figure 5-1: the spelling alphabet (as printed there, so Alfa and Juliett).
ICAO = re.findall(
    r"[\w-]+",
    "Alfa Bravo Charlie Delta Echo Foxtrot Golf Hotel India Juliett Kilo Lima Mike November Oscar Papa Quebec Romeo"
    " Sierra Tango Uniform Victor Whiskey X-ray Yankee Zulu",
)


@pytest.fixture
def browser_context_args():
    """A desk with a mouse on it: by thumb the same page is larger and may scroll."""
    return {"viewport": DESK, "locale": "en-GB"}


@pytest.fixture
def agent(page):
    return sit_down(page, page.site)


@pytest.mark.parametrize(
    ("said", "first"),
    [
        ("fan's going but it's stone cold, and it tripped yesterday", "What tripped: Something went off"),
        ("the fan's not going", "Oven fan turns: No, it does not turn"),
        ("the fan is going", "Oven fan turns: Yes, it turns well"),
        ("fan isnt spinning at all", "Oven fan turns: No, it does not turn"),
        ("the light doesn't come on", "Oven light: No, it is out"),
        ("light comes on fine", "Oven light: Yes, it lights"),
        ("its not tripped", "What tripped: Nothing has gone off"),
        ("there's no smoke", "Smoke or flames: No smoke"),
        ("kitchen was full of smoke", "Smoke or flames: Smoke"),
        ("cold and theres a smell of burning plastic", "Kind of smell: Plastic burning"),
        ("it trippd the electric", "What tripped: Something went off"),
        ("the dor wont shut", "How the door shuts: With a gap"),
        ("got a bit of a tingel off it", "Shock or tingle: A tingle from the oven only"),
        ("grill works but the oven dont heat", "What is wrong: The grill heats, but the oven does not"),
        ("clock is flashing", "Clock or screen: Flashes a time"),
        ("takes forever to heat up", "What is wrong: It is slow"),
        ("wont switch off", "Heat when off: No, it goes on heating"),
        ("the glass has shattered", "Door glass: Cracked or broken"),
    ],
)
def test_what_was_said_is_the_first_or_second_line_found(agent, said, first):
    """The other may be the line of the first page that says the same more broadly."""
    agent.open()
    agent.type(said)
    found = agent.found()
    assert any(line.startswith(first) for line in found[:2]), found


@pytest.mark.parametrize(
    ("said", "opposite"),
    [
        ("fan's not going", "Oven fan turns: Yes"),
        ("no smoke at all", "Smoke or flames: Smoke"),
        ("it has never tripped", "What tripped: Something"),
        ("nobody got a shock, no shock", "Shock or tingle: Yes"),
        ("the glass is not cracked", "Door glass: Cracked"),
    ],
)
def test_the_opposite_of_what_was_said_is_not_offered(agent, said, opposite):
    agent.open()
    agent.type(said)
    assert [line for line in agent.found() if line.startswith(opposite)] == []


@pytest.mark.parametrize("said", ["it went cold and then there were flames", "no light, and i got a shock", "smoking"])
def test_danger_comes_first(agent, said):
    agent.open()
    agent.type(said)
    assert agent.page.locator("#suggestion-list button").first.get_attribute("class") == "urgent"


def test_nothing_is_recorded_by_typing(agent):
    agent.open()
    agent.type("smoke, sparks and a shock")
    assert len(agent.found()) >= 3
    agent.press("Escape", moves=False)
    assert agent.trail == {}
    expect(agent.page.locator("section.alarm")).to_have_count(0)


def test_a_pasted_letter_is_matched_and_kept_whole(agent):
    letter = "Dear Sir, my oven is stone cold and the fan is going. " + "I am most unhappy with it. " * 400
    agent.open()
    agent.press("/", moves=False)
    agent.page.locator("#caller-says").fill(letter)
    expect(agent.page.locator("#call-status")).to_contain_text("All of it is saved.")
    assert any(line.startswith("Oven fan turns: Yes") for line in agent.found())
    agent.record("Oven fan turns: Yes")
    agent.page.reload()
    expect(agent.page.locator("#caller-says")).to_have_value(letter)
    assert agent.trail == {"circ-fan-state": "turns-normally"}


def test_a_lost_connection_loses_no_answer(agent):
    agent.open(f"{COLD}&danger=none")
    agent.read_out()
    agent.page.context.set_offline(True)
    agent.press("1", moves=False)
    expect(agent.page.locator("#call-status")).to_contain_text("You’re offline.")
    agent.type("light comes on")
    agent.press("Enter", moves=False)
    agent.press("1", moves=False)
    expect(agent.page.locator("#unsent li")).to_have_count(2)
    agent.page.context.set_offline(False)
    expect(agent.page.locator("#call-status")).to_contain_text("Everything recorded was sent.")
    assert len(agent.trail) == 5
    assert agent.trail["lamp-state"] == "lamp-works"
    agent.page.complaints.clear()


def test_two_tabs_on_one_call_come_together(agent):
    agent.open(f"{COLD}&danger=none")
    other = Agent(agent.page.context.new_page(), agent.site)
    other.page.goto(agent.page.url)
    agent.type("light comes on")
    agent.record("Oven light: Yes")
    other.wait_for_answer("lamp-works")
    other.type("fan is going")
    other.record("Oven fan turns: Yes")
    agent.wait_for_answer("turns-normally")
    assert agent.trail == other.trail
    assert {"lamp-state", "circ-fan-state"} <= set(agent.trail)


def test_a_call_that_was_cut_off_is_there_again(agent):
    agent.open(f"{COLD}&danger=none")
    agent.type("light comes on")
    agent.record("Oven light: Yes")
    trail = agent.trail
    agent.page.goto("about:blank")
    agent.open()
    agent.press("Escape", moves=False)
    agent.page.locator("#prompt-title").focus()
    agent.press("g", moves=False)
    expect(agent.page.locator("#saved-call-list li")).to_contain_text("interrupted")
    with agent.page.expect_navigation():
        agent.press("1", moves=False)
    agent.wait_for_answer("lamp-works")
    assert agent.trail == trail


def test_calls_are_held_and_resumed(agent):
    agent.open(COLD)
    first = agent.page.locator("#call-reference").inner_text()
    agent.press("Space")
    with agent.page.expect_navigation():
        agent.press("h", moves=False)
    expect(agent.page.locator("#call-reference")).not_to_have_text(first)
    expect(agent.page.locator("[data-js-held-count]")).to_have_text("1")
    agent.press("Escape", moves=False)
    agent.page.locator("#prompt-title").focus()
    agent.press("g", moves=False)
    with agent.page.expect_navigation():
        agent.press("1", moves=False)
    expect(agent.page.locator("#call-reference")).to_have_text(first)
    expect(agent.page.locator("#prompt p.count")).to_contain_text("2 of 3")


def test_a_reference_is_spelled_as_icao_does_and_a_wrong_letter_is_noticed(agent):
    agent.open()
    words = agent.page.locator("#call-reference").inner_text().split()
    assert len(words) == 5
    assert set(words) <= set(ICAO)
    wrong = [ICAO[(ICAO.index(words[0]) + 1) % 26], *words[1:]]
    agent.press("Escape", moves=False)
    agent.page.locator("#prompt-title").focus()
    agent.press("g", moves=False)
    agent.page.locator("#find-call").fill(" ".join(wrong))
    agent.press("Enter", moves=False)
    expect(agent.page.locator("#saved-calls-status")).to_contain_text("has a wrong letter")


def test_all_that_is_known_of_the_caller_takes_six_keys(agent):
    agent.open(f"{COLD}&danger=none")
    agent.press("w", moves=False)
    for key in "1121":
        agent.press(key)
    agent.press("2")
    expect(agent.page.locator(".caller [aria-current]")).to_have_count(5)
    expect(agent.page).to_have_url(re.compile("call-home=child"))
    assert agent.presses == 6


def test_an_answer_is_changed_and_taken_back_by_key(agent):
    agent.open(f"{COLD}&danger=none&lamp-state=lamp-works")
    agent.press("u")
    assert "lamp-state" not in agent.trail
    agent.press("e", moves=False)
    agent.press("2")
    assert "heat-main" not in agent.trail
    assert agent.trail["complaint"] == "no-heat"


def test_the_summary_and_the_link_are_one_key(agent):
    agent.page.context.grant_permissions(["clipboard-read", "clipboard-write"])
    agent.open(f"{COLD}&danger=none")
    agent.press("c", moves=False)
    expect(agent.page.locator("#call-status")).to_have_text("Copied.")
    copied = agent.page.evaluate("navigator.clipboard.readText()")
    assert re.match(r"Call [\w-]+ .*, \d+:\d\d\. Electric oven, reported problem: No heat at all\.", copied)
    agent.press("s", moves=False)
    assert agent.page.locator("#send-dialog img").evaluate("image => image.decode().then(() => image.naturalWidth)") > 0
    agent.press("1", moves=False)
    expect(agent.page.locator("#call-status")).to_have_text("Copied.")
    assert f"/check/?region=gb-eng&firm={agent.member.firm.slug}&complaint=no-heat" in agent.page.evaluate(
        "navigator.clipboard.readText()"
    )


def test_keys_can_be_switched_off(agent):
    agent.open(f"{COLD}&danger=none&lamp-state=lamp-works")
    agent.page.get_by_role("button", name="Shortcuts on").click()
    agent.page.locator("#prompt-title").focus()
    agent.press("u", moves=False)
    assert "lamp-state" in agent.trail


@pytest.mark.parametrize("query", [COLD, f"{COLD}&danger=none", "region=us&smoke-source=flames", "region=gb-eng"])
def test_nothing_scrolls_and_no_barrier_at_1280_by_800(agent, query):
    agent.open(query)
    assert_no_barriers_by_day_and_night(agent.page)
    root = "document.documentElement"
    assert agent.page.evaluate(f"[{root}.scrollWidth, {root}.scrollHeight]") == [DESK["width"], DESK["height"]]
    now = agent.page.locator(".main-column").evaluate("e => e.scrollHeight - e.clientHeight")
    assert now <= 0
    assert agent.page.locator(".shortcuts").evaluate("e => e.scrollWidth - e.clientWidth") <= 0
    assert too_small(agent.page, WITH_A_MOUSE) == []
    if query == COLD:
        take_pictures(agent.page, "call page")
    examine(agent.page, "D Danger")


def test_every_key_of_the_box_is_shown_in_one_line_under_it(agent):
    agent.open()
    line, box = agent.page.locator("#caller-says-help"), agent.page.locator("#caller-says")
    assert line.locator("kbd").all_inner_texts() == ["Enter", "↓", "↑", "↓", "Esc"]
    shown, above = line.bounding_box(), box.bounding_box()
    assert shown["x"] >= 0
    assert above["y"] + above["height"] <= shown["y"] < shown["y"] + shown["height"] <= DESK["height"]
    assert shown["height"] < 30
    assert box.get_attribute("aria-describedby") == "caller-says-help"


# The longest of their kinds: the rounds of danger signs, the question with the most answers, danger with its band.
LONG = [COLD, "region=gb-eng", f"{COLD}&danger=none&call-ask=recent-event", f"{COLD}&danger=none&call-board=yes"]
LONG += ["region=us&smoke-source=flames", "region=gb-eng&complaint=smell&smell-type=plastic-or-fishy"]
ALOUD = "#prompt .current .spoken, .read-aloud, .prompt:is(.prompt--open, .prompt--question, .prompt--caller) h1"
LEAST = 24  # pixels, for a reader at an arm's length (ours; no source)


@pytest.mark.parametrize("query", LONG)
def test_what_is_read_aloud_is_large_and_still_nothing_scrolls(agent, query):
    size = "parseFloat(getComputedStyle(one).fontSize)"
    agent.open(query)
    for _ in range(3):
        sizes = agent.page.locator(ALOUD).evaluate_all(f"all => all.map((one) => {size})")
        assert sizes
        assert min(sizes) >= LEAST
        assert agent.page.locator(".main-column").evaluate("e => e.scrollHeight - e.clientHeight") <= 0
        assert agent.page.evaluate("document.documentElement.scrollHeight") == DESK["height"]
        if not agent.page.locator("#prompt li.current").count():
            break
        agent.press("Space")


def test_without_javascript_a_call_goes_on_by_links(browser, live_server):
    context = browser.new_context(java_script_enabled=False, viewport=DESK)
    page = context.new_page()
    sit_down(page, live_server.url)
    page.goto(f"{live_server.url}{CALLS}?{COLD}")
    for _ in range(3):
        page.locator("#prompt li.current a").click()
    page.locator("#prompt li.current a").click()
    page.locator("#prompt .options a").first.click()
    expect(page).to_have_url(re.compile("danger=none"))
    assert page.locator("#caller-says").is_hidden()
    context.close()
