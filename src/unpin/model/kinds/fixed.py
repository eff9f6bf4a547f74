"""A built-in end or a weld: two components and a couple; nothing may move."""

from unpin.model.kinds.kind import Kind

KIND = Kind("fixed", pushes=("right", "up", "couple"), freedoms=(), stops=("sideways", "up_down", "turn"), symbol="fixed",
            of_point="pin")
