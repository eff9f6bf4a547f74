"""The gauge finds each kind of planted fault, and nothing in a clean scene."""

from unpin.draw import label as labels
from unpin.draw.meter import meter
from unpin.draw.scene import Arrow, Group, Path, Scene, Text, circle


def scene(*marks):
    return Scene((-100, -100), 200, 200, marks)


def text(at, word="300 N", owner="", role="label", **more):
    return Text(at, labels.upright(word), owner=owner, role=role, **more)


def codes(*marks):
    return [f.code for f in meter(scene(*marks))]


ARROW = Arrow(((0, -40), (0, 0)), "force", "load1")
BEAM = (Path(((-50, 4), (50, 4)), "edge", "beam"), Path(((-50, 4), (50, 4)), "flesh", "beam"))


def test_a_clean_scene_has_no_faults():
    assert codes(*BEAM, Group((ARROW, text((18, -30), owner="load1")), "load", "load1")) == []


def test_a_label_on_another_label_is_found():
    assert codes(text((0, -50)), text((5, -52), "150 N")) == ["label_meets_label"]


def test_a_label_on_a_body_is_found_even_where_it_only_touches_the_thick_line():
    assert "label_meets_line" in codes(*BEAM, text((0, -2)))


def test_a_label_on_a_shaft_is_found():
    assert "label_meets_line" in codes(ARROW, text((3, -25)))


def test_a_label_on_a_head_beside_the_shaft_is_found():
    narrow = text((3.9, -4.5), "I")
    assert "label_meets_head" in codes(ARROW, narrow)


def test_a_label_on_a_joint_is_found():
    assert codes(circle((0, 0), 2.5, "hinge", "A"), text((3, 2), "A", role="point")) == ["label_meets_line"]


def test_a_label_inside_a_closed_symbol_is_found():
    assert codes(Path(((-30, -30), (30, -30), (30, 30), (-30, 30)), "symbol", closed=True), text((0, 0), "A")) == [
        "label_meets_line"
    ]


def test_a_leader_line_through_a_label_is_found():
    led = text((40, -50), leader=((30, -50), (-30, -50)))
    assert codes(led, text((0, -50), "A")) == ["label_meets_line"]


def test_small_letters_are_found():
    assert codes(text((0, 0), size=6.5)) == ["label_small"]


def test_a_label_that_hangs_over_the_edge_is_found():
    assert codes(text((98, 0))) == ["label_outside"]


def test_a_label_nearer_to_another_arrow_than_to_its_own_is_found():
    other = Arrow(((60, -40), (60, 0)), "force", "load2")
    faults = meter(scene(Group((ARROW, text((42, -30), owner="load1")), "load", "load1"), Group((other,), "load", "load2")))

    assert [(f.code, f.other) for f in faults] == [("label_astray", "load2")]


def test_turned_text_is_measured_as_it_lies():
    member = Path(((-40, 40), (40, -40)), "link-edge", "AB")

    assert codes(member, text((-8, -8), "12.5 (T)", turn=45)) == []
    assert codes(member, text((-3, -3), "12.5 (T)", turn=45)) == ["label_meets_line"]


def test_a_label_beside_the_leader_line_of_another_is_found():
    led = Text((60, -80), labels.upright("90 N"), owner="load2", leader=((50, -76), (10, -30)))
    far = Arrow(((0, -30), (0, 0)), "force", "load2")
    mine = Group((Arrow(((60, -30), (60, 0)), "force", "load1"), text((34, -44), owner="load1")), "load", "load1")

    assert "label_astray" in codes(Group((far, led), "load", "load2"), mine)
