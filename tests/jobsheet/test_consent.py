"""What is agreed to says who gets what, for how long, and what erasing does not reach."""

from triage.jobsheet.consent import consent_lines, consent_words, spoken_consent
from triage.models import Firm


def test_it_names_the_firm_the_days_and_what_stays():
    text = consent_words(Firm(name="Hearth & Hob", retention_days=30, email="desk@hearth.example"))
    assert "Hearth & Hob may have what I write here and my answers about the oven" in text
    assert "It is kept for 30 days at the most." in text
    assert "The answers about the oven stay, without my name." in text
    assert "A copy goes to Hearth & Hob by e-mail. Nobody can erase that from here" in text


def test_a_firm_without_e_mail_gets_no_copy_to_speak_of():
    assert not any("e-mail" in line for line in consent_lines(Firm(name="Hearth", retention_days=30)))


def test_read_out_it_promises_the_same_from_the_firm_to_the_caller():
    firm = Firm(name="Hearth & Hob", retention_days=30, email="desk@hearth.example")
    lines = spoken_consent(firm)
    assert len(lines) == len(consent_lines(firm))
    assert lines[0].startswith("May Hearth & Hob keep what you told me, your answers about the oven")
    assert "30 days at the most" in lines[1]
    assert "The answers about the oven stay, without your name." in lines[2]
    assert lines[3].startswith("A copy goes to our mailbox.")
    assert len(spoken_consent(Firm(name="Hearth", retention_days=30))) == 3
