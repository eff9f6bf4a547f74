"""A folder of problems to handouts, on all cores. Each file is written whole or not at all, and a faulty one keeps none of the others back."""

from __future__ import annotations

import os
from collections.abc import Sequence
from concurrent.futures import ProcessPoolExecutor
from contextlib import redirect_stderr
from io import StringIO
from multiprocessing import get_context
from pathlib import Path

FORMS = ("html", "pdf", "md", "tex")


def write_all(files: Sequence[Path], folder: Path, form: str, options: Sequence[str] = (), jobs: int = 0) -> list[tuple[int, str]]:
    """For each file, in order, the exit status of its handout and what was said about it. `form`: one of FORMS; `options`: as `unpin
    handout` takes them; `jobs`: how many at a time, 0 for one a core. The folder must be there. What is written does not depend on
    `jobs`."""
    tasks = [("handout", str(file), "-o", str(folder / f"{file.stem}.{form}"), *options) for file in files]
    jobs = min(jobs or _cores(), len(tasks))
    if jobs < 2:
        return [_one(task) for task in tasks]
    # Begun anew, not forked: a process that has typeset holds threads that a fork would break.
    with ProcessPoolExecutor(jobs, get_context("spawn")) as pool:
        return list(pool.map(_one, tasks))


def _cores() -> int:
    """Those this process may use."""
    return len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count() or 1


def _one(task: tuple[str, ...]) -> tuple[int, str]:
    """One handout, its remarks kept for later, so that those of several do not mix."""
    from unpin import cli

    said = StringIO()
    with redirect_stderr(said):
        status = cli.main(list(task))
    return status, said.getvalue()
