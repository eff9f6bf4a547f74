"""Which of two equally short ways is recommended: the first moments about the point where the unknowns act."""

from dataclasses import replace

from build import RIGHT, UP, force, frame, link, slope, support
from unpin.model.problem import Asked
from unpin.route.work import work

BEAM = frame({"A": (0, 0), "B": (4, 0), "C": (2, 0)}, {"beam": "A C B"}, support("pin", "A", "beam"), support("roller", "B", "beam", UP),
             force(300, "C", "beam", slope(3, -4)))
REACTIONS = replace(BEAM, asked=(Asked("reaction", point="A"), Asked("reaction", point="B")))


def centres(problem, **options):
    return [e.functional.point for s in work(problem, **options).recommended.steps for e in s.equations if e.functional.kind == "about"]


def test_of_a_beam_on_pin_and_roller_the_moments_are_about_the_pin():
    """First the roller by moments about the pin, then the pin by two force sums, moments about the roller being left for the check
    (common practice, no source)."""
    assert centres(REACTIONS)[0] == "A"


def test_a_pull_along_a_line_through_the_centre_does_not_make_it_dear_where_its_bar_ends_there():
    """The section habit stays: moments about the joint where the other two cut bars end."""
    at = {"A": (0, 0), "B": (2, 0), "C": (4, 0), "D": (1, 1), "E": (3, 1)}
    truss = frame(at, {}, *(link(a, b, "", "") for a, b in ("AB", "BC", "AD", "DB", "BE", "EC", "DE")), support("pin", "A"),
                  support("roller", "C", "", UP), force(10, "B"), force(2, "E", "", RIGHT))
    truss = replace(truss, asked=(Asked("link", "DE"),))
    assert centres(truss)[-1] == "B"


def test_an_axis_along_which_a_force_acts_is_said_as_that_force_is():
    """A car on a steep track, its cable parallel to it: forces along the track, at its angle (common practice, no source)."""
    from unpin.read import read_text

    text = ("points: {A: [0, 0], B: 50 from A at 65 deg, K: 24 from B at 25 deg below right}\nmembers: {car: A B K A}\n"
            "supports: {A: roller pushes at 25 deg below right, B: roller pushes at 25 deg below right, K: cord at 65 deg}\n"
            "loads: [5500 N at K down]\nfind: [\"K-K'\"]\n")
    first = work(read_text(text).problem).recommended.steps[0].equations[0].functional

    assert first.kind == "along"
    assert (first.direction.form, first.direction.angle) == ("angle", 65)


def test_a_pulley_is_cut_free_without_a_pin_that_only_its_cord_runs_to():
    from unpin.read import read_text

    text = ("points: {A: [0, 0], H: A down 0.3, B: [0.05, 1], C: [0.05, 1.6]}\nmembers: {hook: A H}\n"
            "discs: {upper: 0.15 m at C, middle: 0.05 m at B, lower: 0.1 m at A}\n"
            "cords: {P: A over middle under lower over upper pulled down, T: B to C}\nsupports: {C: pin}\nloads: [600 N at H down]\nfind: [P, T, C]\n")
    problem = read_text(text).problem

    assert [s.equations[0].body.parts for s in work(problem).recommended.steps][-1] == ("middle",)


def test_a_shaft_and_the_cam_welded_to_it_are_drawn_once_and_not_left_for_the_whole():
    from unpin.read import read_text

    text = ("points: {O: [0, 0], C: O right 15, K: C up 30, F: K up 80, S: K up 40}\ndiscs: {cam: 30 at C}\nletters: {M: unknown}\n"
            "members: {follower: K S F, shaft: O C}\npins: {C: welded}\ncontacts: {K: cam pushes follower}\n"
            "supports: {O: pin, S: guide along up}\nloads: [60 N at F down, M anticlockwise on shaft]\nfind: [M, K on follower, O]\n")
    bodies = [s.equations[0].body.kind for s in work(read_text(text).problem).recommended.steps]

    assert "whole" not in bodies


def test_where_all_bars_of_a_large_truss_are_asked_the_reactions_come_first():
    """Reactions, then joint by joint (common practice, no source), although the reactions are not asked."""
    from unpin.read import read_text

    text = ("points:\n  A: [0, 0]\n  B C G H: every 3 right from A\n  D: [1.5, 3]\n  E I J: every 3 right from D\n"
            "links: [A-B-C-G-H, A-D-B-E-C-I-G-J-H, D-E-I-J]\nsupports: {A: pin, H: roller}\nloads: [\"10 N down at B, G\"]\nfind: [all bars]\n")
    steps = work(read_text(text).problem).recommended.steps

    assert [s.equations[0].body.kind for s in steps[:4]] == ["whole", "whole", "whole", "pin"]
