"""A frame is drawn on the page, by pointer and by keyboard alone, and has the numbers that the file has."""

from fractions import Fraction

from desks import Hand, served

import unpin
from unpin.exact.number import approx
from unpin.read.reader import read_text

CRANE = """\
points: {A: [0, 0], B: [0, 2.4], C: [0, 1.6], D: [1.2, 2.2], E: [0, 0.8], F: [0.8, 2]}
members: {post: A E C B, arm: C F D}
links: [E-F]
supports: {A: pin, B: roller on slope right 3 up 4}
loads: [260 N at D right 5 down 12]
"""

HOIST = [
    "O: [0, 0]", "B: [0, 1.5]", "C: [1.6, 1.5]", "K: [1.8, 0.5]", "W: [0, 2.1]", "G: [0, 0.5]", "H: [0.8, 1.5]", "post: O G B W", "beam: B H C", "G-H",
    "wheel: 0.2 at C", "sack: at K", "T: W over wheel to sack", "supports: O: fixed", "weight of sack 300 N",
]


def numbers(text):
    """Sizes of the answers of a text, sorted, as the library gives them."""
    return sorted(round(abs(approx(c.value)), 6) for a in unpin.solve(unpin.loads(text)).answers for c in a.components)


def test_a_frame_with_a_link_a_roller_and_a_slope_is_drawn_with_the_pointer(hand):
    hand.empty("crane")
    hand.stroke((0, 0), (0, 2.4)).say("A B")
    hand.stroke((0, 1.6), (1.2, 2.2)).say("C D")
    hand.stroke((0, 0.8), (0.8, 2.0)).say("E-F")
    hand.press(0, 0).say("pin")
    hand.press(0, 2.4).say("roller")
    hand.over("roller on slope right 3 up 4")
    hand.press(1.2, 2.2).say("100 N at D down")
    hand.over("260 N at D right 5 down 12")

    assert numbers(hand.saved()) == numbers(CRANE)
    # By hand, moments about C on the arm: 260 (12/13 · 1.2 + 5/13 · 0.6) = arm of EF · F, the link rises 1.2 over 0.8.
    lever = Fraction(16, 10) - Fraction(8, 10)
    assert any(f"{float(Fraction(260 * (12 * 12 + 5 * 6), 130) / lever) * (0.8**2 + 1.2**2) ** 0.5 / 0.8:.0f}" in a for a in hand.answers())


def test_the_same_frame_is_said_by_keyboard_alone(hand):
    hand.empty("crane")
    for line in ("A: [0, 0]", "B: [0, 2.4]", "C: [0, 1.6]", "D: [1.2, 2.2]", "E: [0, 0.8]", "F: on C D at x = 0.8", "post: A E C B", "arm: C F D", "E-F",
                 "supports: A: pin", "supports: B: roller on slope right 3 up 4", "260 N at D right 5 down 12"):
        hand.type_line(line).keys("Escape")

    assert numbers(hand.saved()) == numbers(CRANE)


def test_points_are_set_and_joined_with_the_arrow_keys(hand):
    hand.empty("beam")
    hand.page.focus("#sheet")
    hand.keys("ArrowRight", "Enter", "Escape")
    hand.page.focus("#sheet")
    hand.keys("ArrowRight", *["Shift+ArrowRight"] * 4, "Enter", "Escape")
    first, second = (hand.page.locator(f'.handle[data-id="point {n}"]') for n in "AB")
    first.focus()
    hand.keys("Enter")
    second.focus()
    hand.keys("Shift+Enter", "1")

    assert "members:" in hand.text() and "A B" in hand.text()


def test_a_pulley_frame_is_said_by_keyboard_and_has_the_numbers_of_the_file(hand):
    hand.empty("hoist")
    for line in HOIST:
        hand.type_line(line).keys("Escape")

    # The sack hangs 1.8 m from O: couple 300 · 1.8; the tension is the weight.
    answers = " ".join(hand.answers())
    assert "540 N·m" in answers and "300 N tension" in answers
    assert numbers(hand.saved()) == numbers(hand.text())


