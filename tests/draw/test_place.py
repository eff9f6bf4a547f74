"""Labels find free places, give way to each other, and fall back on a leader line."""

from hypothesis import given, settings
from hypothesis import strategies as st

from unpin.draw.candidates import along_line, around, beside_arrow, in_angle, led
from unpin.draw.geometry import apart, boxes_meet, grown, rects_meet, segment_meets_box, segment_meets_rect, tilt_of
from unpin.draw.place import Candidate, Wanted, place


def wanted(key, *boxes, far=tuple):
    return Wanted(
        key, tuple(Candidate(b, float(n)) for n, b in enumerate(boxes)), ((boxes[0][:2], boxes[0][:2], 0.0),), far, jealous=False
    )


LEFT, MIDDLE, RIGHT = (0, 0, 10, 10), (20, 0, 30, 10), (40, 0, 50, 10)


def test_the_best_liked_free_place_is_taken():
    assert place([wanted("a", LEFT, MIDDLE)], [], {})["a"].box == LEFT


def test_a_place_on_an_obstacle_is_passed_over():
    assert place([wanted("a", LEFT, MIDDLE)], [((5, -5), (5, 15), 1.0)], {})["a"].box == MIDDLE


def test_a_label_with_one_place_drives_out_one_that_has_another():
    found = place([wanted("free", LEFT, RIGHT), wanted("bound", LEFT)], [], {})

    assert found["bound"].box == LEFT
    assert found["free"].box == RIGHT


def test_two_labels_trade_places_when_both_gain():
    a = Wanted("a", (Candidate(LEFT, 0.0), Candidate(MIDDLE, 9.0)), (), jealous=False)
    b = Wanted("b", (Candidate(LEFT, 0.0), Candidate(MIDDLE, 0.1), Candidate(RIGHT, 0.2)), (), jealous=False)
    found = place([b, a], [], {})

    assert (found["a"].box, found["b"].box) == (LEFT, MIDDLE)


def test_a_leader_line_is_the_last_resort():
    far = lambda: (Candidate(RIGHT, 20.0, leader=((40, 5), (11, 5))),)
    found = place([wanted("a", LEFT, far=far)], [((5, -5), (5, 15), 1.0)], {})

    assert found["a"].leader


def test_no_place_at_all_is_said():
    assert place([wanted("a", LEFT)], [((5, -5), (5, 15), 1.0)], {})["a"] is None


def test_a_place_nearer_to_a_rival_is_disliked():
    near = Wanted("a", (Candidate((20, -4, 28, 4), 0.0), Candidate((-28, -4, -20, 4), 1.0)), (((0, 0), (0, 0), 2.0),))
    found = place([near], [], {"b": (((32, 0), (32, 0), 2.0),)})

    assert found["a"].box[0] < 0


@settings(max_examples=60, deadline=None)
@given(st.lists(st.tuples(st.integers(-60, 60), st.integers(-60, 60)), min_size=1, max_size=9, unique=True))
def test_placed_labels_never_meet_each_other_or_an_obstacle(spots):
    obstacles = [((x, y), (x, y), 2.5) for x, y in spots]
    asked = [
        Wanted(f"{n}", around(s, 2.5, (12.0, 7.0)), ((s, s, 2.5),), lambda s=s: led(s, 2.5, (12.0, 7.0)))
        for n, s in enumerate(spots)
    ]
    found = [c for c in place(asked, obstacles, {}).values() if c]

    assert not any(boxes_meet(a.box, b.box) for n, a in enumerate(found) for b in found[n + 1 :])
    assert not any(segment_meets_box(p, q, c.box) for c in found for p, q, _ in obstacles)


def test_candidates_beside_an_arrow_keep_off_its_shaft():
    assert not any(segment_meets_box((0, -40), (0, 0), c.box) for c in beside_arrow((0, -40), (0, 0), (20.0, 7.0)))


def test_text_along_a_sloping_member_lies_along_it_and_reads_from_below_or_from_the_right():
    best = next(iter(along_line((0, 0), (60, -60), (30.0, 6.0), 2.0)))
    back = next(iter(along_line((60, -60), (0, 0), (30.0, 6.0), 2.0)))
    falling = next(iter(along_line((0, 0), (60, 60), (30.0, 6.0), 2.0)))

    assert round(best.turn) == round(back.turn) == 45
    assert round(falling.turn) == -45
    assert not segment_meets_rect((0, 0), (60, -60), best.box, best.tilt, 2.0)
    assert segment_meets_box((0, 0), (60, -60), best.box)


def test_two_turned_labels_side_by_side_do_not_meet_though_the_boxes_around_them_do():
    tilt = tilt_of((40.0, 6.0), 45)
    first, second = (-20, -20, 20, 20), (-12, -12, 28, 28)

    assert boxes_meet(first, second)
    assert not rects_meet(first, tilt, second, tilt)
    assert rects_meet(first, tilt, first, None)


def test_a_label_that_may_be_left_out_is_not_led_along_another_line():
    far = lambda: (Candidate((-5, 60, 5, 70), 20.0, leader=((0, 60), (0, 12))),)
    arrow = [((0, 10), (0, 50), 0.8)]
    blocked = Wanted("a", (Candidate((-5, 15, 5, 25), 0.0),), (((0, 10), (0, 10), 0.0),), far, jealous=False, spare=True)

    assert place([blocked], arrow, {})["a"] is None


def test_the_number_of_a_narrow_angle_stands_beside_its_arc():
    places = in_angle((0.0, 0.0), (0.0, -1.0), 25.0, 10.0, (11.0, 7.0))
    sides = ((0.0, 0.0), (-6.0, -34.0), 0.8), ((0.0, 0.0), (6.0, -34.0), 0.8)
    first = next(c.box for c in places if not any(segment_meets_box(p, q, grown(c.box, half)) for p, q, half in sides))

    middle = ((first[0] + first[2]) / 2, (first[1] + first[3]) / 2)
    assert apart(middle, (0.0, -25.0)) < 25.0
