"""The text forms: complete for a repairer, harmless for a householder."""

from tests.jobsheet.sheets import make_sheet, summary
from triage.jobsheet.formats.text import answers_text, long_text, sheet_text, short_text, window_words


def test_the_sheet_begins_with_what_a_repairer_needs_first():
    text = sheet_text(make_sheet())
    first = text[:700]
    for label in (
        "JOB SHEET KD7MX-4QPTR for Hearth & Hob Repairs",
        "Say: Kilo Delta Seven Mike X-ray, Four Quebec Papa Tango Romeo",
        "Danger signs: none seen",
        "Supply: not said to be off.",
        "- Name: Alex Grey",
        "- Address: 3 Mill Lane, AB1 2CD",
        "- Getting in: Ring twice; the dog, Rex, is friendly.",
        "- At home: 2030-05-06 09:00-12:00; 2030-05-07 18:00 - 2030-05-08 08:00",
    ):
        assert label in first
    assert text.endswith("\n\nKept until 2027-01-28, then erased.\n")


def test_every_part_of_the_check_is_in_it():
    check = summary()
    text = sheet_text(make_sheet())
    items = [a["text"] for part in ("oven", "answers", "readings", "attempted") for a in check[part]]
    items += [cause["technician_notes"] for cause in check["causes"]]
    items += [cause["probability_text"] for cause in check["causes"]]
    items += [part["name"] for part in check["kit"]["parts"]]
    items += [also["name"] for also in check["related"]]
    items += [check["pack"]["version"], check["check_url"], check["complaint"]]
    assert [label for label in items if label not in text] == []


def test_a_danger_sign_stands_at_the_top_with_what_was_told():
    check = summary("danger")
    text = sheet_text(make_sheet("danger"))
    assert f"Danger sign: {check['red_flags'][0]['heading']}" in text.split("\n\n")[1]
    assert "Advice given: leave it off until it has been checked" in text
    assert all(line in text for flag in check["red_flags"] for line in flag["instructed"])


def test_an_unfinished_check_says_so():
    assert "The questions were not finished." in sheet_text(make_sheet("unfinished"))
    assert "The questions were not finished." not in sheet_text(make_sheet())


def test_the_short_form_holds_nothing_that_is_only_for_a_repairer():
    check = summary()
    text = short_text(check)
    assert [c["technician_notes"] for c in check["causes"] if c["technician_notes"] in text] == []
    assert "KIT" not in text
    assert "(+" not in text
    assert "(+" in long_text(check)


def test_answers_so_far_come_to_no_conclusion():
    text = answers_text(summary("unfinished"))
    assert text.startswith("OVEN FAULT CHECK\n\nANSWERS SO FAR\n- What is wrong: No heat at all\n")
    assert "CAUSES" not in text


def test_the_likeliest_part_comes_first_with_what_it_adds():
    kit = summary()["kit"]
    text = long_text(summary())
    lines = text[text.index("KIT, beside meters and hand tools") :].split("\n")
    assert lines[1] == f"- {kit['parts'][0]['name']} ({round(100 * kit['parts'][0]['gain'])})"
    label = kit["first_visit_text"]
    chance = label[0].lower() + label[1:]
    assert f"- First-visit chance with this kit: {chance}, as far as parts go." in lines


def test_a_window_names_its_day_once():
    assert window_words("2030-05-06T09:00:00", "2030-05-06T12:00:00") == "2030-05-06 09:00-12:00"