def test_a_point_that_is_held_is_dragged_to_round_values_in_one_step(hand):
    (hand.folder / "beam.yaml").write_text("# my beam\npoints:\n  A: [0, 0]  # the wall\n  B: [2, 0]\nmembers: {beam: A B}\nsupports: {A: fixed}\nloads: [5 N at B down]\n")
    hand.open("beam.yaml")
    hand.press(2, 0).stroke((2, 0), (1.497, 0.503))

    assert "B: [1.5, 0.5]" in hand.text()
    assert "# my beam" in hand.text() and "# the wall" in hand.text()
    hand.keys("Control+z")
    assert "B: [2, 0]" in hand.text()
    hand.keys("Control+y")
    assert "B: [1.5, 0.5]" in hand.text()


def test_a_drag_is_broken_off_by_escape_and_nothing_has_changed(hand):
    (hand.folder / "beam.yaml").write_text("points: {A: [0, 0], B: [2, 0]}\nmembers: {beam: A B}\nsupports: {A: fixed}\nloads: [5 N at B down]\n")
    hand.open("beam.yaml")
    hand.press(2, 0)
    mouse = hand.page.mouse
    mouse.move(*hand.spot(2, 0))
    mouse.down()
    mouse.move(*hand.spot(1, 1), steps=5)
    hand.page.wait_for_timeout(400)
    hand.settle()
    assert hand.page.locator(".says").inner_text()
    hand.keys("Escape")
    mouse.up()
    hand.settle()

    assert "B: [2, 0]" in hand.text()
    assert not hand.state("history")["done"]
    assert [p["at"] for p in hand.state("drawn")["points"]] == [[0, 0], [2, 0]], "what was drawn on the way is gone as well"


def test_a_drag_that_ends_where_it_began_changes_nothing(hand):
    (hand.folder / "beam.yaml").write_text("points: {A: [0, 0], B: [2, 0]}\nmembers: {beam: A B}\nsupports: {A: fixed}\nloads: [5 N at B down]\n")
    hand.open("beam.yaml")
    hand.press(2, 0)
    mouse = hand.page.mouse
    mouse.move(*hand.spot(2, 0))
    mouse.down()
    mouse.move(*hand.spot(1, 1), steps=5)
    hand.page.wait_for_timeout(400)
    hand.settle()
    mouse.move(*hand.spot(2, 0), steps=5)
    mouse.up()
    hand.settle()

    assert not hand.state("history")["done"]
    assert [p["at"] for p in hand.state("drawn")["points"]] == [[0, 0], [2, 0]]


def test_the_text_and_the_drawing_are_one_document(hand):
    (hand.folder / "beam.yaml").write_text("points: {A: [0, 0], B: [2, 0]}\nmembers: {beam: A B}\nsupports: {A: fixed}\nloads: [5 N at B down]\n")
    hand.open("beam.yaml").keys("Alt+s")
    area = hand.page.locator("#script textarea")
    area.fill(hand.text().replace("5 N at B down", "5 N at Q down"))
    hand.settle()

    assert hand.page.locator("#script mark.error").inner_text() == "Q"
    assert hand.page.locator("#figure").count() == 1, "the last sound drawing stays"

    area.fill(hand.text().replace("at Q", "at B"))
    hand.settle()
    assert hand.page.locator("#script mark.error").count() == 0


def test_what_is_touched_says_what_it_is_and_its_phrase_is_typed_over(hand):
    (hand.folder / "beam.yaml").write_text("points: {A: [0, 0], B: [2, 0]}\nmembers: {beam: A B}\nsupports: {A: fixed}\nloads: [5 N at B down]\n")
    hand.open("beam.yaml")
    hand.page.locator('.handle[data-id="load 1"]').focus()
    hand.keys("Enter")

    assert "5\u202fN" in hand.page.locator(".says").inner_text()
    hand.over("7 N at B down")
    assert "loads: [7 N at B down]" in hand.text()


