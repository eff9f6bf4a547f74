"""What the page is told of a text agrees with what the command says of the file."""

import re
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

import unpin
from unpin import bundled
from unpin.workbench.hand import hand
from unpin.workbench.looking import look

EXAMPLES = [bundled.path_of(n) for n in bundled.names()]


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda p: p.stem)
def test_answers_are_those_of_the_solution_that_the_command_derives_and_proves(path):
    text = path.read_text("utf-8")
    solved = unpin.as_text(unpin.explain(unpin.solve(unpin.loads(text)), drawn=False))

    seen = look(text)

    lines = [line["plain"] for a in seen["answers"] for line in a["lines"]]
    assert seen["verdict"]["solvable"] and lines
    assert [x for x in lines if x not in solved] == []


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda p: p.stem)
def test_every_thing_stands_where_the_text_says_it(path):
    text = path.read_text("utf-8")

    seen = look(text)

    for thing in seen["things"]:
        assert thing["section"] and thing["says"], thing["id"]
        start, end = thing["span"]
        assert 0 <= start < end <= len(text)
        assert text[start:end].strip("\"'") == thing["phrase"] or thing["phrase"] in text[start:end], thing
    assert len({t["id"] for t in seen["things"]}) == len(seen["things"])


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda p: p.stem)
def test_points_of_the_figure_stand_where_its_scale_puts_them(path):
    """A point that is a hinge is drawn as a circle about its place."""
    text = path.read_text("utf-8")

    seen = look(text, scale=40)

    figure = seen["figure"]
    circles = {(round(float(x), 1), round(float(y), 1)) for x, y in re.findall(r'<circle[^>]* cx="([-\d.]+)" cy="([-\d.]+)"', figure["svg"])}
    assert figure["scale"] == 40
    placed = {(round(40 * p["at"][0], 1), round(-40 * p["at"][1], 1)) for p in seen["points"]}
    assert circles & placed
    left, top = figure["origin"]
    assert all(left <= x <= left + figure["size"][0] and top <= y <= top + figure["size"][1] for x, y in circles & placed)


def test_a_structure_that_moves_is_told_with_its_motion():
    seen = look("points: {A: [0, 0], B: [2, 0]}\nmembers: {bar: A B}\nsupports: {A: pin}\nloads: [10 N at B down]\nfind: [A]", want=("figure", "motion"))

    assert seen["verdict"]["kind"] == "moves" and seen["verdict"]["freedoms"] == 1
    (twist,) = seen["motion"]["twists"].values()
    assert twist[2] != 0
    assert seen["answers"] == []


UNFINISHED = {
    "nothing": "",
    "a title": "title: x",
    "points alone": "points: {A: [0, 0], B: [1, 0]}",
    "no supports": "points: {A: [0, 0], B: [1, 0]}\nmembers: {bar: A B}",
    "half a phrase": "points: {A: [0, 0], B: [1, 0]}\nmembers: {bar: A B}\nsupports: {A: rol}\nloads: [3 at B dow]",
    "broken yaml": "points: {A: [0, 0], B: [1, 0]\nmembers: {bar: A B}",
    "one point twice": "points: {A: [0, 0], B: [0, 0]}\nmembers: {bar: A B}\nsupports: {A: pin}",
}


@pytest.mark.parametrize("text", UNFINISHED.values(), ids=UNFINISHED.keys())
def test_a_text_that_is_not_finished_is_looked_at_all_the_same(text):
    seen = look(text)

    assert seen["ok"]
    assert all(d["sentence"] and (d["span"] is None or 0 <= d["span"][0] <= d["span"][1] <= len(text) + 1) for d in seen["diagnostics"])


def test_points_are_there_before_anything_is_made_of_them():
    seen = look(UNFINISHED["points alone"])

    assert [p["name"] for p in seen["points"]] == ["A", "B"]


TEXTS = [Path(p).read_text("utf-8") for p in EXAMPLES]


