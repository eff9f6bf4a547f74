"""Catalogues: every code that is used exists, and every sentence is used and filled with what it asks for."""

import ast
import re
from pathlib import Path
from string import Formatter

import pytest

import unpin
from unpin.words.sentences import catalogue, pieces, say

PACKAGE = Path(unpin.__file__).parent
SOURCES = [p for p in sorted(PACKAGE.rglob("*.py")) if "/read/" not in p.as_posix()]


def calls(name: str):
    """(file, first argument, keyword names or keys) of every call of a function by a plain string."""
    for path in SOURCES:
        for node in ast.walk(ast.parse(path.read_text("utf-8"))):
            if isinstance(node, ast.Call) and getattr(node.func, "id", "") == name and node.args and isinstance(node.args[0], ast.Constant):
                yield path, node


def placeholders(text: str) -> set[str]:
    return {name for _, name, _, _ in Formatter().parse(text) if name}


def test_every_text_of_a_lesson_has_its_sentence_and_gets_its_arguments():
    words = catalogue("lesson")
    seen = 0
    for path, node in calls("Text"):
        code = node.args[0].value
        assert code in words, f"{path.name}: {code}"
        given = node.args[1] if len(node.args) > 1 else None
        if given is None:
            assert not placeholders(words[code]), code
        elif isinstance(given, ast.Dict) and all(k is not None for k in given.keys):
            keys = {k.value for k in given.keys if isinstance(k, ast.Constant)}
            assert placeholders(words[code]) <= keys, code
        seen += 1
    assert seen > 80


def test_every_message_of_the_command_exists():
    for name in ("say", "Stop"):
        for path, node in calls(name):
            code = node.args[0].value if name == "say" else node.args[1].value if len(node.args) > 1 else ""
            if isinstance(code, str) and code:
                say_code = code if name == "say" else f"cli.{code}"
                assert pieces(say_code) is not None, f"{path.name}: {code}"


@pytest.mark.parametrize("subject", ["lesson", "cli", "speech"])
def test_every_sentence_is_used(subject):
    source = "\n".join(p.read_text("utf-8") for p in SOURCES)
    made = re.findall(r'f"([\w.]*)\{', source)
    unused = []
    for code in catalogue(subject):
        literal = f'"{code}"' in source or f'.{code}"' in source
        built = any(start and code.startswith(start.removeprefix(f"{subject}.")) for start in made)
        whole_table = code.split(".")[0] in ("list", "unit", "one", "arrow", "member", "answer", "asked", "ways", "reason", "result", "thing_capital", "sense")
        if not (literal or built or whole_table):
            unused.append(code)
    assert not unused


def test_a_sentence_without_an_argument_is_an_error_not_a_gap():
    with pytest.raises(KeyError):
        say("lesson.thing.member")