def test_a_phrase_that_cannot_be_read_is_told_while_the_drawing_stays(hand):
    (hand.folder / "beam.yaml").write_text("points: {A: [0, 0], B: [2, 0]}\nmembers: {beam: A B}\nsupports: {A: fixed}\nloads: [5 N at B down]\n")
    hand.open("beam.yaml")
    before = hand.text()
    hand.page.locator('.handle[data-id="load 1"]').focus()
    hand.keys("Enter")
    hand.over("at at at")

    assert hand.text() == before and hand.page.input_value("#line") == "at at at"
    assert hand.page.locator("#amiss").inner_text()
    assert hand.page.locator("#figure").count() == 1
    hand.over("6 N at B down")
    assert hand.text() == before.replace("5 N", "6 N") and not hand.page.locator("#amiss").inner_text()


def test_copy_makes_the_same_again_on_points_of_its_own(hand):
    (hand.folder / "two.yaml").write_text("points: {A: [0, 0], B: [2, 0]}\nmembers: {beam: A B}\nsupports: {A: fixed}\nloads: [5 N at B down]\n")
    hand.open("two.yaml")
    hand.page.locator('.handle[data-id="part beam"]').focus()
    hand.keys("Enter")
    hand.page.locator('.handle[data-id="part beam"]').focus()
    hand.keys("Control+c", "Control+v")

    problem = read_text(hand.text()).problem
    assert [len(p.points) for p in problem.parts] == [2, 2]
    assert len(problem.points) == 4


def test_a_letter_is_varied_live_and_the_whole_run_is_one_step(hand):
    text = "letters: {P: 50 N, a: 2 m}\npoints: {A: [0, 0], B: [a, 0]}\nmembers: {beam: A B}\nsupports: {A: fixed}\nloads: [P at B down]\nfind: [A couple]\n"
    (hand.folder / "letters.yaml").write_text(text)
    hand.open("letters.yaml")
    slide = hand.page.locator(".letters input").first
    for value in ("60", "70", "80"):
        slide.evaluate("(e, v) => { e.value = v; e.dispatchEvent(new Event('input', {bubbles: true})); }", value)
        hand.settle()

    assert "P: 80 N" in hand.text()
    assert any("160.0 N·m" in a for a in hand.answers()), "the couple at a built-in end is load times length"
    hand.keys("Control+z")
    assert hand.text() == text


def test_a_structure_that_moves_says_so_and_moves_when_asked(hand):
    (hand.folder / "loose.yaml").write_text("points: {A: [0, 0], B: [2, 0]}\nmembers: {beam: A B}\nsupports: {A: pin}\nloads: [5 N at B down]\n")
    hand.open("loose.yaml")
    ask = hand.page.get_by_role("button", name="Let it move")
    assert "move" in hand.page.locator(".says").inner_text()

    ask.click()
    hand.settle()
    edge = hand.page.locator("#figure path.edge").first
    seen = set()
    for _ in range(6):
        hand.page.wait_for_timeout(150)
        seen.add(edge.get_attribute("d"))
    assert len(seen) > 2


def test_who_wants_no_motion_is_shown_none(chromium, tmp_path):
    (tmp_path / "loose.yaml").write_text("points: {A: [0, 0], B: [2, 0]}\nmembers: {beam: A B}\nsupports: {A: pin}\nloads: [5 N at B down]\n")
    context = chromium.new_context(viewport={"width": 1280, "height": 800}, reduced_motion="reduce")
    with served(tmp_path) as address:
        hand = Hand(context.new_page(), address, tmp_path).open("loose.yaml")
        hand.page.get_by_role("button", name="Let it move").click()
        hand.settle()
        edge = hand.page.locator("#figure path.edge").first
        first = edge.get_attribute("d")
        hand.page.wait_for_timeout(500)

        assert edge.get_attribute("d") == first
        assert hand.page.locator("#figure path.ghost-edge").count() == 1, "the displaced position is drawn instead"
        context.close()


