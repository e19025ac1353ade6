"""The bands as a firm reads them: the gravest first."""

from django.utils.translation import gettext_lazy

from triage.engine import Band

LABELS = {
    Band.MAKE_SAFE.value: gettext_lazy("Not safe: leave it off"),
    Band.QUALIFIED.value: gettext_lazy("Work for a qualified person"),
    Band.SELF_CHECK.value: gettext_lazy("Customer can check"),
    Band.NORMAL.value: gettext_lazy("Normal behaviour"),
}
BANDS = tuple(LABELS)


def band_label(band: str) -> str:
    return str(LABELS.get(band, band))