@given(st.sampled_from(TEXTS), st.data())
def test_no_text_that_a_person_has_half_typed_breaks_the_desk(text, data):
    """Lines left out, cut short, doubled or with a stray sign in them."""
    lines = text.splitlines()
    for _ in range(data.draw(st.integers(1, 3))):
        k = data.draw(st.integers(0, len(lines) - 1))
        do = data.draw(st.sampled_from(["drop", "cut", "double", "sign"]))
        if do == "drop" and len(lines) > 1:
            del lines[k]
        elif do == "cut":
            lines[k] = lines[k][: data.draw(st.integers(0, len(lines[k])))]
        elif do == "double":
            lines.insert(k, lines[k])
        else:
            at = data.draw(st.integers(0, len(lines[k])))
            lines[k] = lines[k][:at] + data.draw(st.sampled_from(list(":,{}[]-'\"#<&0 A"))) + lines[k][at:]

    seen = look("\n".join(lines), want=("figure", "apart", "motion", "final"))

    assert seen["ok"]


def test_what_a_stranger_typed_is_never_markup():
    text = ('title: "<script>alert(1)</script>"\npoints: {A: [0, 0], B: [2, 0]}\nmembers: {bar: A B}\nsupports: {A: fixed}\n'
            'loads: [\'<img src=x onerror=alert(1)> = 3 N at B down\', 10 N at B down]\nfind: ["<b>A</b>", A]')

    seen = look(text)

    shown = [seen["figure"]["svg"], *(s["html"] for s in (seen["verdict"] or {}).get("sentences", [])), *(a["asked"] for a in seen["answers"])]
    assert not any("<script" in s or "<img" in s or "<b>A" in s for s in shown)


def test_the_desk_in_spanish_has_decimal_commas_in_figures_answers_and_sums():
    text = bundled.path_of("theatre-hoist").read_text("utf-8")

    seen = look(text, want=("figure", "final"), language="es")
    made = hand(text, ["forces along y on jib"], "es")

    shown = " ".join([seen["figure"]["svg"], seen["final"]["svg"], made["lesson"]])
    written = re.findall(r"[0-9][.,][0-9]+(?=\u202f?(?:kN|m)\b)", re.sub(r"<(?!/?(?:mn|tspan|text)\b)[^>]*>", "", shown))
    assert written
    assert [w for w in written if "." in w] == []


def test_the_desk_shows_names_and_senses_of_the_house_style_of_its_folder(desk):
    text = (desk.folder / "market-awning.yaml").read_text("utf-8")
    (desk.folder / "house.style").write_text('names: {link: S_AB}\ndecimal sign: comma\n')

    seen = desk.post("/look", text=text, name="market-awning.yaml").json()
    body = desk.post("/body", text=text, bodies=["arm"]).json()

    shown = [line["plain"] for a in seen["answers"] for line in a["lines"]]
    assert any(x.startswith("S_BD") for x in shown) and not any(x.startswith("F_BD") for x in shown)
    assert "S" in "".join(u["name"] for u in body["unknowns"])


def test_a_house_style_with_faults_does_not_take_the_figure_away(desk):
    (desk.folder / "house.style").write_text("colours: loud\n")

    assert desk.post("/look", text=(desk.folder / "market-awning.yaml").read_text("utf-8")).json()["drawn"]


def test_a_bar_that_nothing_holds_can_move_even_before_it_is_loaded():
    verdict = look("points: {A: [0, 0], B: [2, 0]}\nmembers: {bar: A B}")["verdict"]

    assert (verdict["kind"], verdict["freedoms"]) == ("moves", 3)
    assert "0 unknowns, 3 sums" in verdict["summary"]


def test_one_of_a_thing_is_said_in_the_singular():
    text = "points: {A: [0, 0], B: [2, 0]}\nmembers: {bar: A B, rod: A B}\nsupports: {A: roller}"

    seen = look(text)

    assert "1 unknowns" not in seen["verdict"]["summary"]
    assert "bar and rod meet" in next(t["says"] for t in seen["things"] if t["id"] == "point B")


