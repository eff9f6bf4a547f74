"""Words that a teacher may well write and the grammar does not take, each with the one that it does: for hints only."""

from __future__ import annotations

SECTIONS = {
    **dict.fromkeys(("cables", "cable", "ropes", "rope", "strings", "string", "cord", "belts", "belt"), "cords"),
    **dict.fromkeys(("bars", "bar", "rods", "rod", "struts", "ties", "trusses", "truss", "elements"), "links"),
    **dict.fromkeys(("beams", "beam", "frames", "frame", "bodies", "body", "parts", "part", "bars_and_beams"), "members"),
    **dict.fromkeys(("pulleys", "pulley", "wheels", "wheel", "drums", "drum", "gears", "gear", "rollers"), "discs"),
    **dict.fromkeys(("joints", "joint", "hinges", "hinge", "welds"), "pins"),
    **dict.fromkeys(("nodes", "node", "coordinates", "geometry"), "points"),
    **dict.fromkeys(("forces", "force", "moments", "moment", "couples", "weights", "masses", "actions"), "loads"),
    **dict.fromkeys(("reactions", "unknowns", "asked", "ask", "wanted", "solve", "results", "answers"), "find"),
    **dict.fromkeys(("constants", "parameters", "variables", "values", "data"), "letters"),
    **dict.fromkeys(("boundary", "restraints", "constraints", "fixings"), "supports"),
    **dict.fromkeys(("statement", "description", "problem"), "text"),
}
"""Names of sections."""

SUPPORTS = {
    **dict.fromkeys(("clamped", "clamp", "built", "encastre", "encastré", "embedded", "cantilever", "rigid", "welded"), "fixed"),
    **dict.fromkeys(("hinge", "hinged", "pinned", "articulated"), "pin"),
    **dict.fromkeys(("rolling", "rollers", "wheel", "skate"), "roller"),
    **dict.fromkeys(("cable", "rope", "string", "wire"), "cord"),
    **dict.fromkeys(("strut", "bar", "rod", "tie"), "link"),
    **dict.fromkeys(("floor", "ground"), "smooth floor"),
    **dict.fromkeys(("wall",), "smooth wall"),
}
"""Kinds of support."""

SENSES = {
    **dict.fromkeys(("cw", "CW"), "clockwise"),
    **dict.fromkeys(("ccw", "CCW", "acw", "ACW", "counter"), "anticlockwise"),
}
"""Senses of a couple: close in letters, opposite in meaning."""

MIDDLES = ("middle", "center", "centre", "halfway", "mid")
"""How the midpoint is called."""
