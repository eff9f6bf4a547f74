"""A pin of the first part in a smooth slot of the second, straight or an arc: one force square to the slot, pressing either face."""

from unpin.model.kinds.kind import Kind

KIND = Kind("slot", pushes=("normal",), freedoms=("turn", "slide"), stops=("square",), symbol="slot", needs_direction=True, track=True,
            owned=True)
