"""A changed file keeps everything that was not meant: remarks, order, spacing, quotes and line ends."""

from fractions import Fraction

import pytest

from unpin.read import read_text
from unpin.read.edits import Edit, add, apply, change, dependants, inverse, lead_through, place, put, remove, rename
from unpin.read.edits.changes import written

FRAME = """\
# A frame for the second week.
title: "Frame: one"
points:
  O: [0,   0]      # the foot
  B: O up 1

  # the head of the post
  C: 'O up 2'
  D: C right 2
members: {post: O B C, arm: C D}
links: [B-D]
supports: {O: fixed}
loads:
  # wind
  - 3 N at D down   # gust
find: [O]
"""


def changed(revision, old=FRAME):
    """Lines that went and lines that came."""
    assert not revision.refused, revision.refused
    before, after = old.split("\n"), revision.text.split("\n")
    return [x for x in before if x not in after], [x for x in after if x not in before]


def codes(revision):
    assert revision.text == FRAME and not revision.edits
    return [d.code for d in revision.refused]


# Points.


def test_a_moved_point_keeps_its_spacing_and_its_remark():
    assert changed(place(FRAME, "O", (1, Fraction(1, 2)))) == (["  O: [0,   0]      # the foot"], ["  O: [1,   0.5]      # the foot"])


def test_a_construction_takes_the_place_of_coordinates_and_the_other_way_round():
    assert changed(place(FRAME, "C", (0, 2.25)))[1] == ["  C: [0, 2.25]"]
    assert changed(place(FRAME, "C", "O up 3"))[1] == ["  C: 'O up 3'"]
    text = FRAME.replace("B: O up 1\n", "B:\n    # two numbers\n    - 0\n    - 1\n")
    assert changed(place(text, "B", "O up 1"), text) == (["  B:", "    - 0", "    - 1"], ["  B: O up 1"])


def test_a_number_is_written_as_a_person_would():
    given = (0.1, -2.5, Fraction(1, 3), Fraction(7, 8), 12, Fraction(-1, 200), 1e-7, 1e21, "a/2")

    assert [written(n) for n in given] == ["0.1", "-2.5", "1/3", "0.875", "12", "-0.005", "0.0000001", "1" + "0" * 21, "a/2"]
    with pytest.raises(ValueError):
        written(float("nan"))


def test_a_point_of_a_row_does_not_leave_it_alone():
    text = FRAME.replace("  D: C right 2\n", "  D E: every 2 right from C\n").replace("C D}", "C D E}")

    assert [d.code for d in place(text, "D", (1, 2)).refused] == ["edit.in_row"]
    assert changed(change(text, "points", "D E", "every 3 right from C"), text)[1] == ["  D E: every 3 right from C"]


# Adding.


def test_a_new_entry_stands_last_in_its_section_in_the_style_of_the_section():
    assert changed(add(FRAME, "loads", "4 N at C right"))[1] == ["  - 4 N at C right"]
    assert changed(add(FRAME, "links", "O-D"))[1] == ["links: [B-D, O-D]"]
    assert changed(add(FRAME, "points", (3, 1), "E"))[1] == ["  E: [3, 1]"]
    assert "# gust\n  - 4 N at C right\nfind" in add(FRAME, "loads", "4 N at C right").text


def test_a_new_entry_may_stand_before_another():
    assert "  B: O up 1\n  K: O up 1.5\n\n  # the head of the post\n  C:" in add(FRAME, "points", "O up 1.5", "K", before="C").text
    assert "find: [B-D, O]" in add(FRAME, "find", "B-D", before=1).text


def test_a_section_that_was_not_there_stands_where_the_schema_has_it():
    made = add(FRAME, "letters", "3 N", "P")
    assert "title: \"Frame: one\"\nletters:\n  P: 3 N\npoints:" in made.text
    assert "fixed}\nloads" in made.text
    assert put(FRAME, "units", "m, kN").text.startswith('# A frame for the second week.\ntitle: "Frame: one"\nunits: m, kN\npoints:')
    assert put("points: {A: [0, 0]}", "title", "one", faulty=True).text == "title: one\npoints: {A: [0, 0]}"


