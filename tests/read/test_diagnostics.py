"""One planted fault each, and the whole message that it gets."""

import tomllib
from pathlib import Path

import pytest

from unpin.read import read_file, read_text
from unpin.words.remarks import render
from unpin.words.sentences import catalogue

SECTIONS = (
    "title",
    "text",
    "units",
    "gravity",
    "figures",
    "letters",
    "points",
    "members",
    "links",
    "discs",
    "blocks",
    "pins",
    "cords",
    "supports",
    "loads",
    "given",
    "find",
    "route",
)
FRAME = {
    "points": "{O: [0, 0], B: [0, 1], C: [0, 2], D: C right 2}",
    "members": "{post: O B C, arm: C D}",
    "links": "[B-D]",
    "supports": "{O: fixed}",
    "loads": "[3 N at D down]",
    "find": "[O]",
}
THREE = {
    "points": "{A: [0, 0], B: [1, 0], C: [2, 0], D: [1, 1]}",
    "members": "{ab: A B, bc: B C, bd: B D}",
    "links": None,
    "supports": "{A: fixed, C: fixed, D: fixed}",
    "loads": "[3 N at B down]",
    "find": "[A]",
}
BOW = {
    "points": "{A: [0, 0], B: [1, 0], C: [2, 1]}",
    "members": "{bow: A B C}",
    "links": None,
    "supports": "{A: fixed}",
    "loads": "[3 N at C down]",
    "find": "[A]",
}
CRANE = {
    "points": "{A: [0, 0], C: [3, 0], W: [0, 1], K: [4, -2]}",
    "members": "{arm: A C}",
    "discs": "{pulley: 0.2 at C}",
    "blocks": "{sack: at K}",
    "cords": "{T: W over pulley to sack}",
    "supports": "{A: fixed}",
    "loads": "[weight of sack 5 N]",
    "find": "[T]",
}
BASES = {"frame": FRAME, "three": THREE, "bow": BOW, "crane": CRANE}


def planted() -> list[tuple[dict, dict, str]]:
    faults = tomllib.loads((Path(__file__).parent / "faults.toml").read_text("utf-8"))["fault"]
    return [
        (BASES[f.get("base", "frame")], f.get("with", {}) | dict.fromkeys(f.get("without", ())), "\n".join(f["says"]))
        for f in faults
    ]


FAULTS = planted()


def with_fault(base: dict, sections: dict) -> str:
    merged = {k: v for k, v in {**base, **sections}.items() if v is not None}
    order = sorted(merged, key=lambda k: SECTIONS.index(k) if k in SECTIONS else len(SECTIONS))
    return "".join(f"{k}: {merged[k]}\n" for k in order)


def told(text: str) -> str:
    return "\n".join(render(d) for d in read_text(text, "p.yaml").diagnostics)


@pytest.mark.parametrize(("base", "sections", "message"), FAULTS)
def test_a_planted_fault_gets_its_message_and_no_other(base, sections, message):
    assert told(with_fault(base, sections)) == message


@pytest.mark.parametrize("base", BASES.values())
def test_without_the_fault_there_is_nothing_to_say(base):
    assert told(with_fault(base, {})) == ""


WHOLE = [
    ("# nothing\n", "p.yaml:1:1: error: the file is empty\n  hint: a file has points, members, supports, loads and find"),
    ("- a\n- b\n", "p.yaml:1:1: error: found no sections\n  hint: a file has points, members, supports, loads and find"),
    (
        "title: a\n",
        'p.yaml:1:1: error: the section "points" is missing\n  hint: a file has points, members, supports, loads and find\n'
        'p.yaml:1:1: error: there are neither "members" nor "links"\n'
        "  hint: a file has points, members, supports, loads and find",
    ),
    (with_fault(FRAME, {"title": "a" * 20001}), "p.yaml:1:8: error: title: a text of more than 20000 characters"),
    (
        with_fault(FRAME, {"loads": "[" + "3 N at D down, " * 101 + "]"}),
        "p.yaml:5:1: error: loads: more than 100 entries in one section",
    ),
    (with_fault(FRAME, {}).replace("loads: ", "loads "), "p.yaml:5:1: error: from here on the text cannot be read\n  hint: a colon is missing after loads"),
    ("route: [" + "a," * 20001 + "]", "p.yaml:1:1: error: more than 20000 entries"),
    ("a" * 300_000, "error: the file is larger than 256 KB"),
    (
        "letters: {a: a length}\npoints: {A: [0, 0], " + ", ".join(f"Q{k}: [a*sin({k}.3), a*cos({k}.7)]" for k in range(10, 40)) + "}\n"
        "members: {beam: A Q10}\nsupports: {A: fixed}\nloads: [5 N at Q10 down]",
        "p.yaml:1:1: error: more different angles and tangents stand beside letters than can be worked with\n"
        "  hint: give a value to the letters that may have one, or write each angle with its unit: 35 deg",
    ),
]


