"""Changes to the text of a problem file that leave everything else of it as it is: remarks, order, spacing, quotes, line ends.

Read `edit` (a stretch and its new text) first, then `layout` (where everything stands), `entries` (what is put in and taken out),
`places` (names and who uses them), `revision` (how a change is proved), and the changes themselves in `changes` and `names`.

>>> made = rename("points: {A: [0, 0], B: A right 2}  # a beam\\nmembers: {beam: A B}\\nsupports: {A: fixed}", "A", "O")
>>> print(made.text)
points: {O: [0, 0], B: O right 2}  # a beam
members: {beam: O B}
supports: {O: fixed}
"""

from unpin.read.edits.changes import add, change, dependants, lead_through, place, put, remove
from unpin.read.edits.edit import Edit, apply, inverse
from unpin.read.edits.names import rename
from unpin.read.edits.places import Used
from unpin.read.edits.revision import Revision

__all__ = ["Edit", "Revision", "Used", "add", "apply", "change", "dependants", "inverse", "lead_through", "place", "put", "remove", "rename"]
