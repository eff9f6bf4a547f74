"""The arguments of every command and their help; all words come from the catalogue, those of argparse itself too."""

from __future__ import annotations

import argparse
from collections.abc import Callable, Mapping
from functools import partial
from math import isfinite, nan
from typing import Any

from unpin.words import sentences

Run = Callable[[argparse.Namespace], int]
Say = Callable[..., str]


def parser(run: Mapping[str, Run], language: str = "en") -> argparse.ArgumentParser:
    """Every command with its help in a language, bound to the function of its name in `run`."""
    say = partial(_say, language)
    argparse._ = partial(_own_word, language)
    top = _Parser(partial(_of_all, say), prog="unpin", description=say("cli.about"), epilog=f"{say('cli.status')} {say('cli.caution')}")
    top.fill()
    commands = top.add_subparsers(metavar=say("cli.word.command"), required=True, help=say("cli.help.command"), prog=top.prog)
    for name, arguments in _ARGUMENTS.items():
        about, ends = say(f"cli.help.{name}"), _ENDS.get(name, "cli.status")
        made = commands.add_parser(name, fill=partial(arguments, say), help=about, description=about, epilog=say(ends) if ends else None)
        made.set_defaults(run=run[name])
    return top


class _Parser(argparse.ArgumentParser):
    """A parser that is given its arguments by `fill` when they are first needed: of all the commands only one runs."""

    def __init__(self, fill: Callable[[argparse.ArgumentParser], None], **more: Any):
        # argparse makes a formatter for every argument it is given, and each would ask the terminal how wide it is.
        super().__init__(formatter_class=partial(argparse.HelpFormatter, width=80), **more)
        self._fill: Callable[[argparse.ArgumentParser], None] | None = fill

    def fill(self) -> None:
        """Give it its arguments, unless it has them."""
        if self._fill:
            self._fill(self)
            self._fill, self.formatter_class = None, argparse.HelpFormatter

    def parse_known_args(self, *given: Any, **named: Any):
        self.fill()
        return super().parse_known_args(*given, **named)

    def format_help(self) -> str:
        self.fill()
        return super().format_help()


def _of_all(say: Say, made: argparse.ArgumentParser) -> None:
    made.add_argument("--version", action="version", version=say("cli.version", version=_version()), help=say("cli.help.version"))
    made.add_argument("--language", dest="first_language", choices=sentences.languages(), default="", help=say("cli.help.language"))


def _solve(say: Say, made: argparse.ArgumentParser) -> None:
    _problem(say, made)
    made.add_argument("--json", action="store_true", help=say("cli.help.json"))
    made.add_argument("--short", action="store_true", help=say("cli.help.short_text"))
    _lesson(say, made)


def _check(say: Say, made: argparse.ArgumentParser) -> None:
    _problem(say, made)
    made.add_argument("--json", action="store_true", help=say("cli.help.json"))


def _ways(say: Say, made: argparse.ArgumentParser) -> None:
    _problem(say, made)
    made.add_argument("--body", metavar=say("cli.word.name"), help=say("cli.help.body"))
    made.add_argument("--json", action="store_true", help=say("cli.help.json"))


def _draw(say: Say, made: argparse.ArgumentParser) -> None:
    _problem(say, made)
    made.add_argument("--which", choices=("problem", "apart", "body", "final", "motion"), help=say("cli.help.which"))
    made.add_argument("--body", metavar=say("cli.word.name"), help=say("cli.help.body"))
    made.add_argument("-o", "--output", metavar=say("cli.word.output"), required=True, help=say("cli.help.picture"))
    _picture(say, made)


def _handout(say: Say, made: argparse.ArgumentParser) -> None:
    _problem(say, made)
    made.add_argument("-o", "--output", metavar=say("cli.word.output"), required=True, help=say("cli.help.handout_out"))
    _left_out(say, made)
    _lesson(say, made)
    _picture(say, made)


def _handouts(say: Say, made: argparse.ArgumentParser) -> None:
    made.add_argument("folder", metavar=say("cli.word.folder"), help=say("cli.help.handouts_folder"))
    made.add_argument("-o", "--output", metavar=say("cli.word.folder"), required=True, help=say("cli.help.handouts_out"))
    made.add_argument("--form", choices=("html", "pdf", "md", "tex"), default="pdf", help=say("cli.help.form"))
    made.add_argument("--jobs", type=_count, default=0, metavar=say("cli.word.number"), help=say("cli.help.jobs"))
    _left_out(say, made)
    _lesson(say, made)
    _habits(say, made)


def _sheet(say: Say, made: argparse.ArgumentParser) -> None:
    made.add_argument("files", nargs="+", metavar=say("cli.word.file"), help=say("cli.help.files"))
    made.add_argument("-o", "--output", metavar=say("cli.word.output"), required=True, help=say("cli.help.handout_out"))
    made.add_argument("--title", default="", metavar=say("cli.word.title"), help=say("cli.help.title"))
    made.add_argument("--marks", type=_marks, default=(), metavar=say("cli.word.marks"), help=say("cli.help.marks"))
    made.add_argument("--answers", action="store_true", help=say("cli.help.answers"))
    _figures(say, made)
    _habits(say, made)


def _desk(say: Say, made: argparse.ArgumentParser) -> None:
    made.add_argument("folder", nargs="?", default=".", metavar=say("cli.word.folder"), help=say("cli.help.desk_folder"))
    made.add_argument("--port", type=int, default=0, metavar=say("cli.word.number"), help=say("cli.help.port"))
    made.add_argument("--quiet", action="store_true", help=say("cli.help.quiet"))
    _tongue(say, made)