@pytest.mark.parametrize(("text", "message"), WHOLE)
def test_a_file_that_is_no_problem_says_so(text, message):
    assert told(text).startswith(message)


def test_a_file_that_cannot_be_read_says_so(tmp_path: Path):
    missing, folder, latin, picture = (tmp_path / name for name in ("none.yaml", "", "latin.yaml", "picture.yaml"))
    picture.write_bytes(bytes(range(256)) * 4)
    latin.write_bytes("title: Br\u00fccke\n".encode("latin-1"))

    said = [render(read_file(p).diagnostics[0]).replace(str(p), "FILE") for p in (missing, folder, latin, picture)]

    assert said == [
        "error: FILE is not there",
        "error: FILE is a folder",
        "FILE:1:10: error: byte FC is not UTF-8 text\n  hint: save the file as UTF-8",
        "error: FILE is not a text file\n  hint: save the file as UTF-8",
    ]


def test_a_picture_given_as_a_file_gets_one_remark(tmp_path: Path):
    picture = tmp_path / "picture.yaml"
    picture.write_bytes(b"\x89PNG\r\n\x1a\n\x00\x00\x00\rIHDR" + bytes(range(256)))

    assert [d.code for d in read_file(picture).diagnostics] == ["read.not_text_file"]


def test_all_faults_are_told_at_once_in_file_order():
    text = with_fault(
        FRAME, {"units": "m, kn", "points": "{O: [0, 0], B: [0, 1], C: [0, 2], D: C rihgt 2}", "supports": "{O: fixd}"}
    )
    places = [(d.place.line, d.code) for d in read_text(text).diagnostics]
    assert places == [(1, "read.unknown_unit"), (2, "read.phrase"), (5, "read.unknown_support")]


def test_what_follows_from_a_fault_is_not_told_again():
    # D is named by a member, a link, a load and a question.
    text = with_fault(FRAME, {"points": "{O: [0, 0], B: [0, 1], C: [0, 2], D: C rihgt 2}", "find": "[D, D on arm, B-D]"})
    assert [d.code for d in read_text(text).diagnostics] == ["read.phrase"]


def test_a_broken_section_leaves_the_others_readable():
    text = with_fault(FRAME, {"loads": "[3 N at D down"})
    reading = read_text(text)
    assert [d.code for d in reading.diagnostics] == ["read.skeleton"]
    assert [p.name for p in reading.problem.parts] == ["post", "arm"]
    assert [a.written for a in reading.problem.asked] == ["O"]


def test_every_sentence_of_the_reader_is_taken_by_some_fault():
    texts = [with_fault(b, s) for b, s, _ in FAULTS] + [t for t, _ in WHOLE]
    # Of files, and of more angles beside letters than there is room for (test_many_angles).
    files = {"read.no_file", "read.closed_file", "read.folder", "read.not_text_file", "read.not_utf8", "read.no_room"}
    taken = {d.code for t in texts for d in read_text(t).diagnostics} | files
    hints = {d.hint for t in texts for d in read_text(t).diagnostics if d.hint} | {"hint.utf8", "hint.example", "hint.no_room"}
    known = catalogue("diagnostics")
    assert {k for k in known if k.startswith("read.")} == taken
    assert {k for k in known if k.startswith("hint.")} == hints
