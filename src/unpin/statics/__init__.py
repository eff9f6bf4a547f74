"""The mechanics: take apart, isolate, write, inspect, solve, prove.

Read in this order: `pins`, `assemble`, `isolate`, `equation`, `inspect`, `solve`, `motion`, `sound`, `prove`.
"""

from unpin.statics.answers import answers
from unpin.statics.assemble import assemble
from unpin.statics.equation import sum_about, sum_along
from unpin.statics.inspect import inspect
from unpin.statics.isolate import isolate
from unpin.statics.prove import prove
from unpin.statics.solve import solve
from unpin.statics.sound import sound

__all__ = ["answers", "assemble", "inspect", "isolate", "prove", "solve", "sound", "sum_about", "sum_along"]
