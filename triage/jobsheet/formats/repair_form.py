"""The European Repair Information Form of Directive (EU) 2024/1799, begun for a repairer who wants to use it.

Its use is voluntary, and the goods seen listed in Annex II, which a maker must repair, name no oven. The list of
fields is from memory of Annex I, so the form tells the repairer to compare it with the Official Journal. What only
the repairer can promise (price, days, services) stays empty: once given, the conditions bind for 30 days.
"""

from dataclasses import dataclass
from datetime import date

from django.utils.translation import gettext as _

from triage.jobsheet.shapes import SheetData
from triage.models import Firm

APPLIES_FROM = date(2026, 7, 31)
# Member states among the territories the regions lie in.
MEMBER_STATES = frozenset({"DE", "ES", "FR", "IE", "IT", "NL", "PL", "SE"})


@dataclass(frozen=True, slots=True)
class RepairFormField:
    """`value` is empty where the repairer has to fill it in."""

    name: str
    value: str = ""


@dataclass(frozen=True, slots=True)
class RepairForm:
    caveats: tuple[str, ...]
    fields: tuple[RepairFormField, ...]


def repair_form(sheet: SheetData, firm: Firm, today: date) -> RepairForm | None:
    """The form, or None where it does not apply: outside the Union, before its day, or not wanted by the firm."""
    inside = sheet["check"]["region"]["territory"] in MEMBER_STATES
    if not (inside and firm.wants_repair_form and today >= APPLIES_FROM):
        return None
    return RepairForm(_caveats(), (*_repairer(firm), *_repair(sheet), *_conditions()))


def form_text(form: RepairForm) -> str:
    lines = [_("EUROPEAN REPAIR INFORMATION FORM: DRAFT FOR THE REPAIRER"), ""]
    lines += [*(f"- {caveat}" for caveat in form.caveats), ""]
    lines += [f"{field.name}: {field.value or '______'}" for field in form.fields]
    return "\n".join(lines) + "\n"


def _caveats() -> tuple[str, ...]:
    return (
        _("Using this form is voluntary. Ovens are not among the goods we have seen listed for repair by the maker."),
        _("Compare the fields with Annex I of Directive (EU) 2024/1799 and with national law before you use it."),
        _("The defect below is a judgement from answers given at home. Nobody has opened the oven."),
        _("Once given to the customer, the conditions may not be changed for 30 days, unless you agree otherwise."),
    )


def _repairer(firm: Firm) -> tuple[RepairFormField, ...]:
    return (
        RepairFormField(_("Repairer"), firm.name),
        RepairFormField(_("Postal address"), firm.address),
        RepairFormField(_("Telephone"), firm.telephone),
        RepairFormField(_("E-mail"), firm.email),
        RepairFormField(_("Other means of contact")),
    )


def _repair(sheet: SheetData) -> tuple[RepairFormField, ...]:
    plate, check = sheet["rating_plate"], sheet["check"]
    oven = [_("Electric oven"), plate.get("maker", ""), plate.get("model", ""), plate.get("serial", "")]
    first = check["causes"][0]
    params = {"chance": first["probability_text"], "cause": first["name"], "complaint": check["complaint"]}
    return (
        RepairFormField(_("Goods to be repaired"), ", ".join(part for part in oven if part)),
        RepairFormField(_("Defect"), _("%(complaint)s. Likeliest cause: %(cause)s (%(chance)s)") % params),
        RepairFormField(_("Kind of repair suggested")),
    )


def _conditions() -> tuple[RepairFormField, ...]:
    return (
        RepairFormField(_("Price, or how it is worked out and the most it can be")),
        RepairFormField(_("Days needed for the repair, from agreement")),
        RepairFormField(_("Replacement lent meanwhile, and its cost")),
        RepairFormField(_("Where the goods are handed over")),
        RepairFormField(_("Removal, transport, installation, and their cost")),
        RepairFormField(_("Valid until")),
        RepairFormField(_("Anything else")),
    )