def test_a_file_is_begun_from_nothing():
    text = ""
    for section, phrase, name in (("points", (0, 0), "A"), ("points", "A right 2", "B"), ("members", "A B", "beam"), ("supports", "fixed", "A"), ("loads", "3 N at B down", "")):
        revision = add(text, section, phrase, name, faulty=True)
        assert revision.made
        text = revision.text

    assert text == "points:\n  A: [0, 0]\n  B: A right 2\nmembers:\n  beam: A B\nsupports:\n  A: fixed\nloads:\n  - 3 N at B down\n"
    assert read_text(text).sound


def test_a_single_phrase_becomes_a_list_when_another_comes():
    text = FRAME.replace("find: [O]", "find: O   # the foot")

    assert add(text, "find", "B-D").text.endswith("find:\n  - O   # the foot\n  - B-D\n")


def test_an_empty_section_is_filled():
    text = FRAME.replace("find: [O]", "find:  # to be said")
    assert add(text, "find", "O").text.endswith("find:  # to be said\n  - O\n")
    assert add(FRAME.replace("[O]", "[ ]"), "find", "O").text.endswith("find: [O ]\n")


def test_quotes_come_where_yaml_needs_them_and_nowhere_else():
    assert add(FRAME, "loads", "3 N down at C, D").text.count("  - 3 N down at C, D\n") == 1
    flow = FRAME.replace("find: [O]", "find: [O]\nroute: [moments about O on post]")
    assert 'on post, "moments about C on pins B, C"]' in add(flow, "route", "moments about C on pins B, C", faulty=True).text
    for title, shown in (("a: b", '"a: b"'), ("#1", '"#1"'), ("@x", '"@x"'), ("a # b", '"a # b"'), ("plain, still", '"plain, still"'), ('say "hi"', '"say \\"hi\\""')):
        assert f"title: {shown}\n" in put(FRAME, "title", title).text
    plain = FRAME.replace('"Frame: one"', "Frame")
    for title, shown in (("a: b", '"a: b"'), ("plain, still", "plain, still"), ("it's", "it's"), ('"hi": x', "'\"hi\": x'"), ("- a", '"- a"'), ("on", "on")):
        assert f"title: {shown}\n" in put(plain, "title", title).text


def test_a_statement_in_a_folded_block_stays_one():
    text = FRAME.replace("points:", "text: >-\n    Find the foot.\n    It stands.\npoints:", 1)
    words = "Find everything that holds the frame: " * 8

    made = put(text, "text", words)

    assert "text: >-\n    Find everything" in made.text and read_text(made.text).problem.text == words.strip()
    assert max(len(line) for line in made.text.split("\n")) <= 120


def test_flow_lists_over_several_lines_keep_their_lines():
    text = FRAME.replace("{O: fixed}", "{\n  O: fixed  # built in\n}").replace("[O]", "[\n  O,\n  B-D,  # the link\n]")

    assert "supports: {\n  O: fixed,  # built in\n  D: roller\n}" in add(text, "supports", "roller", "D").text
    assert "find: [\n  O,\n  B-D,  # the link\n  C on arm,\n]" in add(text, "find", "C on arm").text
    assert "find: [\n  B-D,  # the link\n]" in remove(text, "find", 1).text


def test_a_member_is_led_through_a_further_point():
    assert "arm: C B D}" in lead_through(FRAME, "members", "arm", "B", "C").text
    assert "links: [O-B-D]" in lead_through(FRAME, "links", "BD", "O").text
    assert [d.code for d in lead_through(FRAME, "members", "arm", "B", "O").refused] == ["edit.not_in_chain"]
    assert [d.code for d in lead_through(FRAME, "supports", "O", "B").refused] == ["edit.no_chain"]
    strokes = FRAME.replace("post: O B C", "post: [O B, B C]")
    assert "post: [O B D, B C]" in lead_through(strokes, "members", "post", "D", "B", faulty=True).text


# Taking out.


def test_what_is_needed_is_not_taken_out_and_says_by_what():
    refused = remove(FRAME, "points", "D")

    assert codes(refused) == ["edit.needed_by"]
    assert [(u.section, u.key) for u in refused.dependants] == [("members", "arm"), ("links", "1"), ("loads", "1")]
    assert [u.text for u in refused.dependants] == ["C D", "B-D", "3 N at D down"]
    assert refused.dependants == dependants(FRAME, "points", "D")
    assert refused.dependants[0].place.line == 10


