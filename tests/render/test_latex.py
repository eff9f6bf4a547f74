"""LaTeX: the source compiles as it stands with the engines of a plain installation, whatever the author wrote."""

import os
import re
import shutil
import subprocess
from dataclasses import replace

import pytest

from lessons import EXAMPLES, FREE, lesson, worked, worked_text
from unpin import api
from unpin.lesson.build import build
from unpin.lesson.nodes import drawings
from unpin.render import latex

EVIL = r"\input{x} $a$ {b} #1 %c & d_e^f ~g <h> |i| \\ “quoted” — Žižka’s crane: 30°, 5 m², α → β"


def compiled(tree, folder, engine="pdflatex") -> str:
    """The log of a run that must end well. Where TeX is not installed the test is left out, but never in the automatic run."""
    if shutil.which(engine) is None:
        assert not os.environ.get("CI"), f"{engine} is missing; apt-get install texlive-latex-recommended"
        pytest.skip(f"{engine} is not installed: apt-get install texlive-latex-recommended")
    source, pictures = api.as_latex(tree, "figures")
    (folder / "figures").mkdir()
    for name, data in pictures.items():
        (folder / "figures" / name).write_bytes(data)
    (folder / "lesson.tex").write_text(source, "utf-8")
    done = subprocess.run([engine, "-interaction=nonstopmode", "-halt-on-error", "lesson.tex"], cwd=folder, capture_output=True, text=True, errors="replace")
    assert done.returncode == 0, done.stdout[-1500:]
    assert (folder / "lesson.pdf").read_bytes().startswith(b"%PDF")
    return done.stdout


@pytest.mark.parametrize("name", EXAMPLES)
def test_every_example_compiles_without_a_warning_or_a_line_too_long(name, tmp_path):
    log = compiled(lesson(name), tmp_path)

    assert not re.findall(r"Warning|Overfull \\hbox|Missing character", log)


def test_the_other_engine_takes_the_same_source(tmp_path):
    compiled(lesson("market-awning"), tmp_path, "lualatex")


@pytest.mark.parametrize("evil", [EVIL, "Кран 起重机", "\t\x07 a\n\nb"])
def test_what_the_author_wrote_is_never_a_command(evil, tmp_path):
    w = worked("market-awning")

    compiled(build(replace(w, problem=replace(w.problem, title=evil, text=evil)), drawn=False), tmp_path)


def test_unsound_faded_short_and_several_compile_too(tmp_path):
    for k, tree in enumerate([build(worked_text(FREE)), api.explain(worked("garden-arch"), fade=6), api.explain(worked("garden-arch"), short=True),
                              api.paper([worked("market-awning"), worked("boat-trailer")], "Test & retest", ((3,), (1, 1)), True)]):
        (tmp_path / str(k)).mkdir()
        compiled(tree, tmp_path / str(k))


def test_the_first_problem_of_a_sheet_stands_under_the_heading_of_the_sheet():
    source, _ = api.as_latex(api.paper([worked("market-awning"), worked("boat-trailer")], "Week 5", (), False))

    before, between = source.partition("\\begin{document}")[2].split("\\section*")[:2]
    assert "roomfor" not in before and "clearpage" not in before
    assert "\\roomfor{150mm}" in between


def test_only_two_packages_and_their_symbols_are_asked_for():
    source = latex.write(lesson("market-awning"), "figures")

    assert re.findall(r"\\usepackage.*", source) == [r"\usepackage{amsmath,amssymb,graphicx}"]


@pytest.mark.parametrize("name", EXAMPLES)
def test_every_figure_is_a_vector_file_with_its_words(name):
    source, pictures = api.as_latex(lesson(name), "f")

    assert set(pictures) == {f"{d.id}.pdf" for d in drawings(lesson(name))}
    assert all(data.startswith(b"%PDF") and b"/Subtype/Image" not in data.replace(b" ", b"") for data in pictures.values())
    assert len(re.findall(r"\\includegraphics\[alt=\{[^\n]{20,}?\}\]\{f/figure-\d+\.pdf\}", source)) == len(pictures)


def test_letters_that_pdflatex_has_no_sign_for_are_shown_by_number_and_kept():
    w = worked("market-awning")
    source = latex.write(build(replace(w, problem=replace(w.problem, title="Кран")), drawn=False), "f")

    assert r"\DeclareUnicodeCharacter{041A}{[U+041A]}" in source and "Кран" in source


def test_accents_are_written_out():
    assert latex.escaped("Žižka crème ñ ï") == r"\v{Z}i\v{z}ka cr\`{e}me \~{n} \"{\i}"
