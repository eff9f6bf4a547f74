"""The text a figure is lettered with: the caller composes it, this room only finds places for it."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import field, replace

from unpin.base.record import record
from unpin.draw import label as labels
from unpin.draw.label import Label
from unpin.exact.number import Number
from unpin.model.action import Action
from unpin.model.values import Quantity


def bare(quantity: Quantity) -> Label:
    """The author's own text, else the letter, else the SI number: for a figure drawn without the rest of the program."""
    return labels.upright(quantity.written or quantity.letter or f"{float(quantity.value):.4g}")


@record
class Lettering:
    """`labels`: by id of an action or an unknown, by name of a point or a part, by name of a load (`load2`); an empty label
    leaves the thing unlabelled. `text`: a length, angle, force, intensity or bare number (dimension NUMBER, for the legs of
    a slope) as a label. `spoken`: spoken name of an action or load by id. `title`, `description`: of the figure."""

    labels: Mapping[str, Label] = field(default_factory=dict)
    text: Callable[[Quantity], Label] = bare
    spoken: Mapping[str, str] = field(default_factory=dict)
    title: str = ""
    description: str = ""

    def point(self, name: str) -> Label:
        return self.labels.get(name, labels.italic(name))

    def action(self, action: Action) -> Label:
        """Its own label, else its symbol, else its value; without a sign, for the arrow has the sense."""
        if action.id in self.labels:
            return self.labels[action.id]
        if action.symbol is not None:
            return labels.symbol(action.symbol.base, action.symbol.sub)
        return self.text(replace(action.value, value=abs(action.value.value), written="")) if action.value is not None else ()

    def size(self, action: Action, value: Number) -> Label:
        """A found value without its sign."""
        from unpin.base.units import FORCE, MOMENT

        if action.id in self.labels:
            return self.labels[action.id]
        return self.text(Quantity(abs(value), MOMENT if action.kind == "couple" else FORCE))

    def name(self, action: Action) -> str:
        return self.spoken.get(action.id, labels.plain(self.action(action)) or action.id)
