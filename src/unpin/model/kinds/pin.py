"""A smooth pin: two components of force, and the parts may turn about it."""

from unpin.model.kinds.kind import Kind

KIND = Kind("pin", pushes=("right", "up"), freedoms=("turn",), stops=("sideways", "up_down"), symbol="pin")
