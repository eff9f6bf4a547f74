"""A rocker: a rounded foot that rolls on a smooth surface and can only push, square to it."""

from unpin.model.kinds.kind import Kind

KIND = Kind("rocker", pushes=("normal",), freedoms=("turn", "slide"), stops=("into",), symbol="rocker", push_only=True,
            needs_direction=True, between=False)
