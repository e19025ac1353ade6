"""Contrast as WCAG 2.2 defines it; a colour nobody could read is refused with the nearest one that can be read."""

import re
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from triage.web.accent import DARK, LIGHT, contrast, contrast_error, dark_shades, light_shades, nearest_accessible

COLOURS = st.integers(0, 0xFFFFFF).map(lambda number: f"#{number:06x}")
SHEET = (Path(__file__).parents[2] / "triage/static/triage/css/oven.css").read_text("utf-8")


# Ratios that the W3C's own documents give: "Understanding SC 1.4.3" (#777777, #767676) and the definition's ends.
@pytest.mark.parametrize(
    ("one", "other", "ratio"),
    [
        ("#000000", "#ffffff", 21.0),
        ("#ffffff", "#ffffff", 1.0),
        ("#777777", "#ffffff", 4.47),
        ("#767676", "#ffffff", 4.54),
    ],
)
def test_the_ratio_is_the_published_one(one, other, ratio):
    assert int(contrast(one, other) * 100) / 100 == ratio
    assert contrast(one, other) == contrast(other, one)


def test_a_ratio_just_below_the_least_is_not_rounded_up():
    """#777777 on white is 4.478 to 1 and fails 4.5; #767676 is 4.54 (W3C, "Understanding SC 1.4.3")."""
    assert nearest_accessible("#767676", ("#ffffff",)) == "#767676"
    assert nearest_accessible("#777777", ("#ffffff",)) != "#777777"


@pytest.mark.parametrize(
    ("one", "other", "ratio"),
    [
        ("#ff8100", "#64003a", 5.235369975583679),  # these two as the contrast-ratio-checker package prints them
        ("#e5e5e5", "#aabb00", 1.698093107780376),
        ("#0a0a0a", "#000000", 10 / 255 / 12.92 / 0.05 + 1),  # WCAG's own formula, below its threshold of 0.03928
    ],
)
def test_the_ratio_is_that_of_the_wcag_threshold_and_not_of_the_much_copied_0_03298(one, other, ratio):
    assert contrast(one, other) == pytest.approx(ratio, abs=1e-9)


def test_a_colour_that_can_be_read_is_taken_as_it_is():
    assert contrast_error("#a83c12") is None
    assert light_shades("#a83c12").accent == "#a83c12"


def test_a_pale_colour_is_refused_with_the_nearest_that_passes():
    refusal = contrast_error("#ffcc00")
    assert refusal.nearest == nearest_accessible("#ffcc00", LIGHT)
    assert refusal.message == (
        "#ffcc00 is too pale to be read on the page: its contrast is 1.3 to 1, the least is 4.5 to 1."
        f" The nearest colour that can be read is {refusal.nearest}."
    )
    assert contrast_error(refusal.nearest) is None


@given(COLOURS)
def test_whatever_a_firm_names_every_shade_can_be_read(colour):
    for shades, grounds in ((light_shades(colour), LIGHT), (dark_shades(colour), DARK)):
        for ground in grounds:
            assert contrast(shades.accent, ground) >= 4.5
            assert contrast(shades.text, ground) >= 7


@given(COLOURS)
def test_no_colour_nearer_on_the_way_would_do(colour):
    found = nearest_accessible(colour, LIGHT)
    if found != colour:
        lighter = "#" + "".join(f"{min(255, part + 3):02x}" for part in bytes.fromhex(found[1:]))
        assert min(contrast(lighter, ground) for ground in LIGHT) < 4.7


def test_the_grounds_are_those_of_the_stylesheet():
    found = re.findall(r"--(?:enamel|well): (#[0-9a-f]{6})", SHEET)
    assert found == [*LIGHT, *DARK]
