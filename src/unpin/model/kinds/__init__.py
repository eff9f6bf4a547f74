"""One file of facts for each kind of connection; `KINDS` is the table of them all."""

from unpin.model.kinds import contact, fixed, guide, link, pin, roller
from unpin.model.kinds.kind import Kind

KINDS: dict[str, Kind] = {k.KIND.name: k.KIND for k in (pin, roller, fixed, guide, contact, link)}
