"""Why a figure cannot be used, as a sentence that says what to do. Every reason an `Unreadable` can give is here."""

from collections.abc import Mapping

from django.utils.translation import gettext as _


def reason_sentence(reason: str, words: Mapping[str, str]) -> str:
    """`words` are what was `typed`, the `low` and `high` that can be meant, and the field's `label`."""
    return _sentences().get(reason, _("These figures cannot be used together. Check them against your notes.")) % words


def _sentences() -> dict[str, str]:
    return {
        "not-a-reading": _("These figures are too long or incomplete. Type them again, with fewer of them."),
        "unknown-field": _("There is a figure here that this test does not know. Type the figures again."),
        "twice": _("One figure is there twice. Type it once."),
        "missing": _("This is still missing: %(label)s."),
        "not-a-number": _("“%(typed)s” is not a number we can read. Write it in digits, such as 12.5."),
        "two-ways": _("“%(typed)s” can be read in two ways. Leave out the sign between thousands, such as 1200."),
        "too-small": _("This cannot be less than %(low)s. Check the number and its unit."),
        "too-large": _("This cannot be more than %(high)s. Check the number and its unit."),
        "not-whole": _("This is counted in whole numbers. Write it without a decimal part."),
        "too-many": _("There are more readings than can be used. Keep up to 60 of them."),
        "too-few": _("There are too few readings to tell anything. Take some more."),
        "out-of-order": _(
            "Each time must be later than the one before it. Two readings have the same or an earlier time."
        ),
        "backwards": _("The second figure is lower than the first. Look if the two were swapped."),
        "one-way": _("Two ways of reading the meter are filled in. Keep one and empty the other."),
    }
