"""Worked solutions of equilibrium problems: derived as a person would, proved by another way. The calls are in `unpin.api`."""

from __future__ import annotations

__version__ = "0.1.0"
__all__ = ["add_entry", "as_data", "as_latex", "as_markdown", "as_page", "as_pdf", "as_text", "change_entry", "check", "explain", "house", "index", "load", "loads", "paper",
           "place_point", "remove_entry", "rename", "set_section", "solve"]


def __getattr__(name: str):
    """The calls of `unpin.api`, fetched when first asked for, so that `import unpin` costs nothing."""
    if name in __all__:
        from unpin import api

        return getattr(api, name)
    raise AttributeError(f"module {__name__!r} has no attribute {name!r}")


def __dir__() -> list[str]:
    return sorted({*globals(), *__all__})
