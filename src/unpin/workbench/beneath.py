"""Pictures that were asked to be published under a figure: taken once, checked, and kept in memory until the desk is closed."""

from __future__ import annotations

import base64
import binascii
from collections import OrderedDict
from hashlib import sha256
from math import isfinite
from threading import Lock
from typing import Any

from unpin.model.beneath import Beneath, Lay
from unpin.workbench.folder import Refused

MOST = 4
KINDS = ("data:image/png;base64,", "data:image/jpeg;base64,")


class Pictures:
    """The pictures of this desk, by a key that the page names in its requests. The oldest goes when there are too many."""

    def __init__(self):
        self._kept: OrderedDict[str, Beneath] = OrderedDict()
        self._lock = Lock()

    def take(self, data: dict[str, Any]) -> str:
        """`source`: a data address; `size`: its pixels as it is looked at; `lay`: a, b, x, y, metres of a pixel; `faded`. Gives the key.
        Refused when it is no picture."""
        made = _checked(data)
        key = sha256(repr(made).encode()).hexdigest()[:32]
        with self._lock:
            self._kept[key] = made
            self._kept.move_to_end(key)
            while len(self._kept) > MOST:
                self._kept.popitem(last=False)
        return key

    def named(self, key: str) -> Beneath | None:
        """The picture of a key, None for no key. Refused when it is not kept, or no more."""
        if not key:
            return None
        with self._lock:
            if key not in self._kept:
                raise Refused("picture", 404)
            return self._kept[key]


def _checked(data: dict[str, Any]) -> Beneath:
    from unpin.pictures import Unfit, picture
    from unpin.render.typeset import TypesetterMissing

    source, lay = str(data["source"]), Lay(*(float(data["lay"][k]) for k in "abxy"))
    kind = next((k for k in KINDS if source.startswith(k)), None)
    numbers = (lay.a, lay.b, lay.x, lay.y, float(data.get("faded", 0.4)))
    if kind is None or not all(map(isfinite, numbers)) or not lay.a and not lay.b:
        raise Refused("picture", 422)
    try:
        wide, high = (int(n) for n in data["size"])
        return picture(base64.b64decode(source[len(kind):], validate=True), lay, (wide, high), numbers[4])
    except (binascii.Error, Unfit, TypesetterMissing) as fault:
        raise Refused("picture", 422) from fault
