"""Acts of the page are changes of the text, and everything that can be drawn can be said by them."""

import pytest
from asking import Desk

import unpin
from unpin.read.reader import read_text
from unpin.workbench.directions import directions
from unpin.workbench.editing import edited, free_point
from unpin.workbench.folder import Refused
from unpin.workbench.looking import look
from unpin.workbench.readings import completions, read, readings
from unpin.workbench.sayings import sayings


def test_a_frame_is_made_from_nothing_by_acts_alone(tmp_path):
    """A frame with a link, a roller and a sloped load, as a hand would make it; the numbers are those of the file."""
    text = "title: Shop sign\n"
    for at in (["0", "0"], ["0", "3"], ["0", "2.4"], ["0", "1.2"], ["1.6", "2.4"], ["2.4", "2.4"]):
        text = edited(text, [{"do": "point", "name": None, "at": at}])["text"]
    a, b, c, d, e, f = (p["name"] for p in look(text)["points"])
    for act in ({"section": "members", "name": "post", "phrase": f"{b} {c} {d} {a}"}, {"section": "members", "name": "arm", "phrase": f"{c} {e} {f}"},
                {"section": "links", "name": None, "phrase": f"{d}-{e}"}, {"section": "supports", "name": b, "phrase": "pin"},
                {"section": "supports", "name": a, "phrase": "roller pushes right"}, {"section": "loads", "name": None, "phrase": f"300 N at {f} right 3 down 4"},
                {"section": "find", "name": None, "phrase": f"{d}-{e}"}):
        text = edited(text, [{"do": "say", **act}])["text"]

    (answer,) = look(text)["answers"]

    values = {a["name"]: a["value"] for a in unpin.as_data(unpin.solve(unpin.loads(text)))["answers"]}
    assert answer["lines"][0]["plain"].startswith("F_") and len(values) == 1
    assert f"{abs(next(iter(values.values()))):.0f}" in answer["lines"][0]["plain"]


def test_several_acts_are_one_change_or_none():
    text = "points: {A: [0, 0], B: [2, 0]}\nmembers: {bar: A B}"

    with pytest.raises(Refused) as refused:
        edited(text, [{"do": "point", "name": "A", "at": ["1", "1"]}, {"do": "rename", "id": "point Q", "to": "R"}])

    assert refused.value.code == "edit" and "Q" in refused.value.more["sentence"]


def test_what_is_dropped_takes_along_what_cannot_be_without_it():
    text = "points: {A: [0, 0], B: [2, 0], C: [1, 0]}  # three\nmembers: {bar: A C B}\nsupports: {A: fixed}\nloads: [3 N at B down, 2 N at C down]"

    made = edited(text, [{"do": "drop", "id": "point B"}])["text"]

    assert "3 N" not in made and "2 N at C down" not in made.replace("2 N at C down", "") and "# three" in made


def test_a_phrase_is_changed_where_it_stands_and_remarks_stay():
    text = "points:\n  A: [0, 0]  # the wall\n  B: [2, 0]\nmembers: {bar: A B}\nsupports: {A: fixed}\nloads: [3 N at B down]\n"
    thing = next(t for t in look(text)["things"] if t["what"] == "load")

    made = edited(text, [{"do": "rephrase", "span": thing["span"], "phrase": "5 N at B up"}])

    assert made["text"] == text.replace("3 N at B down", "5 N at B up")
    assert made["made"] == [thing["id"]]


def test_a_point_is_typed_over_as_the_file_writes_it():
    text = "points:\n  A: [0, 0]\n  B: [2, 0]\nmembers: {bar: A B}"
    span = look(text)["points"][1]["span"]

    assert "B: [2.5, 1]" in edited(text, [{"do": "rephrase", "span": span, "phrase": "[2.5, 1]"}])["text"]
    assert "B: A right 3" in edited(text, [{"do": "rephrase", "span": span, "phrase": "A right 3"}])["text"]


def test_new_points_take_capitals_that_are_free():
    assert free_point("points: {A: [0, 0], C: [1, 0]}\nmembers: {B: A C}") == "D"


@pytest.mark.parametrize("line_ends", ["\n", "\r\n"])
def test_places_hold_in_a_file_of_another_machine(line_ends):
    text = "\ufeff" + line_ends.join(["points: {A: [0, 0], B: [2, 0]}", "members: {bar: A B}", "supports: {A: fixed}", "loads: [3 N at B down]", ""])
    thing = next(t for t in look(text)["things"] if t["what"] == "load")

    assert text[slice(*thing["span"])] == "3 N at B down"
    assert edited(text, [{"do": "rephrase", "span": thing["span"], "phrase": "4 N at B up"}])["text"] == text.replace("3 N at B down", "4 N at B up")


