"""Each field by itself: kept in the table's unit, told apart from an empty one, and shown as it was typed."""

from decimal import Decimal

from triage.check_pages.presenters.readings.typed import Blank, Typed
from triage.engine.readings.written import Field

TABLE = {"minutes": Field("m", 1, 240), "flashes": Field("f", 0, 100, whole=True), "heat": Field("h", 0, 100)}
MINUTES, FLASHES = Blank("minutes", "Minutes", "a hint", "min"), Blank("flashes", "Flashes")
HALVED = Blank("heat", "Heat", kept_as=lambda shown: shown / Decimal(2), shown_as=lambda kept: kept * 2)


def read(*blanks, **typed):
    found = Typed({f"read-{name}": text for name, text in typed.items()})
    found.read(blanks, TABLE)
    return found


def test_an_empty_field_is_not_there():
    assert read(MINUTES, minutes="  ").figures == {}


def test_the_digits_after_the_point_are_kept_as_they_were_typed():
    assert read(MINUTES, minutes="12,50").figures == {"minutes": "12.50"}


def test_another_unit_is_turned_into_the_tables_and_its_limits_are_told_in_the_one_typed():
    assert read(HALVED, heat="150").figures == {"heat": "75"}
    assert read(HALVED, heat="201").problems == {"heat": "This cannot be more than 200. Check the number and its unit."}


def test_a_part_of_a_flash_is_refused():
    assert read(FLASHES, flashes="2.0").figures == {"flashes": "2.0"}
    assert "whole numbers" in read(FLASHES, flashes="2.5").problems["flashes"]


def test_the_field_comes_back_with_what_was_typed_and_what_is_wrong():
    field = read(MINUTES, minutes=" 0 ").field_of(MINUTES)
    assert (field.name, field.value, field.unit, field.hint) == ("read-minutes", " 0 ", "min", "a hint")
    assert field.problem == "This cannot be less than 1. Check the number and its unit."


def test_a_box_is_ticked_by_one_and_by_nothing_else():
    typed = Typed({"read-cold": "1", "read-hot": "yes"})
    assert [typed.ticked(name) for name in ("cold", "hot", "warm")] == [True, False, False]
    assert typed.tick("cold", "Cold").value == "1"
    assert typed.tick("hot", "Hot").value == ""


def test_a_form_that_was_sent_says_so():
    assert Typed({"read-form": "1"}).sent
    assert not Typed({"read-minutes": "1"}).sent
