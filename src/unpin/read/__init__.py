"""From the text of a problem file to a problem, with every fault of the text told at once.

Read `schema` (the sections) and `forms` (the phrases) first; then `reader`, which goes through a file; `tree` is the YAML
skeleton, `grammar` the phrases, and `points`, `parts`, `loads`, `asked` turn phrases into the words of the model.

>>> structure = "points: {A: [0, 0], B: A right 2}\\nmembers: {beam: A B}\\nsupports: {A: fixed}"
>>> reading = read_text(structure + "\\nloads: [3 N at B down]\\nfind: [A]")
>>> reading.problem.point("B").at, reading.diagnostics
((Fraction(2, 1), Fraction(0, 1)), ())
"""

from unpin.read.reader import Reading, read_file, read_text
from unpin.read.sums import parse_sum

__all__ = ["Reading", "parse_sum", "read_file", "read_text"]
