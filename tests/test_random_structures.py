"""The random structures really hold every kind of connection, load, pin and direction, and both sound and unsound verdicts."""

from __future__ import annotations

from collections import Counter

from strategies import EXPECTED, tallied
from structures import MUTATIONS, structure
from tally import COUNTS
from unpin.statics import assemble, sound


def test_every_kind_and_every_verdict_is_met():
    before = {table: Counter(c) for table, c in COUNTS.items()}
    verdicts = Counter()
    for seed in range(120):
        s = sound(assemble(tallied(structure(seed, 1 + seed % 3, 1 + seed % 2, MUTATIONS[seed % len(MUTATIONS)], ("rational", "angle")[seed % 2]))))
        verdicts.update([("sound" if s.determinate else "moves" * bool(s.freedoms) + "strained" * bool(s.self_stresses), s.holds)])
    met = {table: {name for name, n in c.items() if n > before.get(table, Counter())[name]} for table, c in COUNTS.items()}

    assert {table: names - met.get(table, set()) for table, names in EXPECTED.items()} == {table: set() for table in EXPECTED}
    assert {("sound", True), ("moves", True), ("moves", False), ("strained", True), ("movesstrained", True),
            ("movesstrained", False)} <= verdicts.keys()
