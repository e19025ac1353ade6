"""The second factor, held against the test vectors of the RFCs."""

from base64 import b32decode

import pyotp
import pytest

from tests.firm_builders import make_firm, make_member
from triage.desk.second_factor import (
    DIGITS,
    STEP_SECONDS,
    disable_second_factor,
    enable_second_factor,
    matching_step,
    new_secret,
    provisioning_uri,
    verify_code,
)

# RFC 6238, appendix B, the rows for SHA-1: the key is the ASCII text 12345678901234567890, the codes have 8 digits.
RFC_SECRET = "GEZDGNBVGY3TQOJQGEZDGNBVGY3TQOJQ"
RFC_6238 = {
    59: "94287082",
    1111111109: "07081804",
    1111111111: "14050471",
    1234567890: "89005924",
    2000000000: "69279037",
    20000000000: "65353130",
}
# RFC 4226, appendix D: the same key, counters 0 to 9, 6 digits.
RFC_4226 = ["755224", "287082", "359152", "969429", "338314", "254676", "287922", "162583", "399871", "520489"]
NOW = 1_900_000_000


def code_at(secret, step):
    return pyotp.HOTP(secret).at(step)


@pytest.mark.parametrize("moment", RFC_6238)
def test_codes_are_those_of_rfc_6238(moment):
    assert matching_step(RFC_SECRET, RFC_6238[moment][-DIGITS:], moment) == moment // STEP_SECONDS


def test_codes_are_those_of_rfc_4226():
    steps = [matching_step(RFC_SECRET, code, counter * STEP_SECONDS, -1) for counter, code in enumerate(RFC_4226)]
    assert steps == list(range(10))


def test_a_secret_has_160_bits_and_no_other_is_like_it():
    secrets = {new_secret() for _ in range(100)}
    assert {len(b32decode(secret)) for secret in secrets} == {20}
    assert len(secrets) == 100


def test_the_address_for_an_authenticator():
    address = provisioning_uri(RFC_SECRET, "robin@desk", "Hearth & Hob: Repairs")
    label, issuer = "Hearth%20Hob%20Repairs:robin%40desk", "Hearth%20Hob%20Repairs"
    assert address == f"otpauth://totp/{label}?secret={RFC_SECRET}&issuer={issuer}"


@pytest.mark.parametrize(("off", "taken"), [(-2, False), (-1, True), (0, True), (1, True), (2, False)])
def test_a_clock_may_be_half_a_minute_off(off, taken):
    step = NOW // STEP_SECONDS + off
    assert (matching_step(RFC_SECRET, code_at(RFC_SECRET, step), NOW) == step) is taken


@pytest.mark.parametrize("typed", ["", "12345", "1234567", "abcdef", "１２３４５６", "12 34 5a", "-12345", "\x00" * 6])
def test_what_is_no_code_is_not_one(typed):
    assert matching_step(RFC_SECRET, typed, NOW) is None


def test_spaces_in_a_code_do_no_harm():
    code = code_at(RFC_SECRET, NOW // STEP_SECONDS)
    assert matching_step(RFC_SECRET, f" {code[:3]} {code[3:]} ", NOW) == NOW // STEP_SECONDS


@pytest.mark.django_db
def test_no_code_works_twice_nor_an_older_one_after_it():
    member = make_member(make_firm(), totp_secret=RFC_SECRET)
    step = NOW // STEP_SECONDS
    assert verify_code(member, code_at(RFC_SECRET, step), NOW)
    stale = code_at(RFC_SECRET, step)
    assert not verify_code(member, stale, NOW)
    member.refresh_from_db()
    assert not verify_code(member, stale, NOW)
    assert not verify_code(member, code_at(RFC_SECRET, step - 1), NOW)
    assert verify_code(member, code_at(RFC_SECRET, step + 1), NOW)


@pytest.mark.django_db
def test_it_is_taken_into_use_only_with_a_code_of_its_own():
    member = make_member(make_firm())
    secret = new_secret()
    assert not enable_second_factor(member, secret, "000000", NOW)
    member.refresh_from_db()
    assert member.totp_secret == ""
    code = code_at(secret, NOW // STEP_SECONDS)
    assert enable_second_factor(member, secret, code, NOW)
    member.refresh_from_db()
    assert not verify_code(member, code, NOW)
    disable_second_factor(member)
    member.refresh_from_db()
    assert (member.totp_secret, member.totp_last) == ("", 0)
