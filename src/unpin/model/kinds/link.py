"""A weightless link pinned at both ends: one force along the line of its pins, tension positive; two turns are free."""

from unpin.model.kinds.kind import Kind

KIND = Kind("link", pushes=("line",), freedoms=("turn", "turn_far"), stops=("along",), symbol="link", ends=2, axial=True, support=False)
