"""The bands as a firm reads them: all there are, the gravest first."""

from triage.desk.presenters.bands import BANDS, band_label
from triage.engine import Band


def test_every_band_has_words_and_the_gravest_is_first():
    by_gravity = sorted(Band, key=lambda band: -band.severity)
    assert list(BANDS) == [band.value for band in by_gravity]
    assert band_label("make-safe") == "Not safe: leave it off"
    assert band_label("of-another-time") == "of-another-time"
