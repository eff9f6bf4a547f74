"""Records behave as frozen dataclasses do, and each class is cheap to make."""

import dataclasses
import pickle
from concurrent.futures import ThreadPoolExecutor
from dataclasses import FrozenInstanceError, field, replace

import pytest

from unpin.base.record import MANY, open_record, record
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


def test_a_record_takes_the_same_arguments_whether_few_or_many_have_been_made():
    @record
    class Cleat:
        width: int
        note: str = ""
        holes: list = field(default_factory=list)

    for _ in range(2 * MANY):
        one = Cleat(3)
        assert (one.width, one.note, one.holes) == (3, "", [])
        assert one.holes is not Cleat(3).holes
        assert vars(Cleat(4, holes=[1], note="b")) == vars(Cleat(4, "b", [1])) == {"width": 4, "note": "b", "holes": [1]}
        for wrong in (lambda: Cleat(), lambda: Cleat(1, "a", [], 2), lambda: Cleat(1, width=2), lambda: Cleat(1, depth=2), lambda: Cleat(depth=1)):
            with pytest.raises(TypeError):
                wrong()


def test_a_record_that_comes_out_of_a_file_is_whole_before_any_was_made():
    held = Rail.__new__(Rail)
    held.__dict__.update(length=2, name="a")

    assert held == pickle.loads(pickle.dumps(held)) == Rail(2, "a")
    assert hash(held) == hash(Rail(2, "a"))


@record
class Rail:
    length: int
    name: str


def test_fields_of_a_record_can_be_asked_for_from_many_threads_at_once():
    for _ in range(20):

        @record
        class Step:
            rise: int
            tread: list = field(default_factory=list)

        with ThreadPoolExecutor(8) as pool:
            found = list(pool.map(lambda _, Step=Step: replace(Step(1), rise=2), range(16)))

        assert found == [Step(2)] * 16


def test_an_open_record_may_change_and_is_equal_to_itself_alone():
    @open_record
    class Tray:
        label: str
        found: list = field(default_factory=list)

    one = Tray("a")
    one.label = "b"
    one.found.append(1)

    assert (one.label, one.found, Tray("b").found) == ("b", [1], [])
    assert one != Tray("b", [1])