def test_what_cannot_be_without_it_goes_with_it_as_one_change():
    made = remove(FRAME, "points", "D", dependants=True)

    assert [(u.section, u.key) for u in made.dependants] == [("members", "arm"), ("links", "1"), ("loads", "1")]
    assert made.text == FRAME.replace("  D: C right 2\n", "").replace(", arm: C D", "").replace("links: [B-D]\n", "").replace("loads:\n", "").replace("  - 3 N at D down   # gust\n", "")
    assert apply(made.text, made.undo) == FRAME


def test_a_question_goes_with_the_link_it_asks_for():
    text = FRAME.replace("find: [O]", "find: [O, B-D]")

    assert [u.text for u in remove(text, "links", 1).dependants] == ["B-D"]
    assert "find: [O]" in remove(text, "links", 1, dependants=True).text


def test_an_empty_section_goes_with_its_last_entry():
    made = remove(FRAME, "find", 1)

    assert made.text == FRAME.replace("find: [O]\n", "")
    assert [a.kind for a in made.reading.problem.asked] == ["everything"]


def test_the_last_line_goes_without_a_line_end_left_behind():
    text = FRAME.rstrip()
    assert remove(text, "find", 1).text == text.removesuffix("\nfind: [O]")
    assert add(text, "loads", "4 N at C right").text == text.replace("# gust", "# gust\n  - 4 N at C right")


# Names.


def test_a_point_is_renamed_in_every_phrase_that_means_it_and_nowhere_else():
    text = FRAME.replace("find: [O]", "find: [O, B-D, BD, C on arm]\nroute: [moments about B on post, forces along B D on whole]")
    made = rename(text, "B", "Knee")

    assert made.text == (
        text.replace("  B: O", "  Knee: O").replace("O B C", "O Knee C").replace("[B-D]", "[Knee-D]")
        .replace("B-D, BD,", "Knee-D, KneeD,").replace("about B", "about Knee").replace("along B D", "along Knee D")
    )


def test_a_letter_and_a_point_of_one_name_are_told_apart():
    text = "letters: {a: 2, P: 3 N}\npoints: {A: [0, 0], a: A right 2a, P: a up a}\nmembers: {beam: A a P}\nsupports: {A: fixed}\nloads: [P at P down, 2P at a down]\nfind: [A]\n"

    assert [d.code for d in rename(text, "a", "b").refused] == ["edit.two_kinds"]
    assert rename(text, "a", "b", "letters").text == text.replace("{a: 2", "{b: 2").replace("2a,", "2b,").replace("up a}", "up b}")
    assert rename(text, "a", "b", "points").text == text.replace(" a: A", " b: A").replace("P: a up", "P: b up").replace("A a P", "A b P").replace("at a", "at b")
    assert rename(text, "P", "F", "letters").text == text.replace(", P: 3", ", F: 3").replace("[P at", "[F at").replace("2P", "2F")


def test_a_name_within_quotes_escapes_and_folded_lines_is_found():
    text = "points:\n  A: [0, 0]\n  \"B\": \"A right\\x20\\\n    2\"\n  C: 'B up\n    1'\n  'D''': >-\n    C\n    right 1\nmembers: {beam: \"A \\u0042 C D'\"}\nsupports: {A: fixed}\nloads:\n  - >-\n    3 N\n    at D'\n    down\n"
    assert read_text(text).sound

    made = rename(text, "B", "Q")
    assert made.text == text.replace('"B"', '"Q"').replace("'B up", "'Q up").replace("\\u0042", "Q")
    assert rename(text, "D'", "E").text == text.replace("D'''", "E'").replace("C D'", "C E").replace("at D'", "at E")
    assert rename(text, "C", "C'").text == text.replace("  C:", "  C':").replace("    C\n", "    C'\n").replace("0042 C", "0042 C'")


def test_a_member_given_as_a_list_of_strokes_is_followed():
    text = FRAME.replace("post: O B C", "post: [O B, 'B C']")
    assert "post: [O Knee, 'Knee C']" in rename(text, "B", "Knee").text


@pytest.mark.parametrize(("new", "code"), [("C", "read.name_taken"), ("post", "read.name_taken"), ("on", "read.name"), ("3x", "read.name"), ("a b", "read.name"), ("", "read.name")])
def test_a_name_that_cannot_be_is_refused(new, code):
    assert codes(rename(FRAME, "B", new)) == [code]