def test_an_arrow_and_a_symbol_are_touched_where_they_are_drawn(hand):
    (hand.folder / "beam.yaml").write_text("points: {A: [0, 0], B: [2, 0], C: [1, 0]}\nmembers: {beam: A C B}\nsupports: {A: pin, B: roller}\nloads: [5 N at C down, 8 N m clockwise on beam]\n")
    hand.open("beam.yaml")
    arrow = hand.page.locator("#figure [data-action=load1] path").first.bounding_box()
    hand.page.mouse.click(arrow["x"] + arrow["width"] / 2, arrow["y"] + 4)
    hand.settle()
    assert hand.state("touched") == ["load 1"]

    ground = hand.page.locator("#figure .support[data-owner=B] .ground").bounding_box()
    hand.page.mouse.click(ground["x"] + ground["width"] / 2, ground["y"])
    hand.settle()
    assert hand.state("touched") == ["connection B"]

    assert hand.page.locator('.handle[data-id="load 2"]').count() == 1, "a couple stands at no point and can be touched all the same"


def test_a_pulley_frame_is_drawn_with_the_pointer(hand):
    hand.empty("hoist")
    hand.stroke((0, 0), (0, 2.1)).say("A B")
    hand.stroke((0, 1.5), (1.6, 1.5)).say("C D")
    hand.stroke((0, 0.5), (0.8, 1.5)).say("E-F")
    hand.press(0, 0).say("fixed")
    hand.press(1.6, 1.5).say("1 at D")
    hand.over("0.2 at D")
    hand.press(1.8, 0.5).say("block: at")
    hand.keys("Escape").stroke((0, 2.1), (1.6, 1.5), (1.8, 0.5)).say("over disc")
    hand.keys("Escape").press(1.8, 0.5)
    hand.page.locator('.handle[data-id="part block"]').focus()
    hand.keys("Enter").say("weight of block")
    hand.over("weight of block 300 N")

    text = "\n".join(f"{k}: {{{', '.join(v)}}}" for k, v in {
        "points": ["O: [0, 0]", "B: [0, 1.5]", "C: [1.6, 1.5]", "K: [1.8, 0.5]", "W: [0, 2.1]", "G: [0, 0.5]", "H: [0.8, 1.5]"], "members": ["post: O G B W", "beam: B H C"],
        "discs": ["wheel: 0.2 at C"], "blocks": ["sack: at K"], "cords": ["T: W over wheel to sack"], "supports": ["O: fixed"]}.items())
    assert numbers(hand.saved()) == numbers(text + "\nlinks: [G-H]\nloads: [weight of sack 300 N]\n")


CROSSED = "points: {A: [0, 0], B: [4, 2], C: [0, 2], D: [4, 0]}\nmembers: {AB: A B, CD: C D}\nsupports: {A: pin, D: pin}\nloads: [5 N at B down]\n"


def test_a_press_where_two_members_cross_offers_a_pin_there(hand):
    (hand.folder / "brace.yaml").write_text(CROSSED)
    hand.open("brace.yaml").press(2, 1)
    hand.say("pin AB and CD here")
    assert "E: [2, 1]" in hand.text() and "AB: A E B" in hand.text() and "CD: C E D" in hand.text()
    assert hand.state("touched") == ["point E"]
    hand.page.focus("#sheet")
    hand.keys("Control+z")
    assert hand.text() == CROSSED, "one step"

    hand.keys("Escape").press(1, 0.5)
    assert hand.state("touched") == ["part AB"]
    assert not hand.page.locator(".sayings", has_text="pin AB").count(), "away from the crossing it is not offered"


def test_two_members_that_are_touched_by_keys_are_offered_a_pin(hand):
    (hand.folder / "brace.yaml").write_text(CROSSED)
    hand.open("brace.yaml")
    hand.page.locator('.handle[data-id="part AB"]').focus()
    hand.keys("Enter")
    hand.page.locator('.handle[data-id="part CD"]').focus()
    hand.keys("Shift+Enter")
    offers = hand.page.locator(".sayings .phrase").all_inner_texts()
    assert offers[0] == "pin AB and CD here, at [2, 1]"

    hand.keys("1")
    assert "AB: A E B" in hand.text() and "CD: C E D" in hand.text()
