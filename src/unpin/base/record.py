"""Plain frozen records: a dataclass in everything but the price of making it.

`dataclass(frozen=True)` writes and compiles six methods a class, which is half of the start of a short command. Here only
`__init__` is compiled; the other methods are shared and look the fields up. `dataclasses.replace`, `fields`, `field` and
`match` work as ever. An attribute can be set once, by `__init__`.

>>> @record
... class Spot:
...     x: int
...     note: str = ""
>>> Spot(2) == Spot(2, ""), Spot(2)
(True, Spot(x=2, note=''))
"""

from __future__ import annotations

from dataclasses import MISSING, Field, FrozenInstanceError, dataclass, field, fields
from operator import attrgetter
from typing import Any, dataclass_transform


@dataclass_transform(frozen_default=True, field_specifiers=(field,))
def record(cls: type) -> type:
    """Make a class a frozen record with equality, hash and repr from its fields."""
    assert not hasattr(cls, "__post_init__"), cls  # nothing would call it
    made = dataclass(init=False, repr=False, eq=False)(cls)
    own = fields(made)
    made.__init__ = _init_of(own)
    compared = [f.name for f in own if f.compare]
    hashed = [f.name for f in own if (f.compare if f.hash is None else f.hash)]
    made._compared = staticmethod(attrgetter(*compared)) if compared else staticmethod(_nothing)
    made._hashed = staticmethod(attrgetter(*hashed)) if hashed else staticmethod(_nothing)
    made.__eq__, made.__hash__, made.__setattr__, made.__delattr__ = _equal, _hash, _set_once, _keep
    if "__repr__" not in cls.__dict__:
        made.__repr__ = _shown
    return made


class _Factory:
    """Stands for a default that is made anew each time."""

    def __repr__(self) -> str:
        return "<factory>"


_FACTORY = _Factory()


def _init_of(own: tuple[Field, ...]):
    """An `__init__` that puts its arguments where the attributes are: records are made by the thousand, and to pass the guard
    against changes with every field would cost more than all the rest."""
    names: dict[str, object] = {"_FACTORY": _FACTORY}
    # A field may have any name but these two.
    takes, puts = ["_record"], ["_fields = _record.__dict__"]
    for f in own:
        default, value = "", f.name
        if f.default is not MISSING:
            default, names[f"_of_{f.name}"] = f"=_of_{f.name}", f.default
        elif f.default_factory is not MISSING:
            default, names[f"_of_{f.name}"] = "=_FACTORY", f.default_factory
            value = f"_of_{f.name}() if {f.name} is _FACTORY else {f.name}"
        takes.append(f.name + default)
        puts.append(f"_fields[{f.name!r}] = {value}")
    body = "\n ".join(puts)
    exec(f"def __init__({', '.join(takes)}):\n {body}", names)  # the names are those of our own classes
    made: Any = names["__init__"]
    made.__annotations__ = {**{f.name: f.type for f in own}, "return": None}
    return made


def _nothing(_: object) -> None:
    return None


def _equal(self, other):
    if other.__class__ is not self.__class__:
        return NotImplemented
    return self is other or self._compared(self) == self._compared(other)


def _hash(self):
    return hash((self.__class__, self._hashed(self)))


def _set_once(self, name, value):
    held = self.__dict__
    if name in held or name not in self.__dataclass_fields__:
        raise FrozenInstanceError(f"cannot assign to field {name!r}")
    held[name] = value


def _keep(self, name):
    raise FrozenInstanceError(f"cannot delete field {name!r}")


def _shown(self):
    return f"{self.__class__.__qualname__}({', '.join(f'{f.name}={getattr(self, f.name)!r}' for f in fields(self) if f.repr)})"
