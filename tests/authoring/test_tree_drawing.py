"""The drawing is a sound SVG that says in text what the tree says, with nothing on top of anything else."""

from itertools import combinations
from xml.etree import ElementTree

from tests.authoring.grown_tree import no_heat_tree, words
from triage.authoring.decision_tree import Tree, outline_rows
from triage.authoring.tree_drawing import draw

SVG = "{http://www.w3.org/2000/svg}"
WIDE = 0.56  # of the size; a sans-serif letter is on average about half as wide as it is high


def drawing():
    return ElementTree.fromstring(draw(no_heat_tree(), words()))


def test_it_has_a_title_a_description_and_a_role():
    root = drawing()
    assert (root.get("role"), root.get("aria-labelledby")) == ("img", "title desc")
    assert root.find(f"{SVG}title").text == words().title(no_heat_tree())
    assert "version" in root.find(f"{SVG}desc").text
    ids = [element.get("id") for element in root.iter() if element.get("id")]
    assert ids == ["title", "desc"]


def test_it_is_drawn_with_presentation_attributes_only():
    for element in drawing().iter():
        assert "style" not in element.attrib
        assert "class" not in element.attrib
        assert not element.tag.endswith(("style", "script"))


def test_every_place_is_there_as_text():
    said = " ".join(" ".join(text.itertext()) for text in drawing().iter(f"{SVG}text"))
    plain = " ".join(said.split())
    for line in outline_rows(no_heat_tree()):
        assert " ".join(words().node(line).split()) in plain
        assert " ".join(words().answers(line).split()) in plain
    assert all(label in plain for label in ("Reviewed by (name):", "Date:", "Signature:"))


def boxes(root):
    for text in root.iter(f"{SVG}text"):
        size = float(text.get("font-size"))
        for span in text:
            x, y = float(span.get("x")), float(span.get("y"))
            yield x, y - size + 2, x + len(span.text) * size * WIDE, y


def test_no_two_lines_of_text_cover_each_other_and_all_stand_on_the_sheet():
    root = drawing()
    for one, other in combinations(boxes(root), 2):
        apart = one[2] <= other[0] or other[2] <= one[0] or one[3] <= other[1] or other[3] <= one[1]
        assert apart, (one, other)
    for left, top, _right, bottom in boxes(root):
        assert 0 <= left < float(root.get("width"))
        assert 0 <= top < bottom <= float(root.get("height"))


def test_a_question_stands_in_the_middle_of_its_answers():
    """Reingold and Tilford, "Tidier Drawings of Trees" (1981): a parent is centred over its children."""
    root = drawing()
    uprights = [line for line in root.iter(f"{SVG}line") if line.get("x1") == line.get("x2")]
    stubs = [line for line in root.iter(f"{SVG}line") if line.get("x1") != line.get("x2")]
    assert uprights
    for upright in uprights:
        middle = (float(upright.get("y1")) + float(upright.get("y2"))) / 2
        joined = [float(s.get("y1")) for s in stubs if s.get("x2") == upright.get("x1")]
        assert any(abs(y - middle) < 0.5 for y in joined)


def test_a_tree_without_a_start_is_a_sheet_with_its_heading():
    root = ElementTree.fromstring(draw(Tree({}, 1, (), 0, 0), words()))
    assert root.find(f"{SVG}title").text.endswith("for any kind of oven")
