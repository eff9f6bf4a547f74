"""Catalogues: every code that is used exists, and every sentence is used and filled with what it asks for."""

import ast
import re
from pathlib import Path
from string import Formatter

import pytest

import unpin
from unpin.words.sentences import catalogue, languages, pieces, say, sentence

PACKAGE = Path(unpin.__file__).parent
SOURCES = [p for p in sorted(PACKAGE.rglob("*.py")) if "/read/" not in p.as_posix()]


FORMS = {"one", "two", "few", "many", "other"}


def bare(code: str) -> str:
    """A code without the name of its form."""
    head, _, last = code.rpartition(".")
    return head if last in FORMS else code


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
        forms = [text for c, text in words.items() if c == code or c.rpartition(".")[0] == code and c.rpartition(".")[2] in FORMS]
        assert forms, f"{path.name}: {code}"
        given = node.args[1] if len(node.args) > 1 else None
        if given is None:
            assert not any(map(placeholders, forms)), code
        elif isinstance(given, ast.Dict) and all(k is not None for k in given.keys):
            keys = {k.value for k in given.keys if isinstance(k, ast.Constant)}
            assert all(placeholders(text) <= keys for text in forms), code
            assert "count" in keys or len(forms) == 1, f"{path.name}: {code} has forms and gets no number"
        seen += 1
    assert seen > 80


def test_every_message_of_the_command_exists():
    for name in ("say", "Stop"):
        for path, node in calls(name):
            code = node.args[0].value if name == "say" else node.args[1].value if len(node.args) > 1 else ""
            if isinstance(code, str) and code:
                say_code = code if name == "say" else f"cli.{code}"
                assert pieces(say_code, count=2) is not None, f"{path.name}: {code}"


@pytest.mark.parametrize("subject", ["lesson", "cli", "speech"])
def test_every_sentence_is_used(subject):
    source = "\n".join(p.read_text("utf-8") for p in SOURCES)
    made = re.findall(r'f"([\w.]*)\{', source)
    unused = []
    for code in dict.fromkeys(map(bare, catalogue(subject))):
        literal = f'"{code}"' in source or f'.{code}"' in source
        built = any(start and code.startswith(start.removeprefix(f"{subject}.")) for start in made)
        whole_table = code.split(".")[0] in ("list", "unit", "one", "arrow", "member", "answer", "asked", "ways", "reason", "result", "thing_capital", "sense", "argparse")
        if not (literal or built or whole_table):
            unused.append(code)
    assert not unused


@pytest.mark.parametrize("subject", ["lesson", "cli", "speech", "diagnostics"])
def test_a_sentence_with_forms_has_the_one_for_every_other_number(subject):
    known = catalogue(subject)
    forms = {bare(code) for code in known if bare(code) != code and not code.startswith(("one.", "arrow."))}

    assert not [code for code in forms if f"{code}.other" not in known]


def test_a_sentence_without_an_argument_is_an_error_not_a_gap():
    with pytest.raises(KeyError):
        say("lesson.thing.member")


@pytest.mark.parametrize("language", languages())
def test_a_sentence_looked_up_in_its_table_is_that_of_the_whole_catalogue(language):
    for subject in sorted(p.stem for p in (PACKAGE / "words" / "catalogue" / language).glob("*.toml")):
        known = catalogue(subject, language)

        assert {name: sentence(f"{subject}.{name}", language) for name in known} == known
    assert sentence("lesson.word.nowhere", language) is None
    assert sentence("lesson.word", language) is None
