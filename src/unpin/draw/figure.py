"""The door of the room: five figures, and `draw`, which makes a scene of one.

scene = draw(problem_figure(structure, lettering))
text = unpin.draw.svg.write(scene)
"""

from unpin.draw.beneath import under
from unpin.draw.compose import compose
from unpin.draw.figures.apart import apart_figure
from unpin.draw.figures.final import final_figure
from unpin.draw.figures.free_body import free_body_figure
from unpin.draw.figures.motion import motion_figure
from unpin.draw.figures.problem import problem_figure
from unpin.draw.items import Fact, Figure
from unpin.draw.lettering import Lettering
from unpin.draw.scene import Scene

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


def draw(figure: Figure, scale: float = 0.0) -> Scene:
    """The scene of a figure, on its picture if there is one. `scale`: pt per metre, 0 for its own."""
    scene = compose(figure, scale)
    return under(scene, figure.beneath) if figure.beneath else scene
