"""A route chosen by hand on the desk: what may be chosen, what vanishes, and that the lesson of it is the lesson of the command."""

from pathlib import Path

import pytest
from asking import Desk

import unpin
from unpin import bundled
from unpin.workbench.folder import Refused
from unpin.workbench.hand import hand, isolated, shortest

EXAMPLES = [bundled.path_of(n) for n in bundled.names()]
AWNING = bundled.path_of("market-awning").read_text("utf-8")


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda p: p.stem)
def test_the_shortest_way_said_in_words_leads_to_every_answer(path):
    text = path.read_text("utf-8")
    found = shortest(text)

    taken = hand(text, found["sums"])

    assert all(found["sums"]) and taken["done"], taken["missing"]
    assert taken["count"] == found["count"]
    assert [s["verdict"] for s in taken["steps"] if not s["ok"]] == []


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda p: p.stem)
def test_a_way_is_found_by_always_taking_a_sum_that_leaves_one_unknown(path):
    """As a student would go on: isolate any body, take any sum with one unknown left, until everything is known."""
    text = path.read_text("utf-8")
    problem = unpin.loads(text)
    names = [b.name for b in unpin.check(problem).structure.bodies]
    sums, done = [], False
    for _ in range(3 * len(names) + 3):
        new = None
        for bodies in (["whole"], *([n] for n in names)):
            offers = isolated(text, bodies, sums)["choices"]
            new = next((c["sum"] for c in offers if c["leaves"] == "one"), None)
            if new:
                break
        if new is None:
            break
        sums.append(new)
        taken = hand(text, sums)
        done = taken["done"]
        if done:
            break

    needs_block = any(len(s.equations) > 1 for s in unpin.solve(problem).recommended.steps)
    assert done or needs_block


def test_unknowns_that_vanish_are_told_apart_from_those_that_stay():
    seen = isolated(AWNING, ["arm"])

    arrows = {u["id"] for u in seen["unknowns"]}
    for choice in seen["choices"]:
        assert set(choice["holds_ids"]) | set(choice["drops_ids"]) == arrows
        assert set(choice["left_ids"]) <= set(choice["holds_ids"])
    assert all(u["owner"] and all(f'data-action="{o}"' in seen["figure"]["svg"].replace("&gt;", ">") for o in u["owner"]) for u in seen["unknowns"])


def test_a_sum_that_cannot_be_read_is_remarked_upon_and_the_rest_is_followed():
    taken = hand(AWNING, ["moments about O on whole", "moments about Nowhere on whole"])

    assert [s["ok"] for s in taken["steps"]] == [True, False]
    assert "Nowhere" in taken["steps"][1]["remark"] and taken["known"]


def test_a_faulty_text_or_body_is_refused():
    for do in (lambda: hand("points: {", []), lambda: isolated(AWNING, ["nobody"]), lambda: shortest("")):
        with pytest.raises(Refused):
            do()


def test_a_search_runs_beside_the_desk_and_can_be_called_off(tmp_path):
    desk = Desk(tmp_path)
    many = Path(__file__).parents[2] / "examples" / "theatre-hoist.yaml"

    first = desk.post("/route", text=many.read_text("utf-8")).json()["job"]
    desk.post("/route/cancel", job=first)
    second = desk.post("/route", text=AWNING, kind="fewest").json()["job"]

    assert desk.get("/route", job=first).json()["state"] == "cancelled"
    found = desk.get("/route", job=second).json()
    assert found["state"] == "done" and found["count"] == len(found["sums"])
    assert desk.get("/route", job="999").status_code == 404
    gone = desk.post("/route", text="title: x").json()["job"]
    assert desk.get("/route", job=gone).json()["code"] == "faulty"


def test_a_sum_in_other_words_is_known_as_the_one_that_the_desk_offers():
    taken = hand(AWNING, ["forces along up on arm", "moments about Nowhere on arm"])

    assert [s["same"] for s in taken["steps"]] == ["forces along y on arm", ""]


def test_why_a_sum_cannot_be_read_is_told_in_the_language_of_the_desk():
    told = {language: hand(AWNING, ["moments about Nowhere on whole"], language)["steps"][0]["remark"] for language in ("en", "es")}

    assert told["en"] != told["es"] and all("Nowhere" in t for t in told.values())
