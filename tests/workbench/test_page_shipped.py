"""The wheel holds every file of the page, and the licence of what is not ours."""

import subprocess
import sys
import zipfile
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
WEB = ROOT / "src" / "unpin" / "workbench" / "web"


def test_the_wheel_holds_every_file_of_the_page(tmp_path):
    pytest.importorskip("hatchling", reason="this test needs hatchling, which builds the wheel")
    run = subprocess.run([sys.executable, "-m", "hatchling", "build", "-t", "wheel", "-d", str(tmp_path)], cwd=ROOT, capture_output=True, text=True, timeout=240)
    assert run.returncode == 0, run.stderr[-2000:]
    (wheel,) = tmp_path.glob("*.whl")
    with zipfile.ZipFile(wheel) as archive:
        there = set(archive.namelist())

    wanted = {f"unpin/workbench/web/{p.relative_to(WEB).as_posix()}" for p in WEB.rglob("*") if p.is_file()}
    assert wanted <= there


def test_what_is_not_ours_comes_with_its_licence():
    assert "Google LLC" in (WEB / "lib" / "lit-html.js").read_text("utf-8")
    assert "BSD 3-Clause" in (WEB / "lib" / "LICENSE-lit-html.txt").read_text("utf-8")


def test_the_page_loads_nothing_from_elsewhere():
    for path in WEB.rglob("*"):
        if path.suffix in (".js", ".css", ".html") and path.parent.name != "lib":
            assert "//" not in path.read_text("utf-8").replace("// ", "") or "http" not in path.read_text("utf-8"), path
