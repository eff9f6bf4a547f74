"""The examples that come with the program: inside the package when it is installed, in the source tree while one works on it."""

from __future__ import annotations

from pathlib import Path

ENDING = ".yaml"


def folder() -> Path:
    """Where the examples lie."""
    here = Path(__file__).parent
    installed = here / "examples"
    return installed if installed.is_dir() else here.parents[1] / "examples"


def names() -> list[str]:
    return sorted(p.stem for p in folder().glob(f"*{ENDING}"))


def path_of(name: str) -> Path | None:
    """The file of a bundled example by its bare name, None if there is none."""
    return folder() / f"{name}{ENDING}" if name in names() else None


def title_of(name: str) -> str:
    """The title line of an example."""
    lines = path_of(name).read_text("utf-8").splitlines()
    return next((line.removeprefix("title:").strip() for line in lines if line.startswith("title:")), "")
