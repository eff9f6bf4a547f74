"""`python -m unpin` is the command."""

from unpin.cli import main

if __name__ == "__main__":
    raise SystemExit(main())
