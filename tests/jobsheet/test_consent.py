"""What is agreed to says who gets what, for how long, and what erasing does not reach."""

from triage.jobsheet.consent import consent_lines, consent_words
from triage.models import Firm


def test_it_names_the_firm_the_days_and_what_stays():
    words = consent_words(Firm(name="Hearth & Hob", retention_days=30, email="desk@hearth.example"))
    assert "Hearth & Hob may have what I write here and my answers about the oven" in words
    assert "It is kept for 30 days at the most." in words
    assert "The answers about the oven stay, without my name." in words
    assert "A copy goes to Hearth & Hob by e-mail. Nobody can erase that from here" in words


def test_a_firm_without_e_mail_gets_no_copy_to_speak_of():
    assert not any("e-mail" in line for line in consent_lines(Firm(name="Hearth", retention_days=30)))
