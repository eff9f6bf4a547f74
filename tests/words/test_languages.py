"""Every language says everything: the same codes as English, the same arguments in them, the forms its own grammar needs."""

import re
from pathlib import Path
from string import Formatter

import pytest

import unpin
from unpin.words.sentences import catalogue

FOLDER = Path(unpin.__file__).parent / "words" / "catalogue"
LANGUAGES = sorted(p.name for p in FOLDER.iterdir() if p.is_dir())
SUBJECTS = sorted(p.stem for p in (FOLDER / "en").glob("*.toml") if p.stem != "language")
"""`language.toml` holds facts of a language, not sentences; what it must state is tested by itself."""

OTHERS = [(language, subject) for language in LANGUAGES if language != "en" for subject in SUBJECTS]
NAMES = {"zero", "one", "two", "few", "many", "other"}
_PERCENT = re.compile(r"%(?:\(\w+\))?[sdr]")


def families(language: str, subject: str) -> set[str]:
    """Codes of which there are several forms; a code that only ends in `other` is none."""
    heads = [code.rpartition(".")[0] for code in catalogue(subject, language) if code.rpartition(".")[2] in NAMES]
    return {head for head in heads if heads.count(head) > 1}


def forms(language: str, subject: str) -> dict[str, dict[str, str]]:
    """Of every code its forms by name; a sentence without forms has the one form ""."""
    several = families(language, subject) | families("en", subject)
    found: dict[str, dict[str, str]] = {}
    for code, text in catalogue(subject, language).items():
        head, _, last = code.rpartition(".")
        if last in NAMES and head in several:
            found.setdefault(head, {})[last] = text
        else:
            found[code] = {"": text}
    return found


def needed(language: str) -> set[str]:
    """The names of forms that the grammar of a language has."""
    return {c.removeprefix("plural.") for c in catalogue("language", language) if c.startswith("plural.")} | {"other"}


def arguments(text: str) -> set[str]:
    return {name for _, name, _, _ in Formatter().parse(text) if name is not None} if "%(" not in text else set()


def listed(what: str, codes) -> str:
    return what + "".join(f"\n    {c}" for c in sorted(codes))


@pytest.mark.parametrize("language", LANGUAGES)
def test_a_language_has_a_file_for_every_subject(language):
    there = {p.stem for p in (FOLDER / language).glob("*.toml")}
    assert there == {*SUBJECTS, "language"}, f"catalogue/{language}: wanted the files {', '.join([*SUBJECTS, 'language'])}"


@pytest.mark.parametrize(("language", "subject"), OTHERS)
def test_a_language_has_every_sentence_and_no_other(language, subject):
    english, other = forms("en", subject), forms(language, subject)

    missing, unknown = english.keys() - other.keys(), other.keys() - english.keys()
    assert not missing, listed(f"{len(missing)} sentences are missing in catalogue/{language}/{subject}.toml:", missing)
    assert not unknown, listed(f"catalogue/{language}/{subject}.toml says what English does not know:", unknown)


@pytest.mark.parametrize(("language", "subject"), OTHERS)
def test_a_sentence_in_another_language_takes_the_same_arguments(language, subject):
    english, other = forms("en", subject), forms(language, subject)
    wrong = []
    for code in english.keys() & other.keys():
        every = set().union(*map(arguments, english[code].values()))
        main = arguments(english[code].get("other", english[code].get("", "")))
        for form, text in other[code].items():
            found = arguments(text)
            if not found <= every or form in ("", "other") and found | {"count"} != main | {"count"}:
                wrong.append(f"{code}{'.' * bool(form)}{form}: holds {sorted(found)}, wanted {sorted(main)}")
            if sorted(_PERCENT.findall(text)) != sorted(_PERCENT.findall(next(iter(english[code].values())))):
                wrong.append(f"{code}: the signs after % differ")
    assert not wrong, listed(f"catalogue/{language}/{subject}.toml, arguments:", wrong)


@pytest.mark.parametrize(("language", "subject"), [("en", s) for s in SUBJECTS] + OTHERS)
def test_a_sentence_with_forms_has_all_forms_of_its_language(language, subject):
    wanted = needed(language)
    wrong = [f"{code}: has {sorted(found)}, wanted {sorted(wanted)}" for code, found in forms(language, subject).items()
             if "" not in found and found.keys() != wanted]
    assert not wrong, listed(f"catalogue/{language}/{subject}.toml, forms:", wrong)


@pytest.mark.parametrize(("language", "subject"), OTHERS)
def test_no_sentence_is_left_empty_where_english_says_something(language, subject):
    english, other = forms("en", subject), forms(language, subject)
    empty = [code for code in english.keys() & other.keys() if any(english[code].values()) and not all(other[code].values())]
    assert not empty, listed(f"catalogue/{language}/{subject}.toml, empty:", empty)


@pytest.mark.parametrize("language", LANGUAGES)
def test_the_desk_offers_every_language_there_is(language):
    """The page makes its choices of the keys, so each language has one in every language."""
    beginning = "page.hand.language."
    offered = {key.removeprefix(beginning) for key in catalogue("desk", language) if key.startswith(beginning)}

    assert offered == {"auto", *LANGUAGES}
