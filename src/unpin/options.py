"""The arguments of every command and their help; all words come from the catalogue, those of argparse itself too."""

from __future__ import annotations

import argparse
from collections.abc import Callable, Mapping
from functools import partial
from math import isfinite, nan

from unpin.words import sentences

Run = Callable[[argparse.Namespace], int]
Say = Callable[..., str]


def parser(run: Mapping[str, Run], language: str = "en") -> argparse.ArgumentParser:
    """Every command with its help in a language, bound to the function of its name in `run`."""
    say = partial(_say, language)
    argparse._ = partial(_own_word, language)
    top = argparse.ArgumentParser(prog="unpin", description=say("cli.about"), epilog=f"{say('cli.status')} {say('cli.caution')}")
    top.add_argument("--version", action="version", version=say("cli.version", version=_version()), help=say("cli.help.version"))
    top.add_argument("--language", dest="first_language", choices=sentences.languages(), default="", help=say("cli.help.language"))
    commands = top.add_subparsers(metavar=say("cli.word.command"), required=True, help=say("cli.help.command"))

    solve = _command(say, commands, "solve", run)
    solve.add_argument("--json", action="store_true", help=say("cli.help.json"))
    solve.add_argument("--short", action="store_true", help=say("cli.help.short_text"))
    _lesson_options(say, solve)

    check = _command(say, commands, "check", run)
    check.add_argument("--json", action="store_true", help=say("cli.help.json"))

    ways = _command(say, commands, "ways", run)
    ways.add_argument("--body", metavar=say("cli.word.name"), help=say("cli.help.body"))
    ways.add_argument("--json", action="store_true", help=say("cli.help.json"))

    draw = _command(say, commands, "draw", run)
    draw.add_argument("--which", choices=("problem", "apart", "body", "final", "motion"), help=say("cli.help.which"))
    draw.add_argument("--body", metavar=say("cli.word.name"), help=say("cli.help.body"))
    draw.add_argument("-o", "--output", metavar=say("cli.word.output"), required=True, help=say("cli.help.picture"))
    _picture_options(say, draw)

    handout = _command(say, commands, "handout", run)
    handout.add_argument("-o", "--output", metavar=say("cli.word.output"), required=True, help=say("cli.help.handout_out"))
    form = handout.add_mutually_exclusive_group()
    form.add_argument("--short", action="store_true", help=say("cli.help.short"))
    form.add_argument("--fade", type=int, default=0, choices=range(1, 7), metavar=say("cli.word.number"), help=say("cli.help.fade"))
    _lesson_options(say, handout)
    _picture_options(say, handout)

    folder = commands.add_parser("handouts", help=say("cli.help.handouts"), description=say("cli.help.handouts"), epilog=say("cli.status"))
    folder.add_argument("folder", metavar=say("cli.word.folder"), help=say("cli.help.handouts_folder"))
    folder.add_argument("-o", "--output", metavar=say("cli.word.folder"), required=True, help=say("cli.help.handouts_out"))
    folder.add_argument("--form", choices=("html", "pdf", "md", "tex"), default="pdf", help=say("cli.help.form"))
    folder.add_argument("--jobs", type=_count, default=0, metavar=say("cli.word.number"), help=say("cli.help.jobs"))
    form = folder.add_mutually_exclusive_group()
    form.add_argument("--short", action="store_true", help=say("cli.help.short"))
    form.add_argument("--fade", type=int, default=0, choices=range(1, 7), metavar=say("cli.word.number"), help=say("cli.help.fade"))
    _lesson_options(say, folder)
    folder.set_defaults(run=run["handouts"])
    _habits(say, folder)

    sheet = commands.add_parser("sheet", help=say("cli.help.sheet"), description=say("cli.help.sheet"), epilog=say("cli.status"))
    sheet.add_argument("files", nargs="+", metavar=say("cli.word.file"), help=say("cli.help.files"))
    sheet.add_argument("-o", "--output", metavar=say("cli.word.output"), required=True, help=say("cli.help.handout_out"))
    sheet.add_argument("--title", default="", metavar=say("cli.word.title"), help=say("cli.help.title"))
    sheet.add_argument("--marks", type=_marks, default=(), metavar=say("cli.word.marks"), help=say("cli.help.marks"))
    sheet.add_argument("--answers", action="store_true", help=say("cli.help.answers"))
    sheet.add_argument("--figures", type=int, default=0, choices=range(2, 9), metavar=say("cli.word.number"), help=say("cli.help.figures"))
    sheet.set_defaults(run=run["sheet"])
    _habits(say, sheet)

    desk = commands.add_parser("desk", help=say("cli.help.desk"), description=say("cli.help.desk"), epilog=say("cli.help.desk_ends"))
    desk.add_argument("folder", nargs="?", default=".", metavar=say("cli.word.folder"), help=say("cli.help.desk_folder"))
    desk.add_argument("--port", type=int, default=0, metavar=say("cli.word.number"), help=say("cli.help.port"))
    desk.add_argument("--quiet", action="store_true", help=say("cli.help.quiet"))
    desk.set_defaults(run=run["desk"])
    _tongue(say, desk)

    rename = commands.add_parser("rename", help=say("cli.help.rename"), description=say("cli.help.rename"), epilog=say("cli.status"))
    rename.add_argument("file", metavar=say("cli.word.file"), help=say("cli.help.own_file"))
    rename.add_argument("words", nargs="+", metavar=say("cli.word.name"), help=say("cli.help.rename_words"))
    rename.add_argument("--kind", metavar=say("cli.word.name"), default="", help=say("cli.help.kind"))
    rename.add_argument("--dry-run", action="store_true", help=say("cli.help.dry_run"))
    rename.set_defaults(run=run["rename"])
    _tongue(say, rename)

    index = commands.add_parser("index", help=say("cli.help.index"), description=say("cli.help.index"), epilog=say("cli.status"))
    index.add_argument("folder", metavar=say("cli.word.folder"), help=say("cli.help.index_folder"))
    form = index.add_mutually_exclusive_group()
    form.add_argument("--json", action="store_true", help=say("cli.help.json"))
    form.add_argument("-o", "--output", metavar=say("cli.word.output"), default="", help=say("cli.help.index_out"))
    index.set_defaults(run=run["index"])
    _tongue(say, index)

    examples = commands.add_parser("examples", help=say("cli.help.examples"), description=say("cli.help.examples"))
    examples.add_argument("name", nargs="?", metavar=say("cli.word.name"), help=say("cli.help.example"))
    examples.add_argument("--copy", metavar=say("cli.word.folder"), help=say("cli.help.copy"))
    examples.set_defaults(run=run["examples"])
    _tongue(say, examples)
    return top


def _own_word(language: str, words: str) -> str:
    """What argparse says in the catalogue's words; it looks its sentences up through one name, as for any translation."""
    return sentences.catalogue("cli", language).get(f"argparse.{words}", words)


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


def _command(say: Say, commands, name: str, run: Mapping[str, Run]) -> argparse.ArgumentParser:
    made = commands.add_parser(name, help=say(f"cli.help.{name}"), description=say(f"cli.help.{name}"), epilog=say("cli.status"))
    made.add_argument("file", metavar=say("cli.word.file"), help=say("cli.help.file"))
    made.set_defaults(run=run[name])
    _habits(say, made)
    return made


def _lesson_options(say: Say, made: argparse.ArgumentParser) -> None:
    made.add_argument("--figures", type=int, default=0, choices=range(2, 9), metavar=say("cli.word.number"), help=say("cli.help.figures"))
    made.add_argument("--route", choices=("fewest", "recommended", "own"), default="", help=say("cli.help.route"))


def _picture_options(say: Say, made: argparse.ArgumentParser) -> None:
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
