"""What the documents say is run: files they show are read, commands they show are typed, output they show must come out."""

import os
import re
import shlex
import subprocess
import sys
from pathlib import Path

import pytest

from unpin import cli

ROOT = Path(__file__).parents[2]
PAGES = [ROOT / "README.md", *sorted((ROOT / "docs" / "learn").glob("*.md")),
         *sorted((ROOT / "docs" / "howto").glob("*.md")), ROOT / "docs" / "README.md"]
BLOCK = re.compile(r"^```(\w+)(?: (\S+))?\n(.*?)^```$", re.M | re.S)


def blocks(page):
    return [(m[1], m[2] or "", m[3]) for m in BLOCK.finditer(page.read_text("utf-8"))]


def output_of(command: str, folder: Path, capfd) -> str:
    """What a command prints. Those of the first page are typed in a shell of their own, as a reader does; the others are run in this process."""
    program, *arguments = shlex.split(command)
    if program == "unpin" and capfd:
        try:
            cli.main(arguments)
        except SystemExit:
            pass  # wrong use
        return "".join(capfd.readouterr())
    environment = {**os.environ, "PATH": f"{Path(sys.executable).parent}{os.pathsep}{os.environ['PATH']}", "PYTHONUTF8": "1"}
    done = subprocess.run([program, *arguments], cwd=folder, env=environment, capture_output=True, text=True, encoding="utf-8")
    return done.stdout + done.stderr


def agrees(shown: str, printed: str) -> bool:
    """The lines shown stand in the output in this order and together; a line `…` stands for any number of lines."""
    parts = [re.escape(part.strip("\n")) for part in re.split(r"^…$", shown.strip("\n"), flags=re.M)]
    plain = re.sub("[\u202f\u2009\u00a0]", " ", re.sub(r"[ \t]+$", "", printed, flags=re.M))
    return re.search(r"(?s)" + r".*?".join(parts), plain) is not None


@pytest.mark.parametrize("page", PAGES, ids=lambda p: p.name)
def test_files_and_commands_of_a_page_do_what_it_says(page, tmp_path, monkeypatch, capfd):
    monkeypatch.chdir(tmp_path)
    for language, name, text in blocks(page):
        if name:
            (tmp_path / name).write_text(text, "utf-8")
        if language == "console":
            for command, shown in re.findall(r"^\$ (.*)\n((?:(?!\$ ).*\n)*)", text, re.M):
                printed = output_of(command, tmp_path, capfd if page != PAGES[0] else None)

                assert agrees(shown, printed), f"{command}\n{printed}"
        elif language == "python":
            exec(compile(text, str(page), "exec"), {"__name__": "page"})  # noqa: S102  our own documents


@pytest.mark.parametrize("page", PAGES, ids=lambda p: p.name)
def test_links_and_pictures_of_a_page_exist(page):
    for target in re.findall(r"\]\((?!https?:|#)([^)#]+)", page.read_text("utf-8")):
        assert (page.parent / target).exists(), target


def test_the_readme_solves_its_bundled_problem_with_its_first_command():
    text = (ROOT / "README.md").read_text("utf-8")
    commands = re.findall(r"^    (python3 -m venv .*)$", text, re.M)

    assert len(commands) == 2
    assert commands[0].endswith("unpin solve market-awning")
    assert commands[1].endswith("-m pytest")
