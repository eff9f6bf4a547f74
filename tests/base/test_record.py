"""Records behave as frozen dataclasses do, and each class is cheap to make."""

import dataclasses
from dataclasses import FrozenInstanceError, field, replace

import pytest

from unpin.base.record import record
from unpin.model.values import Quantity


@record
class Spot:
    x: int
    note: str = ""
    place: object = field(default=None, compare=False)
    more: dict = field(default_factory=dict, hash=False)


@record
class Other:
    x: int
    note: str = ""


def test_equal_fields_are_equal_records_and_hash_alike():
    assert Spot(1, "a", place=7) == Spot(1, "a", place=8)
    assert hash(Spot(1, "a", more={"k": 1})) == hash(Spot(1, "a", more={"k": 2}))
    assert Spot(1, "a", more={"k": 1}) != Spot(1, "a", more={"k": 2})


def test_records_of_two_classes_are_never_equal():
    assert Spot(1, "a") != Other(1, "a")
    assert Spot(1, "a") != (1, "a")


def test_a_record_cannot_be_changed():
    one = Spot(1)
    for change in (lambda: setattr(one, "x", 2), lambda: setattr(one, "fresh", 2), lambda: delattr(one, "x")):
        with pytest.raises(FrozenInstanceError):
            change()
    assert one == Spot(1)


def test_a_record_is_a_dataclass_for_the_standard_library_and_for_match():
    assert replace(Spot(1, "a"), x=3) == Spot(3, "a")
    assert [f.name for f in dataclasses.fields(Spot)] == ["x", "note", "place", "more"]
    match Spot(4, "b"):
        case Spot(x, note):
            assert (x, note) == (4, "b")


def test_a_record_shows_its_fields():
    assert repr(Other(1, "a")) == "Other(x=1, note='a')"
    assert "Quantity(value=1" in repr(Quantity(1, None))


def test_a_field_may_have_the_name_of_anything_that_makes_a_record():
    @record
    class Clamp:
        self: int
        held: tuple[int, ...] = (1,)
        made: list = field(default_factory=list)

    assert (Clamp(3).self, Clamp(3).held, Clamp(3, (2,)).held, Clamp(3).made) == (3, (1,), (2,), [])
