"""The forms of the phrases with their meaning and an example each: the grammar as a person reads it.

The reference page is written from this table, and a test reads every example with `read.grammar`.
"""

from __future__ import annotations

from unpin.base.record import record


@record
class Form:
    """In `form`, capitals stand for what is put in: POINT, MEMBER, LENGTH, ANGLE, NUMBER, FORCE, DIRECTION…"""

    kind: str
    form: str
    meaning: str
    example: str


FORMS: tuple[Form, ...] = (
    Form("amount", "NUMBER", "in the unit of the file", "2.4"),
    Form("amount", "NUMBER UNIT", "with its own unit", "1200 mm"),
    Form("amount", "LETTER", "a letter with a value", "a"),
    Form("amount", "EXPRESSION", "arithmetic: + - * / ^ ( ), sqrt, and sin, cos, tan of degrees", "2a + sqrt(3)/2 m"),
    Form("point", "POINT AXIS LENGTH …", "steps right, left, up or down from a point", "C right 1.6 down 0.4"),
    Form("point", "LENGTH from POINT DIRECTION", "a distance from a point in any direction", "200 mm from C at 30 deg"),
    Form("point", "LENGTH from POINT towards POINT", "a distance on the way to another point", "1.5 from C towards D"),
    Form("point", "midpoint of POINT POINT", "half way", "midpoint of C D"),
    Form("point", "NUMBER of POINT POINT", "that share of the way from the first to the second", "1/3 of C D"),
    Form(
        "point",
        "where line POINT POINT meets line POINT POINT",
        "where two lines cross, drawn out if need be",
        "where line A B meets line C D",
    ),
    Form(
        "point",
        "where line from POINT along DIRECTION meets line …",
        "the same with a line in a given direction",
        "where line from A along right 3 down 4 meets line C D",
    ),
    Form("point", "on POINT POINT at x = LENGTH", "on a line, at a given x (or y)", "on A B at x = 2"),
    Form(
        "point",
        "every LENGTH DIRECTION from POINT",
        "under one name or a row of names: each one step further on",
        "every 4 right from A",
    ),
    Form("point", "evenly from POINT to POINT", "under a row of names: in equal steps on the way", "evenly from A to I"),
    Form(
        "direction",
        "right | left | up | down",
        "along an axis; also `upward`, `downward`, `to the right`, `to the left`",
        "down",
    ),
    Form("direction", "AXIS LENGTH AXIS LENGTH", "a slope by its two legs; `at slope` may stand before it", "right 3 down 4"),
    Form("direction", "at ANGLE", "anticlockwise from the right", "at 30 deg"),
    Form("direction", "at ANGLE above | below right | left", "from the level, upwards or downwards", "at 30 deg below left"),
    Form("direction", "at ANGLE left | right of up | down", "from the upright, to one side", "at 20 deg left of up"),
    Form("direction", "towards POINT", "from the point in question to another", "towards D"),
    Form("direction", "along MEMBER", "from its first point to its last; a side may follow", "along arm, down"),
    Form("direction", "along POINT POINT", "from one point to another", "along B D"),
    Form(
        "direction",
        "square to MEMBER, SIDE",
        "a right angle with a member (or two points), to the side named",
        "square to arm, up",
    ),
    Form("member", "POINT POINT …", "the points it passes, in order", "A C B O"),
    Form("member", "POINT POINT …, POINT …", "several strokes of one rigid part", "A C B, C E"),
    Form("link", "POINT-POINT", "between two points", "B-D"),
    Form("link", "POINT POINT", "the same", "B D"),
    Form("link", "POINT-POINT-POINT …", "a chain: one link from each point to the next", "A-C-E-G"),
    Form("link", "POINT POINT POINT …", "the same", "A C E G"),
    Form("disc", "LENGTH at POINT", "its radius and its centre", "0.2 m at C"),
    Form("disc", "LENGTH and LENGTH at POINT", "two radii on one shaft", "0.1 m and 0.3 m at C"),
    Form("block", "at POINT", "where it is", "at K"),
    Form("cord", "POINT to POINT", "a straight cord", "A to B"),
    Form(
        "cord",
        "… over | under | left of | right of DISC …",
        "the side of the disc that it touches; as many discs as there are, in order",
        "W under hook over pulley to K",
    ),
    Form(
        "cord",
        "… through BLOCK …",
        "through a ring, or over a pulley so small that its size does not matter",
        "W through ring to K",
    ),
    Form("cord", "… DISC at LENGTH …", "which radius of a disc with two", "W over drum at 0.3 m to K"),
    Form("cord", "… to BLOCK", "an end tied to a block", "W over pulley to sack"),
    Form(
        "cord",
        "… to POINT on MEMBER",
        "where several members meet without a pin: tied to that one",
        "W over pulley to C on arm",
    ),
    Form(
        "cord",
        "… pulled DIRECTION",
        "leaves in that direction, with an end that needs no name",
        "K over pulley pulled at 30 deg below right",
    ),
    Form(
        "cord",
        "… winds onto DISC on its left | right",
        "tied to the disc, and leaves it on that side; at the start `winds off`",
        "K winds onto drum on its right",
    ),
    Form("joining", "pinned", "as if nothing were said", "pinned"),
    Form("joining", "not joined", "the members pass each other", "not joined"),
    Form("joining", "MEMBER not joined", "one member passes the others", "arm not joined"),
    Form("joining", "welded", "the members there are one rigid part", "welded"),
    Form("joining", "MEMBER welded to MEMBER", "two of several members", "arm welded to post"),
    Form("support", "pin", "holds the point in place; may turn", "pin"),
    Form("support", "roller", "pushes up, or pulls down; free to roll sideways", "roller"),
    Form("support", "roller pushes DIRECTION", "acts along that line, either way", "roller pushes right"),
    Form("support", "roller on slope AXIS LENGTH AXIS LENGTH", "acts square to the slope", "roller on slope right 4 up 3"),
    Form("support", "contact pushes DIRECTION", "a smooth surface: pushes only", "contact pushes at 30 deg above left"),
    Form("support", "contact on slope …", "pushes square to the slope, away from it upwards", "contact on slope right 4 up 3"),
    Form("support", "rocker pushes DIRECTION", "a rounded foot: pushes only", "rocker pushes up"),
    Form("support", "knife edge pushes DIRECTION", "rests on a sharp edge: pushes only", "knife edge pushes up"),
    Form(
        "support",
        "smooth surface | wall | floor pushes DIRECTION",
        "leans on it or stands on it: pushes only; also `on slope …`",
        "smooth wall pushes right",
    ),
    Form("support", "slot along DIRECTION", "its pin slides in a slot of the ground", "slot along right 4 up 3"),
    Form("support", "collar along DIRECTION", "a collar pinned to it slides on a rod of the ground", "collar along up"),
    Form("support", "guide along DIRECTION", "slides along, does not turn", "guide along right"),
    Form("support", "fixed", "built in: neither moves nor turns", "fixed"),
    Form(
        "support",
        "link | cord DIRECTION",
        "a link to a point of the ground that needs no name, the direction as seen from here; `along` may stand before it",
        "cord at 30 deg above left",
    ),
    Form("support", "… on MEMBER", "where several members meet: holds that one", "fixed on post"),
    Form(
        "contact",
        "MEMBER pushes MEMBER DIRECTION",
        "at that point, which lies on both; the other way round it pushes as much",
        "drum pushes lever up",
    ),
    Form(
        "slot",
        "MEMBER in MEMBER",
        "a pin of the first slides in a slot of the second, along the straight run of it there; it presses either face, square to it",
        "crank in lever",
    ),
    Form("slot", "MEMBER in ground along DIRECTION", "in a slot of the ground", "crank in ground along 30 deg"),
    Form("slot", "… from POINT to POINT", "where the slot ends; the pin must be within it", "crank in lever from P to Q"),
    Form("collar", "MEMBER on MEMBER", "a collar pinned to the first slides on the second: one force square to it", "arm on rod"),
    Form("collar", "MEMBER on MEMBER, built on", "a collar built on the first: a force and a couple", "arm on rod, built on"),
    Form("collar", "MEMBER on ground along DIRECTION …", "on a rod of the ground", "arm on ground along up, built on"),
    Form("load", "FORCE at POINT DIRECTION", "a force; the parts after it may stand in any order", "300 N at E right 3 down 4"),
    Form("load", "FORCE at POINT POINT … DIRECTION", "the same force at each of several points", "420 lb down at C, E and G"),
    Form("load", "LETTER at POINT DIRECTION", "a force that keeps its letter", "P at C at 30 deg"),
    Form(
        "load",
        "NUMBER LETTER at POINT DIRECTION",
        "a letter that is `unknown` under letters: a load to be found",
        "2P at C left",
    ),
    Form("load", "LETTER clockwise | anticlockwise on MEMBER", "the same for a couple", "M anticlockwise on drum"),
    Form("load", "NAME = FORCE …", "a force with a name", "Q = 300 N at E down"),
    Form(
        "load",
        "FORCE at POINT on MEMBER …",
        "where members share the point: on that one, not on the pin",
        "2 kN at C on arm down",
    ),
    Form(
        "load",
        "(NUMBER AXIS, NUMBER AXIS) UNIT at POINT",
        "a force by components (quote it within [ ])",
        "(3 right, 4 down) kN at E",
    ),
    Form(
        "load",
        "MOMENT clockwise | anticlockwise on MEMBER",
        "a couple; `at POINT` says where it is drawn",
        "1.5 kN m anticlockwise on arm at D",
    ),
    Form("load", "FORCE/LENGTH DIRECTION on MEMBER", "a uniform load over the whole member", "4 kN/m down on arm"),
    Form("load", "FORCE/LENGTH DIRECTION on MEMBER from POINT to POINT", "over a part of it", "4 kN/m down on arm from C to E"),
    Form("load", "FORCE/LENGTH DIRECTION from POINT to POINT", "over members in line", "4 kN/m down from C to E"),
    Form(
        "load",
        "FORCE/LENGTH to FORCE/LENGTH …",
        "rising or falling evenly from the first point to the second",
        "0 to 3 kN/m down on arm from C to E",
    ),
    Form(
        "load",
        "FORCE/AREA over LENGTH …",
        "a pressure on a strip so wide, uniform or varying",
        "0 to 30 kN/m^2 over 2 m right on wall from A to B",
    ),
    Form(
        "load",
        "… per horizontal length | per vertical length",
        "measured over the projection",
        "2 kN/m down on arm from C to E per horizontal length",
    ),
    Form(
        "load", "weight of MEMBER MASS | FORCE", "at the middle of a straight member, or `at POINT`", "weight of arm 20 kg at D"
    ),
    Form("load", "weight of BLOCK MASS | FORCE", "at its point; the same for a disc, at its centre", "weight of sack 500 N"),
    Form("load", "mass MASS hangs at POINT", "a body that hangs from a point", "mass 50 kg hangs at E"),
    Form("asked", "POINT", "the reaction at a support, or the force at a pin of two members", "O"),
    Form("asked", "POINT-POINT", "the force in a link or a two-force member", "B-D"),
    Form("asked", "POINT on MEMBER", "the force at a pin, on that member", "C on arm"),
    Form("asked", "CORD", "the tension in a cord", "T"),
    Form("asked", "LETTER", "a load to be found", "P"),
    Form("asked", "… x | y | couple | magnitude", "one component of it", "O x"),
    Form("asked", "force in … | tension in … | reaction at …", "the same, read aloud", "reaction at O"),
    Form("asked", "all links", "each link and two-force member", "all links"),
    Form("asked", "all cords", "the tension in each cord", "all cords"),
    Form("asked", "all reactions", "the reaction at each support", "all reactions"),
    Form("asked", "everything", "all reactions, links and pin forces", "everything"),
    Form(
        "sum",
        "moments about POINT on BODY",
        "a BODY is a member, `pin C`, `whole`, or several with `and`",
        "moments about A on arm and post",
    ),
    Form(
        "sum",
        "… on pins POINT, POINT and POINT",
        "the part of a truss that holds these pins, as a section cuts it off",
        "moments about C on pins A, B and F",
    ),
    Form("sum", "forces along DIRECTION on BODY", "x and y mean right and up", "forces along x on whole"),
)
