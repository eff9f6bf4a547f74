"""A length of the figure typed over moves the points it runs to, as the file says them; what it cannot say, it refuses with the reason."""

from pathlib import Path

import pytest

from unpin.read.reader import read_text
from unpin.workbench.editing import edited
from unpin.workbench.folder import Refused
from unpin.workbench.lengths import asked
from unpin.workbench.looking import look

EXAMPLES = Path(__file__).parents[2] / "examples"
FRAME = "points: {{{points}}}\nmembers: {{post: A C, arm: C D}}\nlinks: [A-D]\nsupports: {{A: pin, C: roller pushes right}}\nloads: [5 N at D down]\n"


def text(points, head=""):
    return head + FRAME.format(points=points)


def over(said, id, value):
    return edited(said, [{"do": "length", "id": f"length {id}", "value": value}])


def lengths(said):
    return {d["id"].removeprefix("length "): d for d in look(said)["figure"]["lengths"]}


def test_the_lengths_of_the_figure_are_told_with_their_place():
    found = lengths(text("A: [0, 0], C: [0, 2.4], D: [1.6, 2.4]"))
    x = next(d for d in found.values() if d["axis"] == "x")
    y = next(d for d in found.values() if d["axis"] == "y")

    assert (x["shown"], y["shown"]) == ("1.6\u202fm", "2.4\u202fm")
    assert set(x["ends"]) == {"C", "D"} and set(y["ends"]) == {"A", "C"}
    left, top, right, bottom = x["box"]
    assert left < right and top < bottom
    (start, end), = x["lines"]
    assert abs(start[0] - end[0]) > abs(start[1] - end[1]), "along x"


@pytest.mark.parametrize("points, id, value, after, shown", [
    ("A: [0, 0], C: [0, 2.4], D: [1.6, 2.4]", "x:C-D", "2", "A: [0, 0], C: [0, 2.4], D: [2, 2.4]", "1.6"),
    ("A: [0, 0], C: [0, 2.4], D: [1.6, 2.4]", "x:C-D", "1250 mm", "A: [0, 0], C: [0, 2.4], D: [1.25, 2.4]", "1.6"),
    ("A: [0, 0], C: [0, 2.4], D: [1600 mm, 2.4]", "x:C-D", "2", "A: [0, 0], C: [0, 2.4], D: [2000 mm, 2.4]", "1.6"),
    ("A: [0.5, 0], C: [0.5, 2.4], D: [-1, 2.4]", "x:C-D", "2", "A: [0.5, 0], C: [0.5, 2.4], D: [-1.5, 2.4]", "1.5"),
    ("A: [0, 0], C: A up 2.4, D: C right 1.6", "y:A-C", "3", "A: [0, 0], C: A up 3, D: C right 1.6", "2.4"),
    ("A: [0, 0], C: A up 2.4, D: C right 1.6", "x:C-D", "sqrt(2) m", "A: [0, 0], C: A up 2.4, D: C right sqrt(2) m", "1.6"),
    ("A: [0, 0], C: A up 2.4, D: 1.6 from C right", "x:C-D", "2.2", "A: [0, 0], C: A up 2.4, D: 2.2 from C right", "1.6"),
    ("A: [0, 0], C: A up 2.4, D: A right 1.6 up 3", "y:C-D", "1", "A: [0, 0], C: A up 2.4, D: A right 1.6 up 3.4", "0.6"),
    # Both stand at the height that the length runs to.
    ("A: [0, 0], C: [0, 2.4], D: [1.6, 2.4]", "y:A-C", "3", "A: [0, 0], C: [0, 3], D: [1.6, 3]", "2.4")])
def test_the_point_is_said_as_it_was_with_the_new_length(points, id, value, after, shown):
    assert asked(text(points), f"length {id}")["phrase"] == shown
    made = over(text(points), id, value)

    assert made["text"] == text(after)
    moved = {f"point {p.name}" for p, q in zip(read_text(text(points)).problem.points, read_text(made["text"]).problem.points) if p.at != q.at}
    assert set(made["made"]) == moved


@pytest.mark.parametrize("points", ["A: [0, 0], C: A up 2.4, D: C right a", "A: [0, 0], C: [0, 2.4], D: [a, 2.4]"])
def test_a_letter_that_stands_there_is_what_is_edited(points):
    said = text(points, "letters: {a: 1600 mm, b: 2a}\n")
    assert asked(said, "length x:C-D") == {"ok": True, "phrase": "1600 mm", "letter": "a"}

    assert over(said, "x:C-D", "2 m")["text"] == said.replace("1600 mm", "2 m")


def test_an_expression_is_typed_over_as_it_stands():
    said = text("A: [0, 0], C: A up 2.4, D: C right 2a", "letters: {a: 0.8 m}\n")
    assert asked(said, "length x:C-D") == {"ok": True, "phrase": "2a", "letter": ""}

    assert "D: C right 3a" in over(said, "x:C-D", "3a")["text"]


