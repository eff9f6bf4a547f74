"""A collar built on the first part that slides on a straight smooth rod, the second: a force square to the rod and a couple."""

from unpin.model.kinds.kind import Kind

KIND = Kind("sleeve", pushes=("normal", "couple"), freedoms=("slide",), stops=("square", "turn"), symbol="sleeve", needs_direction=True,
            said=(), track=True, owned=True, of_point="collar")