def test_a_stroke_between_two_points_can_be_a_member_a_link_or_a_cord():
    text = "points: {A: [0, 0], B: [2, 0]}"

    offered = sayings(text, ["point A", "point B"])

    assert [s["section"] for s in offered[:2]] == ["members", "links"] and "cords" in {s["section"] for s in offered}


def test_a_point_of_a_member_can_be_held_and_loaded_and_blanks_are_told():
    text = "points: {A: [0, 0], B: [2, 0]}\nmembers: {bar: A B}"

    offered = sayings(text, ["point A"])

    assert {"supports", "loads"} <= {s["section"] for s in offered}
    load = next(s for s in offered if s["section"] == "loads")
    assert all(0 <= a < b <= len(load["phrase"]) for a, b in load["blanks"]) and load["blanks"]


def test_every_offer_can_be_taken():
    text = "points: {A: [0, 0], B: [2, 0], C: [2, 1]}\nmembers: {bar: A B}\nlinks: [B-C]\nsupports: {C: pin}"
    for touched in (["point A"], ["point B"], ["point A", "point C"], ["part bar"], ["point B", "part bar"]):
        for offer in sayings(text, touched):
            after = edited(text, [{"do": "say", **{k: offer[k] for k in ("section", "name", "phrase")}}])["text"]

            assert not [d for d in look(after)["diagnostics"] if d["severity"] == "error"], (touched, offer)


@pytest.mark.parametrize("line, section, name, phrase", [
    ("B: right 2 of A", None, None, None),
    ("C: A right 2 up 1", "points", "C", "A right 2 up 1"),
    ("C: [2, 1]", "points", "C", "[2, 1]"),
    ("arm: A B", "members", "arm", "A B"),
    ("20 N at B down", "loads", None, "20 N at B down"),
    ("supports: A: roller pushes right", "supports", "A", "roller pushes right"),
    ("A: fixed", "supports", "A", "fixed"),
    ("title: A shelf", "title", None, "A shelf"),
    ("reaction at A", "find", None, "reaction at A"),
])
def test_a_typed_line_finds_the_section_in_which_it_reads(line, section, name, phrase):
    text = "points: {A: [0, 0], B: [2, 0]}\nmembers: {bar: A B}"

    found = readings(text, line)

    if section is None:
        assert found == []
    else:
        assert (section, name, phrase) in [(f["section"], f["name"], f["phrase"]) for f in found]


def test_names_and_words_are_completed():
    text = "points: {A: [0, 0], Brace: [2, 0]}\nmembers: {bar: A Brace}"

    inserts = {o["means"] for o in completions(text, "loads", "10 N at Br", 10)}

    assert "Brace" in inserts


def test_the_desk_answers_over_http(tmp_path):
    desk = Desk(tmp_path)
    text = "points: {A: [0, 0], B: [2, 0]}"

    reply = desk.post("/edit", text=text, acts=[{"do": "say", "section": "members", "name": None, "phrase": "A B"}]).json()
    refused = desk.post("/edit", text=text, acts=[{"do": "fly"}])

    assert reply["ok"] and "members" in reply["text"] and reply["made"] == ["part AB"]
    assert refused.status_code == 400 and refused.json()["message"]


def test_a_phrase_that_is_meant_sound_is_refused_with_its_reason_where_it_would_break_the_file():
    text = "points: {A: [0, 0], B: [2, 0]}\nmembers: {bar: A B}\nsupports: {A: fixed}\nloads: [3 N at B down]\n"
    load = next(t for t in look(text)["things"] if t["what"] == "load")

    with pytest.raises(Refused) as told:
        edited(text, [{"do": "rephrase", "span": load["span"], "phrase": "3 N at Q down", "sound": True}])

    assert '"Q"' in told.value.more["sentence"]


def test_a_chain_is_offered_once_however_its_points_are_joined():
    text = "points: {A: [0, 0], B: [2, 0], C: [2, 1], D: [0, 1]}\nmembers: {bar: A B}\nlinks: [A-D]"
    for touched in (["point B", "point D"], ["point C", "point D"]):
        links = [s["phrase"] for s in sayings(text, touched) if s["section"] == "links"]

        assert len(links) == len({p.replace("-", " ") for p in links}) == 1


def test_a_phrase_of_one_word_or_of_no_points_is_no_member():
    text = "points: {A: [0, 0], B: [2, 0]}"

    assert readings(text, "A: pin")[0]["section"] == "supports"
    assert not {"members", "links"} & {r["section"] for line in ("A: pin", "B: fixed", "A: smooth floor") for r in readings(text, line)}


