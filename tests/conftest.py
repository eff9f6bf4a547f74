"""Profiles of the random tests, and the tally of what the random structures were made of."""

from __future__ import annotations

import os

from hypothesis import HealthCheck, settings

import tally

_QUIET = [HealthCheck.too_slow, HealthCheck.data_too_large, HealthCheck.filter_too_much]
settings.register_profile("ci", derandomize=True, max_examples=120, deadline=None, database=None, suppress_health_check=_QUIET)
settings.register_profile("wide", max_examples=int(os.environ.get("UNPIN_MANY", "400")), deadline=None, suppress_health_check=_QUIET, print_blob=True)
settings.load_profile(os.environ.get("UNPIN_EXAMPLES", "ci"))


def pytest_terminal_summary(terminalreporter):
    for line in tally.lines():
        terminalreporter.write_line(line)