def test_a_name_that_would_be_taken_for_another_thing_is_refused():
    text = FRAME.replace("points:", "letters: {w: 3 N}\npoints:", 1).replace("3 N at D", "w at D")

    assert [d.code for d in rename(text, "w", "kN").refused] == ["read.letter_unit"]
    assert codes(rename(FRAME, "BD", "tie")) == ["edit.named_by_points"]
    assert codes(rename(FRAME, "Nobody", "X")) == ["edit.no_name"]


def test_where_the_statement_still_says_the_old_name_a_note_says_so():
    text = FRAME.replace('"Frame: one"', "The arm and its post")
    notes = rename(text, "arm", "boom").notes

    assert [(d.code, d.path, d.place.line) for d in notes] == [("edit.still_said", "title", 2)]
    assert not rename(text, "D", "E").notes


# The whole.


def test_a_change_that_would_break_a_sound_file_is_refused():
    assert codes(add(FRAME, "loads", "3 N at Z down")) == ["read.unknown_point"]
    assert codes(change(FRAME, "members", "arm", "C")) == ["read.one_point"]
    assert codes(put(FRAME, "figures", "12")) == ["read.figures"]
    assert codes(remove(FRAME, "loads", 7)) == ["edit.no_entry"]
    assert codes(add(FRAME, "loadz", "3 N")) == ["read.unknown_section"]
    assert codes(add(FRAME, "members", "O D")) == ["edit.wants_name"]
    assert codes(add(FRAME, "loads", "3 N at D up", "Q")) == ["edit.takes_no_name"]


def test_a_faulty_file_may_be_changed_where_the_fault_is_not():
    text = FRAME.replace("find: [O]", "find: [Z]")

    made = add(text, "loads", "4 N at C right")
    assert made.made and [d.code for d in made.reading.diagnostics] == ["read.unknown_asked"]
    assert change(text, "find", 1, "O").reading.sound
    assert add(text, "loads", "4 N at Y right", faulty=True).made


def test_a_file_whose_yaml_cannot_be_read_is_left_alone():
    revision = rename("points: {A: [0, 0]", "A", "B")

    assert revision.text == "points: {A: [0, 0]"
    assert [d.code for d in revision.refused] == ["edit.skeleton", "read.skeleton"]


@pytest.mark.parametrize("end", ["\r\n", "\r", "\n"])
@pytest.mark.parametrize("mark", ["", "\ufeff"])
def test_line_ends_and_the_byte_order_mark_stay(end, mark):
    text = mark + FRAME.replace("\n", end)

    for revision in (add(text, "loads", "4 N at C right"), add(text, "letters", "3 N", "P"), rename(text, "B", "Knee"), remove(text, "links", 1), place(text, "D", (2, 2))):
        assert revision.made
        assert revision.text.startswith(mark + "#") and revision.text.count("\n") == (0 if end == "\r" else revision.text.count(end))
        assert revision.text.count("\r") == (0 if end == "\n" else revision.text.count(end))
        assert apply(revision.text, revision.undo) == text


def test_a_file_all_in_brackets_is_changed_within_them():
    text = '{"points": {"A": [0, 0], "B": "A right 2"}, "members": {"beam": "A B"}, "supports": {"A": "fixed"}, "loads": ["3 N at B down"]}'

    assert add(text, "find", "A").text == text.removesuffix("}") + ", find: [A]}"
    assert add(text, "loads", "4 N at B up").text == text.replace("down\"]", "down\", 4 N at B up]")
    assert rename(text, "beam", "boom").text == text.replace("beam", "boom")
    assert remove(text, "loads", 1).text == text.replace(', "loads": ["3 N at B down"]', "")


def test_edits_undo_each_other_whatever_their_order():
    edits = [Edit(5, 5, "new "), Edit(0, 1, ""), Edit(2, 4, "xyz")]
    made = apply("abcdefg", edits)

    assert made == "bxyzenew fg"
    assert apply(made, inverse("abcdefg", edits)) == "abcdefg"


def test_a_cord_whose_tension_is_a_letter_with_a_value_keeps_it_under_its_new_name():
    text = ("letters: {S: 200 N}\npoints: {A: [0, 0], B: A right 2, W: B up 1}\nmembers: {beam: A B}\nsupports: {A: pin}\ncords: {S: B to W}\n"
            "loads: [200 N at B down]\nfind: [A]\n")

    for kind in ("", "cords", "letters"):
        made = rename(text, "S", "T", kind)

        assert made.made and made.text == text.replace("S:", "T:")