def _rename(say: Say, made: argparse.ArgumentParser) -> None:
    made.add_argument("file", metavar=say("cli.word.file"), help=say("cli.help.own_file"))
    made.add_argument("words", nargs="+", metavar=say("cli.word.name"), help=say("cli.help.rename_words"))
    made.add_argument("--kind", metavar=say("cli.word.name"), default="", help=say("cli.help.kind"))
    made.add_argument("--dry-run", action="store_true", help=say("cli.help.dry_run"))
    _tongue(say, made)


def _index(say: Say, made: argparse.ArgumentParser) -> None:
    made.add_argument("folder", metavar=say("cli.word.folder"), help=say("cli.help.index_folder"))
    form = made.add_mutually_exclusive_group()
    form.add_argument("--json", action="store_true", help=say("cli.help.json"))
    form.add_argument("-o", "--output", metavar=say("cli.word.output"), default="", help=say("cli.help.index_out"))
    _tongue(say, made)


def _examples(say: Say, made: argparse.ArgumentParser) -> None:
    made.add_argument("name", nargs="?", metavar=say("cli.word.name"), help=say("cli.help.example"))
    made.add_argument("--copy", metavar=say("cli.word.folder"), help=say("cli.help.copy"))
    _tongue(say, made)


_ARGUMENTS: dict[str, Callable[[Say, argparse.ArgumentParser], None]] = {
    "solve": _solve, "check": _check, "ways": _ways, "draw": _draw, "handout": _handout, "handouts": _handouts, "sheet": _sheet,
    "desk": _desk, "rename": _rename, "index": _index, "examples": _examples,
}
"""What gives each command its arguments, in the order in which help lists the commands."""
_ENDS = {"desk": "cli.help.desk_ends", "examples": ""}
"""What stands at the end of the help of a command, where not the statuses."""


def _own_word(language: str, words: str) -> str:
    """What argparse says in the catalogue's words; it looks its sentences up through one name, as for any translation."""
    return sentences.sentence(f"cli.argparse.{words}", language) or words


def _say(language: str, code: str, **arguments: object) -> str:
    return sentences.say(code, language, **arguments)


def language_asked(arguments: list[str]) -> str:
    """The language that is asked for, before the arguments are read: their help and their faults are to be in it. What the machine is
    set to is not asked."""
    for k, said in enumerate(arguments):
        name, _, value = said.partition("=")
        if name == "--language":
            code = value or (arguments[k + 1] if k + 1 < len(arguments) else "")
            return code if code in sentences.languages() else "en"
    return "en"


def _habits(say: Say, made: argparse.ArgumentParser) -> None:
    """What every command takes that shows something of a problem."""
    made.add_argument("--house", metavar=say("cli.word.style"), default="", help=say("cli.help.house"))
    _tongue(say, made)


def _tongue(say: Say, made: argparse.ArgumentParser) -> None:
    made.add_argument("--language", choices=sentences.languages(), default="", help=say("cli.help.language"))


def _problem(say: Say, made: argparse.ArgumentParser) -> None:
    made.add_argument("file", metavar=say("cli.word.file"), help=say("cli.help.file"))
    _habits(say, made)


def _lesson(say: Say, made: argparse.ArgumentParser) -> None:
    _figures(say, made)
    made.add_argument("--route", choices=("fewest", "recommended", "own"), default="", help=say("cli.help.route"))


def _figures(say: Say, made: argparse.ArgumentParser) -> None:
    made.add_argument("--figures", type=int, default=0, choices=range(2, 9), metavar=say("cli.word.number"), help=say("cli.help.figures"))


def _left_out(say: Say, made: argparse.ArgumentParser) -> None:
    form = made.add_mutually_exclusive_group()
    form.add_argument("--short", action="store_true", help=say("cli.help.short"))
    form.add_argument("--fade", type=int, default=0, choices=range(1, 7), metavar=say("cli.word.number"), help=say("cli.help.fade"))


def _picture(say: Say, made: argparse.ArgumentParser) -> None:
    made.add_argument("--beneath", metavar=say("cli.word.image"), default="", help=say("cli.help.beneath"))
    made.add_argument("--mark", type=partial(_mark, say), action="append", default=[], metavar=say("cli.word.mark"), help=say("cli.help.mark"))
    made.add_argument("--faded", type=int, default=40, choices=range(10, 101), metavar=say("cli.word.number"), help=say("cli.help.faded"))


def _mark(say: Say, said: str) -> tuple[str, tuple[float, float]]:
    """`A=120,340`: a point and a pixel."""
    name, _, at = said.partition("=")
    try:
        across, down = (float(c) for c in at.split(","))
    except ValueError:
        across = down = nan
    if not name or not (isfinite(across) and isfinite(down)):
        raise argparse.ArgumentTypeError(say("cli.beneath.mark", said=said))
    return name, (across, down)


def _marks(said: str) -> tuple[tuple[int, ...], ...]:
    """`5,2+3`: for each problem one number, or one for each part."""
    found = tuple(tuple(int(m) for m in one.split("+")) for one in said.split(","))
    if any(m < 1 for one in found for m in one):
        raise ValueError(said)
    return found


def _count(said: str) -> int:
    """How many at a time, at least one."""
    if not said.isdecimal() or int(said) < 1:
        raise ValueError(said)
    return int(said)


def _version() -> str:
    from unpin import __version__

    return __version__
