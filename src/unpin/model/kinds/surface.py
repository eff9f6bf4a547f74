"""A smooth surface of the ground that the part leans on or stands on: one force square to it that can only push."""

from unpin.model.kinds.kind import Kind

KIND = Kind("surface", pushes=("normal",), freedoms=("turn", "slide"), stops=("into",), symbol="surface", push_only=True,
            needs_direction=True, between=False, said=("smooth surface", "smooth wall", "smooth floor"))
