"""Every question and advice can be read aloud: after a tap, in the right language, with stop and again."""

import pytest
from playwright.sync_api import expect

from tests.browser.walking_by_hand import no_danger, tap
from tests.household.every_page import PAGES

pytestmark = pytest.mark.django_db(transaction=True)

# Headless Chromium has no voices. This one keeps what it is asked to say.
VOICES = """
const said = (window.said = []);
const voices = %s;
class Said extends EventTarget {
  constructor(text) { super(); this.text = text; }
}
Object.defineProperty(window, 'SpeechSynthesisUtterance', { value: Said });
Object.defineProperty(window, 'speechSynthesis', { value: Object.assign(new EventTarget(), {
  getVoices: () => voices, cancel: () => said.push('CANCEL'), speak: (part) => said.push(part),
}) });
window.words = () => said.map((part) => part.text ?? part);
window.end = () => said.at(-1).dispatchEvent(new Event('end'));
"""
ENGLISH = """[
  { lang: 'de-DE', localService: true }, { lang: 'en_GB', localService: true }, { lang: 'en-US', localService: false },
]"""
GERMAN = "[{ lang: 'de-DE', localService: true }]"
FAR = "[{ lang: 'en-US', localService: false }]"


def spoken(page):
    return [words for words in page.evaluate("() => words()") if words != "CANCEL"]


def button(page):
    return page.locator("[data-read]")


@pytest.mark.parametrize("name", ["question", "advice", "make safe", "danger", "task open"])
def test_nothing_is_said_before_the_tap_and_then_the_page_in_order(page, name):
    page.add_init_script(VOICES % ENGLISH)
    page.goto(f"{page.site}{PAGES[name]}")
    assert spoken(page) == []
    page.get_by_role("button", name="Read it to me").click()
    told = spoken(page)
    heading = page.locator("h1").inner_text()
    assert heading in told
    assert [line for line in told if line.startswith("Change") or "<" in line] == []
    assert page.evaluate("() => said.at(-1).lang") == "en-GB"


def test_the_answers_are_read_with_the_question(page):
    page.add_init_script(VOICES % ENGLISH)
    page.goto(f"{page.site}{PAGES['question']}")
    page.get_by_role("button", name="Read it to me").click()
    told = spoken(page)
    assert all(line.split("\n")[0] in " ".join(told) for line in page.locator(".bars .bar").all_inner_texts())
    assert told[-1].startswith("I can’t tell")


def test_stop_again_and_the_end(page):
    page.add_init_script(VOICES % ENGLISH)
    page.goto(f"{page.site}{PAGES['question']}")
    button(page).click()
    first = spoken(page)
    expect(button(page)).to_have_accessible_name("Stop reading")
    button(page).click()
    assert page.evaluate("() => words().at(-1)") == "CANCEL"
    expect(button(page)).to_have_accessible_name("Read it again")
    button(page).click()
    assert spoken(page) == first * 2
    page.evaluate("() => end()")
    expect(button(page)).to_have_accessible_name("Read it again")


def test_the_next_question_silences_the_last(page):
    page.add_init_script(VOICES % ENGLISH)
    page.goto(f"{page.site}/?region=gb-eng")
    tap(page, "It does not get hot at all")
    button(page).click()
    no_danger(page)
    assert page.evaluate("() => words().at(-1)") == "CANCEL"
    expect(button(page)).to_have_accessible_name("Read it to me")


@pytest.mark.parametrize("voices", [GERMAN, "[]"])
def test_without_a_voice_in_the_language_there_is_no_button(page, voices):
    page.add_init_script(VOICES % voices)
    page.goto(f"{page.site}{PAGES['question']}")
    expect(button(page)).to_be_hidden()


def test_with_no_line_a_voice_that_lives_elsewhere_does_not_count(page):
    page.add_init_script(VOICES % FAR)
    page.goto(f"{page.site}{PAGES['question']}")
    expect(button(page)).to_be_visible()
    page.context.set_offline(True)
    expect(button(page)).to_be_hidden()


def test_a_browser_that_cannot_speak_has_no_button(page):
    page.add_init_script("Object.defineProperty(window, 'speechSynthesis', { value: undefined })")
    page.goto(f"{page.site}{PAGES['question']}")
    expect(button(page)).to_be_hidden()
