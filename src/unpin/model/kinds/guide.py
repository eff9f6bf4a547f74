"""A smooth guide that lets a part slide along it but not turn: a force square to it and a couple."""

from unpin.model.kinds.kind import Kind

KIND = Kind("guide", pushes=("normal", "couple"), freedoms=("slide",), stops=("square", "turn"), symbol="guide", needs_direction=True,
            track=True, of_point="slot")
