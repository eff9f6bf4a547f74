"""A collar pinned to the first part that slides on a straight smooth rod, the second: one force square to the rod, no couple."""

from unpin.model.kinds.kind import Kind

KIND = Kind("collar", pushes=("normal",), freedoms=("turn", "slide"), stops=("square",), symbol="collar", needs_direction=True, track=True,
            owned=True)
