"""Libraries that only tests need: skipped with a word when missing, but never in the automatic run."""

from __future__ import annotations

import importlib.util
import os

import pytest


def needs(library: str) -> None:
    """Skip the module that calls this without the library; fail instead where CI is set."""
    if importlib.util.find_spec(library) is None:
        if os.environ.get("CI") == "true":
            raise ModuleNotFoundError(f"{library} is needed for the outside check and is not installed")
        pytest.skip(f"{library} is not installed: pip install {library} to compare with it", allow_module_level=True)
