"""A roller on a smooth track: one force square to the track, acting either way; the part may turn and roll along."""

from unpin.model.kinds.kind import Kind

KIND = Kind("roller", pushes=("normal",), freedoms=("turn", "slide"), stops=("square",), symbol="roller", needs_direction=True,
            either_way=True)
