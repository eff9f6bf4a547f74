"""Any change of any file, in any style of YAML: what it says afterwards is what was meant, and nothing else has moved."""

import json
import re
from itertools import count
from pathlib import Path

import pytest
import yaml
from hypothesis import assume, given
from hypothesis import strategies as st

from unpin.read import read_text
from unpin.read.edits import add, apply, change, place, put, remove, rename
from unpin.read.edits.layout import Unreadable
from unpin.read.edits.revision import skeleton
from unpin.read.schema import BY_NAME

ROOT = Path(__file__).parents[2]
FILES = sorted([*(ROOT / "examples").glob("*.yaml"), *(ROOT / "tests" / "published" / "problems").glob("*.yaml")])
TEXTS = [t for t in (p.read_text("utf-8") for p in FILES) if read_text(t).sound]
ONE = {"title", "text", "units", "gravity", "figures"}


def as_data(text):
    """The skeleton as plain data, read by the general library, every scalar as text; an empty line that begins or ends one says nothing."""
    return without_ends(yaml.load(text, yaml.BaseLoader))


def without_ends(data):
    if isinstance(data, dict):
        return {key: without_ends(held) for key, held in data.items()}
    return [without_ends(held) for held in data] if isinstance(data, list) else data.strip("\n")


STYLES = {
    "as written": lambda text: text,
    "all in blocks": lambda text: yaml.dump(as_data(text), sort_keys=False, allow_unicode=True, default_flow_style=False, width=30),
    "all in brackets": lambda text: yaml.dump(as_data(text), sort_keys=False, allow_unicode=True, default_flow_style=True, width=40),
    "as JSON": lambda text: json.dumps(as_data(text), ensure_ascii=False),
    "as JSON over lines": lambda text: json.dumps(as_data(text), ensure_ascii=False, indent=3) + "\n",
    "in single quotes": lambda text: yaml.dump(as_data(text), sort_keys=False, allow_unicode=True, default_flow_style=False, default_style="'", width=24),
    "in double quotes": lambda text: yaml.dump(as_data(text), sort_keys=False, default_flow_style=None, default_style='"', width=24),
    "folded": lambda text: yaml.dump(as_data(text), sort_keys=False, default_flow_style=False, default_style=">", width=20),
}


@st.composite
def files(draw, styles=tuple(STYLES)):
    """A sound file in some style, with remarks and empty lines put in, and some kind of line end."""
    text = STYLES[draw(st.sampled_from(styles))](draw(st.sampled_from(TEXTS)))
    lines, number = text.split("\n"), count()
    was = skeleton(text)
    for _ in range(draw(st.integers(0, 4))):
        at = draw(st.integers(0, len(lines) - 1))
        new = draw(st.sampled_from(["", "# note {}", "    # note {}", "behind"])).format(next(number))
        tried = [*lines[:at], f"{lines[at]}  # note {next(number)}", *lines[at + 1 :]] if new == "behind" else [*lines[:at], new, *lines[at:]]
        try:
            if skeleton("\n".join(tried)) == was:
                lines = tried
        except Unreadable:
            pass
    text = "\n".join(lines)
    if draw(st.booleans()):
        text = text.rstrip("\n")
    return draw(st.sampled_from(["", "\ufeff"])) + text.replace("\n", draw(st.sampled_from(["\n", "\n", "\r\n"])))


def facts(reading):
    """What was understood, without the places."""
    return re.sub(r"Place\([^)]*\)", "", repr(reading.problem))


def notes(text):
    return re.findall(r"# note \d+", text)


def keeps_what_it_should(text, revision, may_lose=False):
    assert apply(text, revision.edits) == revision.text
    assert apply(revision.text, revision.undo) == text
    if revision.refused:
        assert revision.text == text and not revision.edits
        return
    assert revision.text.startswith("\ufeff") == text.startswith("\ufeff")
    if "\r\n" in text:
        assert "\n" not in revision.text.replace("\r\n", "")
    else:
        assert "\r" not in revision.text
    assert facts(revision.reading) == facts(read_text(revision.text))
    if not may_lose:
        assert notes(revision.text) == notes(text)
        assert text.endswith("\n") == revision.text.endswith("\n")


def says(revision, data):
    """Whether the new text says what the data say, written by another hand and read."""
    assert facts(revision.reading) == facts(read_text(json.dumps(data, ensure_ascii=False)))


def entries(data):
    return [(s, key) for s, held in data.items() if s not in ONE and not isinstance(held, str) for key in (held if isinstance(held, dict) else range(len(held)))]


@given(files(), st.data())
def test_an_entry_said_again_in_other_words_changes_that_entry_only(text, data):
    said = as_data(text.removeprefix("\ufeff"))
    section, key = data.draw(st.sampled_from([e for e in entries(said) if not isinstance(said[e[0]][e[1]], list)]))
    phrase = data.draw(st.sampled_from(["{}", " {}", "{} ", "{}  "])).format(said[section][key]).replace(" ", "  ", 1)

    revision = change(text, section, key if isinstance(key, str) else key + 1, phrase)

    assert revision.made, revision.refused
    keeps_what_it_should(text, revision)
    said[section][key] = phrase
    says(revision, said)


