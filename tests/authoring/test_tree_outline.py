"""The outline holds every place of the tree, in order, and ends with the lines to sign."""

from tests.authoring.grown_tree import no_heat_tree, words
from triage.authoring.decision_tree import outline_rows
from triage.authoring.tree_outline import outline


def test_every_place_stands_in_it_once_and_in_order():
    text = outline(no_heat_tree(), words())
    numbered = [line.split()[0] for line in text.splitlines() if line.strip()[:1].isdigit() and "  " in line.strip()]
    assert numbered == [line.number for line in outline_rows(no_heat_tree())]
    for line in outline_rows(no_heat_tree()):
        assert words().node(line) in text


def test_deeper_places_stand_further_in():
    text = outline(no_heat_tree(), words()).splitlines()
    (deep,) = [line for line in text if line.strip().startswith("1.1.1 ")]
    (middle,) = [line for line in text if line.strip().startswith("1.1 ")]
    assert len(deep) - len(deep.lstrip()) > len(middle) - len(middle.lstrip()) > 0


def test_it_ends_with_name_date_and_signature():
    *_, name, date, signature = outline(no_heat_tree(), words()).splitlines()
    assert name.startswith("Reviewed by (name): ____")
    assert date.startswith("Date: ____")
    assert signature.startswith("Signature: ____")
