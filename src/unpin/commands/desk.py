"""The command that opens the desk: a folder served on the loopback address until the command is stopped."""

from __future__ import annotations

from argparse import Namespace

from unpin.commands.stop import MISUSE, SOLVED, UNWRITTEN, Stop


def run(chosen: Namespace) -> int:
    """Serve `chosen.folder`; returns the exit status once it is closed."""
    from unpin.workbench import serve

    try:
        serve.run(chosen.folder, chosen.port, chosen.tongue, lambda address: serve.announce(address, chosen.folder, chosen.tongue, not chosen.quiet))
    except serve.CannotOpen as fault:
        raise Stop(UNWRITTEN if fault.code == "no_library" else MISUSE, fault.code, **fault.arguments) from fault
    return SOLVED
