"""One file of facts for each kind of connection; `KINDS` is the table of them all."""

from unpin.model.kinds import collar, contact, fixed, guide, knife_edge, link, pin, rocker, roller, sleeve, slot, surface
from unpin.model.kinds.kind import Kind

KINDS: dict[str, Kind] = {k.KIND.name: k.KIND for k in (
    pin, roller, fixed, guide, contact, rocker, knife_edge, surface, slot, collar, sleeve, link)}