def test_a_point_of_a_row_that_is_placed_anew_leaves_the_row_and_the_others_stay():
    rows = {"every 0.5 right from A": ["B: A right 0.5", "C: [2, 1]", "D: A right 1.5"], "evenly from A to G": ["B: 1/4 of A G", "C: [2, 1]", "D: 3/4 of A G"],
            "every 300 mm at 30 deg from A": ["B: 300 mm from A at 30 deg", "C: [2, 1]", "D: 900 mm from A at 30 deg"]}
    for row, lines in rows.items():
        text = f"points:\n  A: [0, 0]\n  G: [4, 0]\n  B C D: {row}  # three lamps\nmembers: {{beam: A G, rail: B C D}}\nsupports: {{A: fixed, B: fixed}}\n"
        typed = read(text, "C: [2, 1]")
        assert not typed["faults"] and [s["section"] for s in typed["sayings"]] == ["points"]
        (saying,) = typed["sayings"]
        after = edited(text, [{"do": "say", **{k: saying[k] for k in ("section", "name", "phrase")}}])["text"]

        assert [line.strip() for line in after.splitlines()[3:6]] == lines
        assert read_text(after).problem.coordinates["D"] == read_text(text).problem.coordinates["D"]
        assert edited(text, [{"do": "point", "name": "C", "at": ["2", "1"]}])["text"] == after


def test_a_place_that_is_made_from_a_point_that_is_not_there_is_not_offered():
    known = "points: {A: [0, 0], B: [2, 0]}\nmembers: {beam: A B}\n"
    for text in ("", "points: {A: [0, 0]}\n", known, known + "loads: [3 N at Q down]\n"):
        for line in ("Q right 2", "E: Q right 2", "1/2 of A Q", "A: Q up 1"):
            found = read(text, line)
            assert not found["sayings"], (text, line)
            assert '"Q"' in found["faults"][0]["sentence"] or not text

    assert [s["name"] for s in read(known, "A right 2")["sayings"]] == ["C"]


def test_a_member_that_is_called_by_its_points_keeps_to_that_when_one_is_renamed():
    text = "points: {A: [0, 0], B: [2, 0], C: [1, 1]}\nmembers: {AB: A B, prop: A C, BC: B C}\nsupports: {A: fixed}\nloads: [weight of AB 10 N]\n"

    after = edited(text, [{"do": "rename", "id": "point B", "to": "Q"}])["text"]
    assert after == "points: {A: [0, 0], Q: [2, 0], C: [1, 1]}\nmembers: {AQ: A Q, prop: A C, QC: Q C}\nsupports: {A: fixed}\nloads: [weight of AQ 10 N]\n"

    led = "points: {A: [0, 0], B: [2, 0], C: [1, 0]}\nmembers: {AB: A C B}\n"
    assert "{AQ: A C Q}" in edited(led, [{"do": "rename", "id": "point B", "to": "Q"}])["text"]
    assert "{AB: A Q B}" in edited(led, [{"do": "rename", "id": "point C", "to": "Q"}])["text"]

    taken = text.replace("prop", "AQ")
    assert "{AB: A Q, AQ: A C, QC: Q C}" in edited(taken, [{"do": "rename", "id": "point B", "to": "Q"}])["text"]


def test_each_force_on_a_member_and_an_unknown_load_can_be_asked():
    text = ("letters: {P: unknown}\npoints: {O: [0, 0], A: [0, 3], C: [0, 2.4], B: [0, 1.2], D: C right 1.6, E: C right 2.4}\nmembers: {post: A C B O, arm: C D E}\n"
            "links: [B-D]\nsupports: {O: pin, A: roller pushes right}\nloads: [P at E right 3 down 4, 20 N at D down]\ngiven: [A 100 N]\n")

    def asked(touched):
        return [s["phrase"] for s in sayings(text, [touched]) if s["section"] == "find"]

    assert asked("part arm") == ["C on arm", "B-D"]
    assert asked("part post") == ["O", "C on post", "B-D"]
    assert asked("load P") == ["P"] and asked("load 2") == []
    assert asked("point C")[:2] == ["C on post", "C on arm"]
    for saying in sayings(text, ["part arm"]):
        if saying["section"] == "find":
            assert read_text(edited(text, [{"do": "say", **{k: saying[k] for k in ("section", "name", "phrase")}}])["text"]).sound
    put = text + "find: [O, C on arm]\n"
    (back,) = [s for s in sayings(put, ["part arm"]) if s["phrase"] == "C on arm"]
    assert back["drops"] == "2"
    assert edited(put, [{"do": "drop", "section": "find", "key": back["drops"]}])["text"] == text + "find: [O]\n"


