"""A force turned or carried on the sheet is another phrase in the file: nothing else of it changes."""

import math

import pytest

from unpin.read.reader import read_text
from unpin.workbench.editing import edited
from unpin.workbench.folder import Refused
from unpin.workbench.looking import things_of

FRAME = "letters: {{alpha: 40 deg, P: unknown}}\npoints: {{C: [0, 0], D: [1, 0], E: [2, 0]}}\nmembers: {{arm: C D E}}\nsupports: {{C: fixed}}\nloads: [7 N m clockwise on arm, {load}]\n"
WAY = "at 35 deg below left"


def load(text):
    return read_text(text).problem.loads[-1]


@pytest.mark.parametrize("phrase, after", [
    ("300 N at E right 3 down 4", f"300 N at E {WAY}"), ("300 N right 3 down 4 at E", f"300 N {WAY} at E"), ("300 N at E down on arm", f"300 N at E {WAY} on arm"),
    ("300 N at E at 20 deg left of up", f"300 N at E {WAY}"), ("300 N at E at slope right 3 down 4", f"300 N at E {WAY}"), ("P at E at alpha", f"P at E {WAY}"),
    ("Q = 300 N at E towards C", f"Q = 300 N at E {WAY}"), ("5 N down at D and E", f"5 N {WAY} at D and E")])
def test_only_the_direction_of_the_phrase_is_another(phrase, after):
    text = FRAME.format(load=phrase)
    thing = [t for t in things_of(text) if t["what"] == "load"][-1]
    made = edited(text, [{"do": "turn", "id": thing["id"], "way": WAY}])["text"]

    assert made == FRAME.format(load=after)
    assert load(made).point == load(text).point == "E"
    # Sine and cosine of 35 degrees from a table of four figures: 0.5736 and 0.8192, as in any handbook.
    x, y = (float(c) / math.hypot(*map(float, load(made).direction.vector)) for c in load(made).direction.vector)
    assert (round(x, 4), round(y, 4)) == (-0.8192, -0.5736)


@pytest.mark.parametrize("phrase, after", [
    ("300 N at E right 3 down 4", "300 N at D right 3 down 4"), ("5 N down at C and E", "5 N down at C and D"), ("P at E at alpha", "P at D at alpha"), ("300 N at E down on arm", "300 N at D down on arm")])
def test_a_force_is_carried_to_another_point_in_the_direction_it_had(phrase, after):
    text = FRAME.format(load=phrase)
    thing = [t for t in things_of(text) if t["what"] == "load"][-1]

    assert edited(text, [{"do": "carry", "id": thing["id"], "from": "E", "to": "D"}])["text"] == FRAME.format(load=after)


@pytest.mark.parametrize("phrase", ["mass 50 kg hangs at E", "weight of arm 10 N", "2 N/m down on arm", "3 N m clockwise on arm"])
def test_what_has_no_direction_of_its_own_is_not_turned(phrase):
    text = FRAME.format(load=phrase)
    thing = [t for t in things_of(text) if t["what"] == "load"][-1]

    with pytest.raises(Refused):
        edited(text, [{"do": "turn", "id": thing["id"], "way": WAY}])


def test_the_angle_of_a_force_is_told_and_of_nothing_else():
    angles = [t["angle"] for t in things_of(FRAME.format(load="300 N at E right 3 down 4")) if t["what"] == "load"]

    assert angles[0] is None and angles[1] == pytest.approx(-math.degrees(math.atan(4 / 3)), abs=1e-5)


@pytest.mark.parametrize("phrase, after", [
    ("(3 right, 4 down) kN at E", f"5 kN at E {WAY}"), ("(3 kN right, 4 kN down) at E on arm", f"5 kN at E on arm {WAY}"), ("Q = (0.5 left, 1.2 up) kN at E", f"Q = 1.3 kN at E {WAY}")])
def test_a_force_by_components_is_turned_as_size_and_direction_where_its_size_is_exact(phrase, after):
    """The right-angled triangles 3, 4, 5 and 5, 12, 13."""
    text = FRAME.format(load=f'"{phrase}"')
    thing = [t for t in things_of(text) if t["what"] == "load"][-1]
    made = edited(text, [{"do": "turn", "id": thing["id"], "way": WAY}])["text"]

    assert thing["still"] == ""
    assert made.replace('"', "") == FRAME.format(load=after)
    assert load(made).magnitude.value == load(text).magnitude.value


@pytest.mark.parametrize("phrase", ["(2 right, 3 down) kN at E", "(P right, 2 down) kN at E"])
def test_a_force_by_components_whose_size_is_no_plain_number_says_why_it_is_not_turned(phrase):
    text = FRAME.format(load=f'"{phrase}"').replace("P: unknown", "P: 3")
    if "(P" in phrase:
        text = text.replace("(P right, 2", "(P right, P")
    thing = [t for t in things_of(text) if t["what"] == "load"][-1]

    assert "no plain number" in thing["still"]
    with pytest.raises(Refused) as refused:
        edited(text, [{"do": "turn", "id": thing["id"], "way": WAY}])
    assert refused.value.code == "components"
