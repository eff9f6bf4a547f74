"""A force that is given in a two-force member, or one component at a pin of members: the load that made it comes back."""

import pytest

from unpin.exact.number import approx
from unpin.lesson.build import build
from unpin.read import read_text
from unpin.render.terminal import write
from unpin.route.work import work

BRACKET = ("points: {A: [0, 0], B: A right 1, C: A right 1.6, W: A down 1.5, K: A right 0.4 down 0.9}\n"
           "members: {rail: A B C, strut: %s}\nletters: {P: %s}\nsupports: {A: pin, W: pin}\nloads: [P at C down]\n")
ARCH = ("points: {A: [0, 0], B: A right 4, C: A right 2 up 3, D: midpoint of A C, E: midpoint of C B}\n"
        "members: {one: A D C, two: C E B}\nletters: {P: %s}\nsupports: {A: pin, B: pin}\nloads: [P at D right, 300 N at E down%s]\n")


def worked(text):
    reading = read_text(text)
    assert reading.sound, [d.code for d in reading.diagnostics]
    done = work(reading.problem)
    assert done.proof is not None and done.proof.passed
    return done


def value(done, name):
    return approx(next(c.value for a in done.answers for c in a.components if c.symbol.base + c.symbol.sub == name))


def faults(text):
    return [d.code for d in read_text(text).diagnostics if d.is_error]


@pytest.mark.parametrize("chain", ["W B", "B W", "W K B"])
@pytest.mark.parametrize("named", ["strut", "W-B", "B-W"])
def test_the_load_comes_back_from_the_force_in_a_member_straight_or_bent(chain, named):
    made = value(worked(BRACKET % (chain, "250 N") + "find: [strut]"), "FWB" if chain[0] == "W" else "FBW")

    back = worked(BRACKET % (chain, "unknown") + f"given: [{named} {-made:.12f} N compression]\nfind: [P, A]")

    assert made < -1
    assert value(back, "P") == pytest.approx(250, abs=1e-6)


def test_a_member_with_a_given_force_is_told_as_one():
    said = write(build(worked(BRACKET % ("W K B", "unknown") + "given: [strut 500 N compression]\nfind: [P, A, B on rail]")))

    assert "The force in member strut is given" in said
    assert "strut is a two-force member" in said.replace("\n    ", " ")


@pytest.mark.parametrize("component, name", [("right", "Cx"), ("up", "Cy")])
@pytest.mark.parametrize("part", ["one", "two"])
@pytest.mark.parametrize("load", ["", ", 40 N at C right"])
def test_the_load_comes_back_from_one_component_at_a_pin(component, name, part, load):
    there = worked(ARCH % ("600 N", load) + f"find: [C on {part}]")
    made = value(there, name)

    back = worked(ARCH % ("unknown", load) + f"given: [C on {part} {abs(made):.12f} N {component if made > 0 else {'right': 'left', 'up': 'down'}[component]}]\n"
                  f"find: [P, A, C on one, C on two]")

    assert abs(made) > 1
    assert value(back, "P") == pytest.approx(600, abs=1e-6)


def test_both_components_given_find_two_loads():
    text = (ARCH % ("unknown", ", Q at E left")).replace("P: unknown", "P: unknown, Q: unknown")
    back = worked(text + "given: [C on two 200 N right, C on two 100 N down]\nfind: [P, Q]")

    # Member two by hand, moments about B: 3·200 = 2·100 + 300·1 + 1.5 Q in anticlockwise sense.
    assert value(back, "Q") == pytest.approx((3 * 200 - 2 * 100 - 300) / 1.5)


@pytest.mark.parametrize("given, code", [
    ("one 200 N tension", "read.given_no_two_force"),
    ("C on one 200 N", "read.given_many"),
    ("C on one 200 N at 30 deg", "read.given_way"),
    ("C on one 20 N m clockwise", "read.given_way"),
    ("C on three 200 N up", "read.unknown_member"),
    ("D on one 200 N up", "read.given_nothing"),
])
def test_what_cannot_be_given_at_a_pin_is_said(given, code):
    assert faults(ARCH % ("unknown", "") + f"given: [{given}]\nfind: [P]") == [code]


def test_at_a_pin_of_a_two_force_member_its_own_force_is_asked_for():
    text = BRACKET % ("W B", "unknown") + "given: [B on rail 200 N up]\nfind: [P]"

    assert faults(text) == ["read.given_pin_in_line"]


def test_what_is_given_is_not_given_twice():
    assert faults(BRACKET % ("W B", "unknown") + "given: [strut 5 N tension, W-B 6 N tension]\nfind: [P]") == ["read.given_twice"]
    assert faults(BRACKET % ("W B", "unknown") + "given: [strut 5 N tension]\nfind: [strut, P]") == ["read.given_asked"]


@pytest.mark.parametrize("part, side", [("crank", "up"), ("lever", "down")])
def test_the_force_on_a_slot_may_be_given_on_either_part(part, side):
    text = ("points: {A: [0, 0], O: A up 0.4, K: O right 0.3, B: 1 from A towards K}\nmembers: {lever: A K B, crank: O K}\n"
            "letters: {P: %s, M: unknown}\nslots: {K: crank in lever}\nsupports: {A: pin, O: pin}\n"
            "loads: [P at B right, M anticlockwise on crank]\n")
    there = worked(text % "60 N" + "find: [K on crank, M]")
    made, moment = (abs(value(there, name)) for name in ("RK", "M"))

    back = worked(text % "unknown" + f'given: ["K on {part} {made:.12f} N square to lever, {side}"]\nfind: [P, M]')

    # Up on the crank is against the force that 60 N to the right makes there: the load comes back turned round.
    assert value(back, "P") == pytest.approx(-60, abs=1e-6)
    assert abs(value(back, "M")) == pytest.approx(moment, abs=1e-6)
