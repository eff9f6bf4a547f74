"""A smooth surface or edge: one force square to it that can only push; the part may turn and slide along."""

from unpin.model.kinds.kind import Kind

KIND = Kind("contact", pushes=("normal",), freedoms=("turn", "slide"), stops=("into",), symbol="contact", push_only=True,
            needs_direction=True)
