"""A pressure may have a letter, and a load may be a share of it."""

from unpin.exact.number import approx
from unpin.lesson.build import build
from unpin.read import read_text
from unpin.render.terminal import write
from unpin.route.work import work


def test_a_pressure_may_have_a_letter():
    # By hand: a triangle of half of 9.81 kN/m² times 2 m of depth, on a strip 0.5 m wide.
    reading = read_text("units: m, kN\nletters: {w: 9.81 kN/m^2}\npoints: {A: [0, 0], B: A up 2}\nmembers: {board: A B}\n"
                        "supports: {A: fixed}\nloads: [2w to 0 kN/m^2 over 0.5 m right on board from A to B]\nfind: [A]")
    worked = work(reading.problem)

    assert reading.sound and worked.proof.passed
    assert approx(worked.answers[0].components[0].value) == -9810
    assert "w = 9.81" in write(build(worked))


def test_a_weight_per_volume_times_a_depth_is_a_pressure():
    # By hand: half of 9.81 kN/m³ times (2 m)², on a strip 0.5 m wide.
    reading = read_text("units: m, kN\nletters: {gamma: 9.81 kN/m^3}\npoints: {A: [0, 0], B: A up 2}\nmembers: {board: A B}\n"
                        "supports: {A: fixed}\nloads: [2 m * gamma to 0 kN/m^2 over 0.5 m right on board from A to B]\nfind: [A]")
    worked = work(reading.problem)

    assert reading.sound and worked.proof.passed
    assert approx(worked.answers[0].components[0].value) == -9810
    assert "9.81" in write(build(worked))
