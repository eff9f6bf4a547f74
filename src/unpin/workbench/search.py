"""One search for a route as a program: a request as JSON on standard input, the result as JSON on standard output."""

from __future__ import annotations

import json
import sys
from typing import Any


def searched(request: dict[str, Any]) -> dict[str, Any]:
    """The route of a text, or the code of the reason why there is none."""
    from unpin.base.diagnostic import Defect
    from unpin.workbench.folder import Refused
    from unpin.workbench.hand import shortest

    try:
        return shortest(str(request["text"]), str(request["kind"]), str(request["language"]))
    except Refused as refused:
        return {"ok": False, "code": refused.code}
    except Defect:
        return {"ok": False, "code": "proof"}


if __name__ == "__main__":
    from unpin.workbench.answering import bounded, end_with_parent
    from unpin.workbench.engine import MEMORY

    end_with_parent()
    bounded(MEMORY)
    sys.stdout.write(json.dumps(searched(json.load(sys.stdin))))
