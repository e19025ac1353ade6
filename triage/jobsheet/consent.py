"""What a person agrees to before anything leaves the house, in plain words: kept on the job sheet as they read it, or
as it was read to them.

It promises nothing that the site does not do: an erased sheet keeps the answers about the oven, and nobody can call an
e-mail back.
"""

from django.utils.translation import gettext as _

from triage.models import Firm


def consent_lines(firm: Firm) -> list[str]:
    """The sentences, each of which stands by itself."""
    params = {"firm": firm.name, "days": firm.retention_days}
    lines = [
        _("%(firm)s may have what I write here and my answers about the oven, to call me and to come for this repair."),
        _("It is kept for %(days)s days at the most. Until then I can see it and erase it with a link I get now."),
        _("Erasing takes away who I am and where I live. The answers about the oven stay, without my name."),
    ]
    if firm.email:
        lines.append(
            _("A copy goes to %(firm)s by e-mail. Nobody can erase that from here, so I have to ask the firm to do it.")
        )
    return [line % params for line in lines]


def consent_words(firm: Firm) -> str:
    """The same as one text, as a job sheet keeps it."""
    return " ".join(consent_lines(firm))


def spoken_consent(firm: Firm) -> list[str]:
    """The same as the firm's own agent says it on the telephone, each sentence to be read out by itself."""
    params = {"firm": firm.name, "days": firm.retention_days}
    lines = [
        _("May %(firm)s keep what you told me, your answers about the oven and where you live, to call and to come?"),
        _("We keep it for %(days)s days at the most. You can see it and erase it by a link I can send, or ask us to."),
        _("Erasing takes away who you are and where you live. The answers about the oven stay, without your name."),
    ]
    if firm.email:
        lines.append(_("A copy goes to our mailbox. The link can’t erase that one, so ask us to, and we do it."))
    return [line % params for line in lines]
