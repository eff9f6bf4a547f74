"""Plain frozen records: a dataclass in everything but the price of making it.

`dataclass(frozen=True)` writes and compiles six methods a class, about 1 ms each for the hundred and fifty classes that a short command
imports. Here a class costs next to nothing until it is used: the first of it are made by one shared function, its fields are looked
at when somebody asks for them, and only a class of which many are made gets an `__init__` of its own (0.15 ms to compile, then 0.7
microseconds a record instead of 2). `dataclasses.replace`, `fields`, `field` and `match` work as ever. An attribute can be set once.

>>> @record
... class Spot:
...     x: int
...     note: str = ""
>>> Spot(2) == Spot(2, ""), Spot(2)
(True, Spot(x=2, note=''))
"""

from __future__ import annotations

from _thread import RLock  # `threading` takes as long as three modules of ours
from collections.abc import Callable
from dataclasses import MISSING, Field, FrozenInstanceError, dataclass, field, fields
from operator import attrgetter
from typing import Any, dataclass_transform

MANY = 16
"""From so many records on, compiling an `__init__` has paid for itself after some hundred more."""


@dataclass_transform(frozen_default=True, field_specifiers=(field,))
def record(cls: type) -> type:
    """Make a class a frozen record with equality, hash and repr from its fields."""
    assert not hasattr(cls, "__post_init__"), cls  # nothing would call it
    defaults = _defaults(cls)
    cls.__match_args__ = tuple(defaults)
    cls.__init__ = _shared_init(cls, defaults)
    for name in ("__dataclass_fields__", "_compared", "_hashed"):
        setattr(cls, name, _Later(cls, name))
    cls.__eq__, cls.__hash__, cls.__setattr__, cls.__delattr__ = _equal, _hash, _set_once, _keep
    if "__repr__" not in cls.__dict__:
        cls.__repr__ = _shown
    return cls


@dataclass_transform(field_specifiers=(field,))
def open_record(cls: type) -> type:
    """Make a class a record of what is being gathered: its fields may change, and it is equal to nothing but itself."""
    cls.__init__ = _shared_init(cls, _defaults(cls))
    return cls


class _Later:
    """An attribute that a class gets when it is first asked for: all of them at once, from the fields that `dataclass` finds."""

    _one_at_a_time = RLock()  # the desk looks at problems in several threads

    def __init__(self, cls: type, name: str) -> None:
        self.cls, self.name = cls, name

    def __get__(self, one: object, _: type) -> Any:
        with self._one_at_a_time:
            if self.cls.__dict__[self.name] is self:
                _complete(self.cls)
        return getattr(self.cls if one is None else one, self.name)


def _complete(cls: type) -> None:
    own = fields(dataclass(init=False, repr=False, eq=False, match_args=False)(cls))
    cls._compared = _picked([f.name for f in own if f.compare])
    cls._hashed = _picked([f.name for f in own if (f.compare if f.hash is None else f.hash)])


def _picked(names: list[str]) -> staticmethod:
    return staticmethod(attrgetter(*names) if names else _nothing)


def _defaults(cls: type) -> dict[str, Any]:
    """The fields in order, those of the class above first, each with its default: a value, a Field or MISSING."""
    found: dict[str, Any] = {}
    for each in reversed(cls.__mro__):
        own = each.__dict__
        found |= {name: own.get(name, MISSING) for name in own.get("__annotations__", ())}
    return found


def _shared_init(cls: type, defaults: dict[str, Any]) -> Callable[..., None]:
    """An `__init__` for the first records of a class, made without compiling anything."""
    names, count, made = tuple(defaults), len(defaults), 0

    def __init__(record, /, *given, **named):
        nonlocal made
        made += 1
        if made == MANY:
            cls.__init__ = _own_init(defaults)
        held = record.__dict__
        held.update(zip(names, given))
        if len(held) == count == len(given):
            return
        held.update(named)
        if len(held) == len(given) + len(named):
            held.update((name, _default(defaults[name])) for name in names if name not in held)
            if len(held) == count and all(value is not MISSING for value in held.values()):
                return
        raise TypeError(f"{cls.__qualname__} takes {', '.join(names)}, not {len(given)} values and {', '.join(named) or 'no names'}")

    return __init__


def _default(said: Any) -> Any:
    if not isinstance(said, Field):
        return said
    return said.default if said.default_factory is MISSING else said.default_factory()


class _Factory:
    """Stands for a default that is made anew each time."""

    def __repr__(self) -> str:
        return "<factory>"


_FACTORY = _Factory()


def _own_init(defaults: dict[str, Any]) -> Callable[..., None]:
    """An `__init__` that puts its arguments where the attributes are: to pass the guard against changes with every field would cost
    more than all the rest."""
    known: dict[str, object] = {"_FACTORY": _FACTORY}
    # A field may have any name but these two.
    takes, puts = ["_record"], ["_fields = _record.__dict__"]
    for name, said in defaults.items():
        takes.append(name)
        value = name
        if isinstance(said, Field) and said.default_factory is not MISSING:
            takes[-1] += "=_FACTORY"
            known[f"_of_{name}"] = said.default_factory
            value = f"_of_{name}() if {name} is _FACTORY else {name}"
        elif (default := _default(said)) is not MISSING:
            takes[-1] += f"=_of_{name}"
            known[f"_of_{name}"] = default
        puts.append(f"_fields[{name!r}] = {value}")
    body = "\n ".join(puts)
    exec(f"def __init__({', '.join(takes)}):\n {body}", known)  # the names are those of our own classes
    return known["__init__"]


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
