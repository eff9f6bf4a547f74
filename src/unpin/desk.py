"""The command that opens the desk: a folder served on the loopback address until the command is stopped."""

from __future__ import annotations


def open_desk(chosen) -> int:
    """Serve `chosen.folder`; returns the exit status once it is closed."""
    from unpin import cli
    from unpin.workbench import serve

    try:
        serve.run(chosen.folder, chosen.port, chosen.tongue, lambda address: serve.announce(address, chosen.folder, chosen.tongue, not chosen.quiet))
    except serve.CannotOpen as fault:
        raise cli.Stop(cli.UNWRITTEN if fault.code == "no_library" else cli.MISUSE, fault.code, **fault.arguments) from fault
    return cli.SOLVED
