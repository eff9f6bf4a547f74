"""A folder of problems as a list: shown, as data, or written as a page."""

from __future__ import annotations

import sys
from argparse import Namespace
from pathlib import Path

from unpin.commands.stop import FAULTY, MISUSE, SOLVED, Stop
from unpin.commands.writing import ending_of, print_data, save_as
from unpin.words.sentences import say


def run(chosen: Namespace) -> int:
    """Tell the list of the folder in the form asked for; returns the exit status."""
    from unpin.register import ENDINGS, as_data, as_markdown, as_page, as_text, index

    ending = ending_of(chosen.output, ENDINGS) if chosen.output else ""
    try:
        from unpin import bundled

        here = Path(chosen.folder).is_dir() or chosen.folder != "examples"
        entries = index(chosen.folder if here else bundled.folder())
    except NotADirectoryError as fault:
        raise Stop(MISUSE, "no_folder", folder=chosen.folder) from fault
    if ending:
        text = as_page(entries, chosen.tongue) if ending == ".html" else f"# {say('index.title', chosen.tongue)}\n\n{as_markdown(entries, chosen.tongue)}"
        save_as(chosen.output, text.encode(), "")
    elif chosen.json:
        print_data(as_data(entries, chosen.tongue))
    else:
        sys.stdout.write(as_text(entries, chosen.tongue))
    return SOLVED if all(e.solved for e in entries) else FAULTY
