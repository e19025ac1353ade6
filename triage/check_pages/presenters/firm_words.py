"""What a firm says of its visits, in its own words, for whoever is about to ask for one."""

from django.utils.translation import gettext as _

from triage.models import Firm


def firm_words(firm: Firm) -> list[tuple[str, str]]:
    """What each line is about and what it says: prices, then hours, then where the firm comes to."""
    told = [(name, str(words)) for lines in (firm.prices, firm.hours) for name, words in lines.items()]
    areas = ", ".join(str(area) for area in firm.areas)
    return [*told, (_("We come to"), areas)] if areas else told
