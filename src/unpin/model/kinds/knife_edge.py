"""A knife edge: the part rests on a sharp edge of the ground, which can only push."""

from unpin.model.kinds.kind import Kind

KIND = Kind("knife_edge", pushes=("normal",), freedoms=("turn", "slide"), stops=("into",), symbol="knife_edge", push_only=True,
            needs_direction=True, between=False, said=("knife edge",))