def test_an_act_brings_what_is_then_to_be_seen_in_the_same_reply(desk):
    text = desk.get("/file", name="market-awning.yaml").json()["text"]
    wanted = {"scale": 60, "want": ["figure"], "freedom": 0}
    act = {"do": "set", "section": "title", "value": "Another awning"}

    reply = desk.post("/edit", text=text, acts=[act], look=wanted).json()
    alone = desk.post("/edit", text=text, acts=[act]).json()

    assert reply["look"] == desk.post("/look", text=reply["text"], **wanted).json()
    assert reply["look"]["title"] == "Another awning"
    assert alone == {k: v for k, v in reply.items() if k != "look"}


def test_an_act_that_is_refused_brings_nothing_to_be_seen(desk):
    reply = desk.post("/edit", text="points: {A: [0, 0]}\n", acts=[{"do": "rename", "id": "point Q", "to": "R"}], look={"scale": 60})

    assert reply.status_code == 422
    assert "look" not in reply.json()


def test_two_points_exchange_their_names_wherever_they_stand():
    text = "points: {A: [0, 0], B: A right 2, C: [1, 0]}\nmembers: {AB: A C B}\nsupports: {A: fixed}\nloads: [3 N at B down]\n"
    (saying,) = [s for s in read(text, "A", ["point B"])["sayings"] if s.get("renames")]
    assert (saying["renames"], saying["name"], saying["phrase"]) == ("swap", "B", "A")

    after = edited(text, [{"do": "rename", "id": "point B", "to": "A", "swap": True}])
    assert after["text"] == "points: {B: [0, 0], A: B right 2, C: [1, 0]}\nmembers: {BA: B C A}\nsupports: {B: fixed}\nloads: [3 N at A down]\n"
    assert after["made"] == ["point A"]


def test_a_word_is_a_new_name_only_of_one_thing_that_has_a_name_and_only_where_it_is_nothing_else():
    text = "points: {A: [0, 0], B: [2, 0]}\nmembers: {bar: A B}\nsupports: {A: fixed}\n"
    for line, touched, wanted in (("Q", ["point B"], "name"), ("post", ["part bar"], "name"), ("pin", ["point B"], None), ("Q", ["point A", "point B"], None),
                                  ("Q", [], None), ("Q", ["connection A"], None), ("B", ["part bar"], None), ("B", ["point B"], None), ("down", ["point B"], None)):
        assert next((s["renames"] for s in read(text, line, touched)["sayings"] if s.get("renames")), None) == wanted, (line, touched)


def test_a_support_says_each_direction_that_it_may_have():
    text = "points: {A: [0, 0], B: [2, 0]}\nmembers: {bar: A B}\nsupports: {A: pin, B: roller}\nloads: [mass 3 kg hangs at B, 3 N at B down]\n"

    assert [w["phrase"] for w in directions(text, "connection B")][:3] == ["roller pushes down", "roller pushes up", "roller pushes right"]
    assert [w["phrase"] for w in directions(text, "load 2", phrase="7 N at B down")][:2] == ["7 N at B up", "7 N at B right"]
    assert directions(text, "connection A") == directions(text, "load 1") == directions(text, "point B") == []


def test_of_a_weight_and_a_mass_of_the_same_size_one_is_offered():
    text = "points: {A: [0, 0], B: [2, 0]}\nmembers: {beam: A B}\nsupports: {A: fixed}\n"
    offered = [s["phrase"] for s in sayings(text, ["part beam"]) if "10 kg" in s["phrase"]]

    assert offered == ["weight of beam 10 kg"]


def test_a_line_that_is_well_said_is_told_what_is_missing_and_not_itself_once_more():
    text = "points: {C: [0, 0], W: [-2, 0]}\ndiscs: {pulley: 0.2 m at C}\nsupports: {C: pin}\n"
    (fault,) = read(text, "T: W over pulley to sack")["faults"]

    assert fault["hint"].startswith("say first what sack is")
    assert fault["example"] == ""


@pytest.mark.parametrize(("there", "sums", "then"), [
    ("route:\n  - a  # first\n  - b\n", ["a", "c", "d"], "route:\n  - a  # first\n  - c\n  - d\n"),
    ("route: [a, b, c]\n", ["a"], "route: [a]\n"),
    ("route: a\n", ["b"], "route: b\n"),
    ("route: [a, b]\n", [], ""),
    ("", [], ""),
])
def test_the_way_of_the_file_becomes_just_the_sums_that_are_said_and_keeps_its_remarks(there, sums, then):
    start = "points: {A: [0, 0]}\n"

    assert edited(start + there, [{"do": "route", "sums": sums}])["text"] == start + then
