"""The sender's token: nobody can make one, a re-send gets the same, and a new key of the site loses none."""

from triage.jobsheet.sender_token import hash_of, is_token, new_token, rebuild_token

REFERENCE = "KD7MX-4QPTR"


def test_it_is_long_and_belongs_to_one_reference():
    token = new_token(REFERENCE)
    assert len(token) == 40
    assert token != new_token("KD7MX-4QPTS")
    assert is_token(token, hash_of(token))
    assert not is_token("\ud800" + token, hash_of(token))


def test_a_re_send_gets_the_same_link_even_after_the_site_changed_its_key(settings):
    token = new_token(REFERENCE)
    settings.SECRET_KEY_FALLBACKS = [settings.SECRET_KEY]
    settings.SECRET_KEY = "another-" * 8
    assert new_token(REFERENCE) != token
    assert rebuild_token(REFERENCE, hash_of(token)) == token


def test_once_the_old_key_is_forgotten_there_is_none(settings):
    kept = hash_of(new_token(REFERENCE))
    settings.SECRET_KEY = "another-" * 8
    assert rebuild_token(REFERENCE, kept) is None