def test_each_of_several_motions_is_told_and_drawn_in_turn():
    text = "points: {A: [0, 0], B: [1, 0], C: [2, 0], D: [3, 0]}\nmembers: {one: A B, two: B C, three: C D}\nsupports: {A: pin, D: pin}\nloads: [5 N at B down]\n"
    seen = [look(text, want=("figure", "motion"), freedom=k) for k in range(3)]
    count = seen[0]["verdict"]["freedoms"]

    assert count == 2
    assert seen[0]["motion"]["twists"] != seen[1]["motion"]["twists"]
    assert seen[0]["motion"]["svg"] != seen[1]["motion"]["svg"] and seen[1]["motion"]["told"].endswith("can move together.")
    assert seen[2]["motion"] == seen[0]["motion"]


LEVER = "points: {{A: [0, 0], B: [2, 0], C: [3, 0]}}\nmembers: {{beam: A B C}}\nsupports: {{A: {kind}, B: pin}}\nloads: [300 N at C down]\nfind: [A, B]\n"


def test_what_has_to_pull_is_told_beside_the_answers_in_the_words_of_the_solution():
    # 300 N with an arm of 1 m about B is held by 150 N with an arm of 2 m: downward on A. From moments, by hand.
    text = LEVER.format(kind="roller")
    (told,) = look(text)["notices"]
    solved = " ".join(unpin.as_text(unpin.explain(unpin.solve(unpin.loads(text)), drawn=False)).split())
    assert told in solved and "The roller at A has to pull" in told
    assert "150.0" in look(text)["answers"][0]["lines"][0]["plain"]

    (opened,) = look(LEVER.format(kind="contact pushes up"))["notices"]
    assert "150.0" in opened and "lifts off" in opened

    hung = look("points: {A: [0, 0], B: [2, 0], D: [2, 1]}\nmembers: {beam: A B}\nsupports: {A: pin, D: pin}\ncords: {T: B to D}\nloads: [300 N at B up]\nfind: [A]\n")
    assert hung["notices"][0].startswith("T came out negative. A cord cannot push")
    assert look(LEVER.format(kind="roller").replace("C down", "C up"))["notices"] == []


CRANE = """points: {A: [0, 0], B: [1.6, 0], C: [2.4, 0], D: [0, 1.2], W: [-0.2, 0.15], K: [2.55, -0.9]}
members: {arm: A B C}
discs: {pulley: 0.15 m at C}
blocks: {sack: at K}
links: [B-D]
supports: {A: pin, D: pin}
cords: {T: W over pulley to sack}
loads: [mass 60 kg hangs at K]
"""


def test_links_and_cords_are_something_at_a_point():
    says = {t["name"]: t["says"] for t in look("points: {B: [0, 0], C: [1, 0], F: [2, 0]}\nlinks: [B-C]\n")["things"] if t["what"] == "point"}
    crane = {t["name"]: t["says"] for t in look(CRANE)["things"] if t["what"] == "point"}

    assert says["C"] == "C, a point of BC." and says["F"] == "Point F; nothing is there yet."
    assert crane["W"] == "W, a point of T." and crane["B"] == "B, where arm and BD meet."


def test_discs_and_blocks_are_called_what_they_are():
    seen = look(CRANE)

    assert {"disc pulley", "block sack", "member arm"} <= {b["title"] for b in seen["bodies"]}
    assert not [t for t in seen["things"] if "member sack" in t["says"] or "member pulley" in t["says"]]


@pytest.mark.parametrize(("supports", "english", "spanish"), [
    ("{}", "AB: 3 sums, 0 unknowns on it.", "AB: 3 ecuaciones, 0 incógnitas en él."),
    ("{A: roller}", "AB: 3 sums, one unknown on it.", "AB: 3 ecuaciones, una incógnita en él."),
    ("{A: pin}", "AB: 3 sums, 2 unknowns on it.", "AB: 3 ecuaciones, 2 incógnitas en él."),
])
def test_what_a_part_carries_is_counted_in_the_right_number(supports, english, spanish):
    text = f"points: {{A: [0, 0], C: [1, 0], B: [2, 0]}}\nmembers: {{AB: A C B}}\nsupports: {supports}\nloads: [5 N at C down, 1 N at B up]\n"
    for language, wanted in (("en", english), ("es", spanish)):
        part = next(t for t in look(text, language=language)["things"] if t["id"] == "part AB")
        assert wanted in part["says"].replace("\u00a0", " ")
