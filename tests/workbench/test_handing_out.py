"""Every output of the command line from the desk, the same bytes."""

import pytest

import unpin
from unpin.render import pdf

TEXT_FORMS = (".html", ".md", ".tex")


@pytest.mark.parametrize("ending", TEXT_FORMS)
def test_a_preview_is_what_the_command_would_write(desk, ending):
    text = (desk.folder / "market-awning.yaml").read_text("utf-8")
    lesson = unpin.explain(unpin.solve(unpin.loads(text)))

    shown = desk.post("/publish", text=text, name="market-awning.yaml", ending=ending).content.decode()

    made = {".html": lambda: unpin.as_page(lesson), ".md": lambda: unpin.as_markdown(lesson, "market-awning-figures")[0],
            ".tex": lambda: unpin.as_latex(lesson, "market-awning-figures")[0]}
    assert shown == made[ending]()


def test_the_pages_of_a_handout_are_shown_one_by_one(desk):
    text = (desk.folder / "market-awning.yaml").read_text("utf-8")

    first = desk.post("/publish", text=text, ending=".pdf", page=1)
    beyond = desk.post("/publish", text=text, ending=".pdf", page=99)

    assert first.content.startswith(b"<svg") and int(first.headers["x-pages"]) >= 2
    assert beyond.status_code == 404


def test_a_handout_is_written_beside_the_problem_under_its_name(desk):
    text = (desk.folder / "market-awning.yaml").read_text("utf-8")

    told = [desk.post("/publish", text=text, name="market-awning.yaml", save=True, **how).json() for how in (
        {"ending": ".pdf"}, {"ending": ".html", "short": True}, {"ending": ".html", "fade": 2}, {"ending": ".svg", "which": "body", "body": ["arm"]}, {"ending": ".md"})]

    names = [t["file"] for t in told]
    assert names == ["market-awning.pdf", "market-awning-short.html", "market-awning-faded-2.html", "market-awning-body-arm.svg", "market-awning.md"]
    assert all((desk.folder / n).stat().st_size for n in names)
    assert (desk.folder / "market-awning.pdf").read_bytes() == pdf.write(unpin.explain(unpin.solve(unpin.loads(text))))
    assert (desk.folder / "market-awning.yaml").read_text("utf-8") == text


@pytest.mark.parametrize("how", [{"ending": ".exe"}, {"which": "secret"}, {"fade": 9}, {"fade": -1}, {"short": True, "fade": 2}, {"figures": 99}, {"route": "best"},
                                 {"name": "../out.yaml", "save": True}])
def test_what_there_is_not_is_refused(desk, how):
    text = (desk.folder / "market-awning.yaml").read_text("utf-8")

    reply = desk.post("/publish", **{"text": text, "name": "a.yaml", "ending": ".html", **how})

    assert reply.status_code in (400, 422) and reply.json()["message"]


def test_a_problem_with_faults_is_not_published(desk):
    reply = desk.post("/publish", text="points: {A: [0, 0]}", ending=".pdf")

    assert reply.status_code == 422 and reply.json()["code"] == "faulty"


def test_the_taught_page_may_run_its_own_scripts_and_nothing_else(desk):
    reply = desk.get("/teach", name="market-awning.yaml")

    assert reply.headers["content-type"].startswith("text/html")
    assert "connect-src 'none'" in reply.headers["content-security-policy"] and "script-src 'sha256-" in reply.text


@pytest.mark.parametrize("body", [["arm"], ["post"], ["whole"], ["arm", "post"]])
def test_a_body_cut_loose_is_the_figure_that_draw_writes(desk, tmp_path, body):
    from unpin import cli

    written = tmp_path / "body.svg"
    said = "whole" if body == ["whole"] else " + ".join(body)
    assert cli.main(["draw", str(desk.folder / "market-awning.yaml"), "--which", "body", "--body", said, "-o", str(written)]) == 0
    text = (desk.folder / "market-awning.yaml").read_text("utf-8")

    assert desk.post("/publish", text=text, ending=".svg", which="body", body=body).content == written.read_bytes()


def test_dark_and_light_are_for_all_who_look(desk):
    text = (desk.folder / "market-awning.yaml").read_text("utf-8")

    page = desk.post("/publish", text=text, ending=".html", colours="dark").text
    dark, light, own = (desk.post("/publish", text=text, ending=".svg", colours=c).text for c in ("dark", "light", ""))
    dots = [desk.post("/publish", text=text, ending=".png", colours=c).content for c in ("dark", "")]

    assert 'data-colours="dark"' in page
    assert "prefers-color-scheme" in own and "prefers-color-scheme" not in dark + light
    assert "@media all{svg{background:var(--paper)" in dark and "@media not all{svg{" in light
    assert dots[0] != dots[1] and all(d.startswith(b"\x89PNG") for d in dots)
    assert desk.post("/publish", text=text, ending=".html", colours="pink").status_code == 400


def test_a_handout_may_be_in_another_language_and_with_other_figures(desk):
    text = (desk.folder / "market-awning.yaml").read_text("utf-8")

    spanish = desk.post("/publish", text=text, ending=".md", language="es", figures=5).text

    # By hand: (100 N x 2.9 m + 240 N x 2.1 m) / 2.8 m = 283.571 N.
    assert "Respuesta" in spanish and "283,57" in spanish.replace("{,}", ",")
    assert desk.post("/publish", text=text, ending=".md", language="xx").status_code == 400


def test_files_in_another_language_or_in_colours_for_all_have_names_of_their_own(desk):
    text = (desk.folder / "market-awning.yaml").read_text("utf-8")

    def name(**how):
        return desk.post("/publish", text=text, name="market-awning.yaml", save=True, **how).json()["file"]

    assert [name(ending=".html"), name(ending=".html", language="en")] == ["market-awning.html"] * 2
    assert name(ending=".html", language="es", colours="dark", short=True) == "market-awning-short-es-dark.html"
    assert name(ending=".png", which="final", colours="light") == "market-awning-final-light.png"
    assert name(ending=".md", colours="dark") == "market-awning.md", "paper has no colours of a screen"


def test_what_has_the_readers_colours_is_shown_in_those_of_the_desk_and_what_has_its_own_keeps_them(desk):
    text = (desk.folder / "market-awning.yaml").read_text("utf-8")

    def colours(reply):
        return [c for c in ("light", "dark") if f'data-colours="{c}"' in reply.text.split("<head", 1)[0]]

    assert colours(desk.get("/teach", name="market-awning.yaml", reader="dark")) == ["dark"]
    assert colours(desk.get("/teach", name="market-awning.yaml", reader="")) == []
    assert colours(desk.post("/publish", text=text, ending=".html", colours="light", reader="dark")) == ["light"]
    assert desk.post("/publish", text=text, ending=".svg", reader="dark").text == desk.post("/publish", text=text, ending=".svg", colours="dark").text
    (desk.folder / "house.style").write_text("colours: light\n")
    assert colours(desk.get("/teach", name="market-awning.yaml", reader="dark")) == ["light"]
