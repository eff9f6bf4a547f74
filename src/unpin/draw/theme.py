"""How each role looks: line weights in pt and the names of the few inks. Made for black on white paper first.

Four inks: line, fill of a body, soft (dimensions, hatching) and paper. Nothing is told by ink alone: pairs differ by
the mark at their tails, links by their width. Tension and compression have no ink.
"""

from __future__ import annotations

from unpin.base.record import record

INKS_LIGHT = {
    "line": "#111111",
    "body": "#e9e9e6",
    "soft": "#4d4d4d",
    "paper": "#ffffff",
    "force": "#111111",
    "pair1": "#0b4f8a",
    "pair2": "#7a3d00",
    "pair3": "#4a2c7d",
    "pair4": "#0f5a3c",
    "pair5": "#7d1f4b",
    "pair6": "#4a4a00",
}
INKS_DARK = {
    "line": "#f2f2f2",
    "body": "#3a3d40",
    "soft": "#b8b8b8",
    "paper": "#16181a",
    "force": "#f2f2f2",
    "pair1": "#8cc4f5",
    "pair2": "#f0b27a",
    "pair3": "#c9b0f2",
    "pair4": "#8ad9b5",
    "pair5": "#f2a0c4",
    "pair6": "#d6d67a",
}


@record
class Look:
    """Ink of the line and of the filling ("" for none), line width, dash pattern, round caps and joins."""

    stroke: str = ""
    width: float = 0.0
    fill: str = ""
    dash: str = ""
    rounded: bool = False


LOOKS: dict[str, Look] = {
    "edge": Look("line", 7.6, rounded=True),
    "flesh": Look("body", 5.8, rounded=True),
    "link-edge": Look("line", 4.0, rounded=True),
    "link-flesh": Look("paper", 2.4, rounded=True),
    "ghost-edge": Look("soft", 0.7, dash="3 2.2", rounded=True),
    "disc": Look("line", 0.9, "body"),
    "rim": Look("line", 0.8),
    "block": Look("line", 0.9, "body", rounded=True),
    "cord": Look("line", 1.3, rounded=True),
    "eye": Look("line", 0.9, "paper"),
    "wedge": Look("line", 0.9, "soft"),
    "hinge": Look("line", 0.9, "paper"),
    "knot": Look("", 0, "line"),
    "symbol": Look("line", 0.9, "paper", rounded=True),
    "ground": Look("line", 1.1, rounded=True),
    "hatch": Look("soft", 0.6),
    "force": Look("force", 1.15, "force"),
    "couple": Look("force", 1.15, "force"),
    "spread": Look("force", 0.8, "force"),
    "spread-line": Look("force", 0.8),
    "dimension": Look("soft", 0.55, "soft"),
    "extension": Look("soft", 0.45),
    "angle": Look("soft", 0.55),
    "reference": Look("soft", 0.5, dash="3 1.8"),
    "slope": Look("soft", 0.6),
    "leader": Look("soft", 0.45),
    "centre": Look("line", 0.9),
    "motion": Look("soft", 0.9, "soft"),
    "axis": Look("soft", 0.7, "soft"),
    "tag": Look(),
}

TEXT_INK = {
    "label": "line",
    "point": "line",
    "part": "soft",
    "dimension": "soft",
    "angle": "soft",
    "slope": "soft",
    "motion": "soft",
}

PAIRS = 6
"""Kinds of tail mark; more pairs than that in one figure begin again with open marks."""