@given(files(), st.data())
def test_an_entry_added_is_there_and_all_others_are_as_they_were(text, data):
    said = as_data(text.removeprefix("\ufeff"))
    point = data.draw(st.sampled_from([k for k in said["points"] if " " not in k]))
    section, phrase, name = data.draw(st.sampled_from([
        ("loads", f"3 N at {point}, {point} down", ""), ("points", ["1/7", "2.5"], "Zq"), ("points", f"{point} right 1", "Zq"), ("letters", "4.5", "zq"),
        ("loads", f"3 N down at {point}", ""), ("find", "everything", ""), ("route", f"moments about {point} on whole", ""), ("supports", "pin", point),
        ("discs", f"0.1 at {point}", "zq"), ("loads", "3: # N", ""), ("find", "'x", ""),
    ]))

    revision = add(text, section, phrase, name, faulty=True)

    assert revision.made or section == "supports" or "edit.takes_no_name" in [d.code for d in revision.refused], revision.refused
    keeps_what_it_should(text, revision)
    if revision.made:
        held = said.setdefault(section, {} if name else [])
        if name:
            held[name] = phrase
        else:
            said[section] = [*([held] if isinstance(held, str) else held), phrase]
        assert as_data(revision.text.removeprefix("\ufeff")) == said


@given(files(), st.data())
def test_what_is_taken_out_is_gone_with_all_that_needs_it(text, data):
    said = as_data(text.removeprefix("\ufeff"))
    section, key = data.draw(st.sampled_from(entries(said)))

    revision = remove(text, section, key if isinstance(key, str) else key + 1, dependants=True)

    keeps_what_it_should(text, revision, may_lose=True)
    if revision.refused:
        codes = {d.code for d in revision.refused}
        assert codes & {"read.no_points", "read.no_members"} or section in ("members", "links", "points", "blocks", "discs"), codes
        return
    gone = {(section, str(key if isinstance(key, str) else key + 1))} | {(u.section, u.key) for u in revision.dependants}
    for name, held in list(said.items()):
        if isinstance(held, str):
            left = "" if (name, "") in gone else held
        elif isinstance(held, dict):
            left = {k: v for k, v in held.items() if (name, k) not in gone}
        else:
            left = [v for n, v in enumerate(held, 1) if (name, str(n)) not in gone]
        if left or not held:
            said[name] = left
        else:
            del said[name]
    assert as_data(revision.text.removeprefix("\ufeff")) == said
    says(revision, said)


@given(files(styles=("as written", "all in blocks")), st.data())
def test_remarks_on_lines_of_their_own_outlive_what_stood_around_them(text, data):
    assume(not re.search(r"[\[{][^\]}]*\n", text))
    section, key = data.draw(st.sampled_from(entries(as_data(text.removeprefix("\ufeff")))))
    own = re.findall(r"^ *(# note \d+)", text, re.M)

    revision = remove(text, section, key if isinstance(key, str) else key + 1, dependants=True)

    assert set(own) <= set(notes(revision.text))


@given(files(), st.data())
def test_a_new_name_changes_nothing_but_names(text, data):
    reading = read_text(text)
    kind, old = data.draw(st.sampled_from(sorted({(r.kind, r.name) for r in reading.references if r.declares and not r.made and "'" not in r.name})))

    revision = rename(text, old, "Zq7", kind)

    assert revision.made, revision.refused
    keeps_what_it_should(text, revision)
    assert facts(revision.reading).replace("Zq7", old) == facts(reading)
    assert facts(rename(revision.text, "Zq7", old, kind).reading) == facts(reading)


@given(files(), st.data())
def test_a_point_is_placed_where_it_was_meant(text, data):
    said = as_data(text.removeprefix("\ufeff"))
    point = data.draw(st.sampled_from([k for k in said["points"] if len(k.replace(",", " ").split()) == 1]))
    at = data.draw(st.sampled_from([("3.25", "-1/3"), (0.5, 7)]))

    revision = place(text, point, at, faulty=True)

    assert revision.made, revision.refused
    keeps_what_it_should(text, revision, may_lose=True)
    said["points"][point] = [str(c) for c in at]
    assert as_data(revision.text.removeprefix("\ufeff")) == said


@given(files(), st.sampled_from(["title", "text"]), st.text(st.characters(blacklist_categories=("C",), blacklist_characters="\ufeff"), min_size=1, max_size=60).map(str.strip).filter(bool))
def test_a_title_of_any_signs_is_read_back_as_it_was_given(text, section, value):
    assume(not re.search(r"[\x85\u2028\u2029]", value))
    revision = put(text, section, value)

    assert revision.made, revision.refused
    keeps_what_it_should(text, revision)
    assert getattr(revision.reading.problem, section) == value


def test_every_section_of_the_schema_can_be_added_changed_and_removed():
    text = "points: {A: [0, 0], B: A right 2}\n"
    for name, section in BY_NAME.items():
        if name == "points":
            continue
        ours = as_data(section.example)[name]
        if isinstance(ours, dict):
            key, phrase = next(iter(ours.items()))
        else:
            key, phrase = "", ours[0] if isinstance(ours, list) else ours
        single = section.shape in ("text", "units", "amount", "whole")
        made = put(text, name, phrase, faulty=True) if single else add(text, name, phrase, key, faulty=True)
        assert made.made, (name, made.refused)
        assert as_data(made.text)[name] == (phrase if single else {key: phrase} if key else [phrase])
        gone = put(made.text, name, "", faulty=True) if single else remove(made.text, name, key or 1, faulty=True)
        assert gone.text == text


@pytest.mark.parametrize("style", STYLES)
def test_the_styles_are_read_as_the_files_they_were_made_from(style):
    assert sum(facts(read_text(STYLES[style](t))) == facts(read_text(t)) for t in TEXTS[:40]) > 30
