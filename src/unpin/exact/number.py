"""Exact numbers: placeholder while the room is built."""
from fractions import Fraction
from typing import Any
Number = Any
