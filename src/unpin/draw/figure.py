"""The door of the room: five figures, and `draw`, which makes a scene of one.

scene = draw(problem_figure(structure, lettering))
text = unpin.draw.svg.write(scene)
"""

from unpin.draw.compose import compose as draw
from unpin.draw.figures.apart import apart_figure
from unpin.draw.figures.final import final_figure
from unpin.draw.figures.free_body import free_body_figure
from unpin.draw.figures.motion import motion_figure
from unpin.draw.figures.problem import problem_figure
from unpin.draw.items import Fact, Figure
from unpin.draw.lettering import Lettering

__all__ = [
    "Fact",
    "Figure",
    "Lettering",
    "apart_figure",
    "draw",
    "final_figure",
    "free_body_figure",
    "motion_figure",
    "problem_figure",
]