def test_a_step_of_a_row_is_typed_over_and_a_distance_on_a_slope():
    row = "units: m, kN\npoints:\n  A: [0, 0]\n  C E G: every 4 right from A\n  B: A right 2 up 3\nlinks: [A-C-E-G, A-B-C]\nsupports: {A: pin, G: roller}\nloads: [12 kN at C down]\n"
    for bay in ("x:A-C", "x:C-E", "x:E-G"):
        assert "every 5 right from A" in over(row, bay, "5")["text"]

    sloped = "points: {A: [0, 0], B: 2 from A at 30 deg, C: 3 from A at 30 deg}\nmembers: {arm: A B C}\nsupports: {A: fixed}\nloads: [5 N at C down]\n"
    assert "along:A-B" in lengths(sloped)
    assert "B: 1.5 from A at 30 deg, C: 3 from" in over(sloped, "along:A-B", "1.5")["text"]
    assert "B: 2 from A at 30 deg, C: 2.75 from" in over(sloped, "along:B-C", "0.75")["text"]


HOIST = "{head}points: {{W: [0, 2], C: [1.6, 2], K: [1.8, 0.5]}}\nmembers: {{beam: W C}}\ndiscs: {{wheel: {radius} at C}}\nblocks: {{sack: at K}}\ncords: {{T: W over wheel to sack}}\nsupports: {{W: fixed}}\nloads: [weight of sack 300 N]\n"


@pytest.mark.parametrize("head, radius, shown, letter, after", [("", "0.2", "0.2", "", ("0.2 at", "0.3 at")), ("", "200 mm", "200 mm", "", ("200 mm at", "0.3 at")), ("letters: {r: 0.2 m}\n", "r", "0.2 m", "r", ("r: 0.2 m", "r: 0.3"))])
def test_the_radius_of_a_disc_is_typed_over_too(head, radius, shown, letter, after):
    said = HOIST.format(head=head, radius=radius)
    (id,) = [i for i, d in lengths(said).items() if d["axis"] == "radius"]

    assert asked(said, f"length {id}") == {"ok": True, "phrase": shown, "letter": letter}
    assert over(said, id, "0.3")["text"] == said.replace(*after)
    with pytest.raises(Refused):
        over(said, id, "5 N")


@pytest.mark.parametrize("points, id, value, code", [
    ("A: [0, 0], C: [0, 2.4], E: [3.2, 2.4], D: midpoint of C E", "x:C-D", "2", "length_made"),
    ("A: [0.5, 0], C: [0.5, 2.4], D: [2a, 2.4]", "x:C-D", "2", "length_letters"),
    ("A: [0, 0], C: [0, 2.4], D: [1.6, 2.4]", "x:C-D", "0", "length_positive"),
    ("A: [0, 0], C: [0, 2.4], D: [1.6, 2.4]", "x:C-D", "-2", "length_positive"),
    ("A: [0, 0], C: [0, 2.4], D: [1.6, 2.4]", "x:C-D", "sqrt(2)", "length_rational"),
    ("A: [0, 0], C: [0, 2.4], D: [1.6, 2.4]", "x:C-D", "2 kN", "edit"),
    ("A: [0, 0], C: [0, 2.4], D: [1.6, 2.4]", "x:C-D", "wide", "edit"),
    ("A: [0, 0], C: [0, 2.4], D: [1.6, 2.4]", "x:C-Z", "2", "thing"),
    ("A: [0, 0], C: [0, 2.4], D: [1.6, 2.4]", "x:C", "2", "thing")])
def test_what_cannot_be_said_without_a_doubt_is_refused_with_the_reason(points, id, value, code):
    with pytest.raises(Refused) as refused:
        over(text(points, "letters: {a: 0.6 m}\n" if "2a" in points else ""), id, value)

    assert refused.value.code == code


def test_the_reason_names_the_point_that_would_not_stay():
    said = text("A: [0, 0], C: [0, 2.4], B: [0, 4.8], E: [3.2, 2.4], D: midpoint of A E").replace("post: A C", "post: A C B").replace("arm: C D", "arm: C E, tie: A D")
    with pytest.raises(Refused) as refused:
        over(said, "x:D-E", "2")

    assert refused.value.more["name"] == "D"


@pytest.mark.parametrize("name", ["market-awning", "foot-bridge", "loading-ramp", "barrel-cart", "window-lift", "workshop-hoist"])
def test_what_is_typed_back_as_it_stands_leaves_every_file_as_it_is(name):
    said = (EXAMPLES / f"{name}.yaml").read_text("utf-8")
    found = 0
    for id in lengths(said):
        try:
            now = asked(said, f"length {id}")
        except Refused as refused:
            assert refused.code in ("length_made", "length_letters", "length_own")
            continue
        found += 1
        assert over(said, id, now["phrase"])["text"] == said

    assert found
