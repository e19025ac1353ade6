"""The drawings of the page on costs say what its sentences say, in a text beside them as well."""

import re
from xml.etree import ElementTree

import pytest

from tests.check_pages.fragments import caption_of
from tests.household.checks_done import answers_of, at, open_page
from triage.check_pages.presenters.costs import costs_page

SEAL = answers_of("door-seal-worn", "door")
HINGE = answers_of("hinge-worn", "door")
TOLD = {"age": "6", "new": "450", "use": "4", "kwh": "0.27"}


def address(answers=SEAL, region="gb-eng", **typed):
    return at("/check/costs/", {**answers, **{f"cost-{name}": text for name, text in typed.items()}}, region)


def drawings(check_request, *given, **typed):
    """The drawing of the visit, and that of a repair and a new oven; None where there is none."""
    seen = check_request(address(*given, **typed))
    page = costs_page(seen, seen.step)
    return page.visit_drawing, page.comparison.drawing if page.comparison else None


def ranges(words):
    """What the words call each range, with its two ends."""
    found = re.findall(r"([A-Z][a-z ]+): about \D?(\d+)(?: to \D?(\d+))?", words)
    return {name: (float(low), float(high or low)) for name, low, high in found}


def measured(svg):
    """The same, measured with the drawing's own axis: parsed by the standard library's reader of XML."""
    tree = ElementTree.fromstring(svg)
    texts = [(float(text.get("x")), float(text.get("y")), text.text) for text in tree.iter("text")]
    numbers = [float(words) for _, _, words in texts if words.isdigit()]
    ticks = sorted(
        float(e.get("x1")) for e in tree.iter("line") if e.get("x1") == e.get("x2") and e.get("class") == "axis"
    )
    unit = (ticks[-1] - ticks[0]) / max(numbers)
    found = {}
    for bar in tree.iter("rect"):
        top, left, width = (float(bar.get(name)) for name in ("y", "x", "width"))
        _, name = max((y, words) for x, y, words in texts if y < top)
        found[name.partition(":")[0]] = ((left - ticks[0]) / unit, (left - ticks[0] + width) / unit, unit)
    return found


@pytest.mark.parametrize("typed", [{}, TOLD, {**TOLD, "call": "80"}, {"age": "25", "new": "3000"}])
def test_each_bar_ends_at_the_numbers_that_are_shown(client, typed):
    page = client.get(address(**typed)).content.decode()
    figures = re.findall(
        r'<figure class="picture">\s*(<svg.*?</svg>)\s*<figcaption>(.*?)</figcaption>', page, re.DOTALL
    )
    assert len(figures) == (2 if "age" in typed else 1)
    for svg, caption in figures:
        told, bars = ranges(caption), measured(svg)
        assert told.keys() == bars.keys()
        for name, (low, high) in told.items():
            left, right, unit = bars[name]
            assert left == pytest.approx(low, abs=0.2 / unit)
            assert right == pytest.approx(max(high, low), abs=2.1 / unit if low == high else 0.2 / unit)


def test_the_ranges_are_those_of_the_sentences(client):
    main = open_page(client, address(**TOLD)).one("main")
    said = " ".join(p.text for p in main.select("p"))
    for figure in main.select("figure figcaption"):
        for low, high in re.findall(r"about (£\d+) to (£\d+)", figure.text):
            assert f"about {low} to {high}" in said
    assert len(main.select("figure.picture")) == 2


def test_wasted_electricity_is_drawn_only_where_the_oven_may_be_used_and_its_money_is_known(check_request):
    assert "Wasted electricity" in caption_of(drawings(check_request, **TOLD)[1])
    assert "Wasted electricity" not in caption_of(drawings(check_request, age="6", new="450", use="4")[1])
    assert "Wasted electricity" not in caption_of(drawings(check_request, HINGE, **TOLD)[1])


def test_where_no_money_is_known_nothing_is_drawn(check_request):
    assert drawings(check_request, SEAL, "se") == (None, None)
    visit, yearly = drawings(check_request, SEAL, "se", call="800")
    assert visit is not None
    assert yearly is None


def test_the_axis_says_the_money_and_the_time(check_request):
    _, yearly = drawings(check_request, **TOLD)
    assert yearly.shapes[-1].text == "£ a year"
    visit, _ = drawings(check_request, SEAL, "se", call="800")
    assert visit.shapes[-1].text == "SEK"


def test_a_picture_is_told_by_shape_and_carries_no_style_of_its_own(client):
    page = open_page(client, address(**TOLD))
    for figure in page.select("figure.picture"):
        assert figure.one("svg").attributes["aria-hidden"] == "true"
        assert not any({"style", "fill", "stroke"} & shape.attributes.keys() for shape in figure.one("svg").all())
