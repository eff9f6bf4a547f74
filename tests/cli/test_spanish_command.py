"""The command in Spanish: help, faults, lessons, sheets and figures; what is typed stays as it is."""

import argparse
import re

import pytest

from unpin import cli

ENGLISH = re.compile(r"\b(the|and|with|is|of|usage|options|error|missing|problem|answer|wanted|found|COMMAND|FILE|NAME)\b")


def run(capsys, *arguments: str) -> tuple[int, str, str]:
    try:
        status = cli.main(list(arguments))
    except SystemExit as ended:
        status = int(ended.code or 0)
    out, err = capsys.readouterr()
    return status, out, err


def commands() -> list[str]:
    return [name for a in cli.parser()._actions if isinstance(a, argparse._SubParsersAction) for name in a.choices]


@pytest.mark.parametrize("command", commands())
def test_the_help_of_every_command_is_spanish(capsys, command):
    status, out, _ = run(capsys, command, "--language", "es", "--help")
    assert status == 0
    assert "uso: unpin" in out
    assert ENGLISH.search(re.sub(r"\{[^}]*\}|«[^»]*»", "", out)) is None


def test_the_language_may_stand_before_the_command(capsys):
    before, after = run(capsys, "--language", "es", "check", "theatre-hoist"), run(capsys, "check", "theatre-hoist", "--language", "es")
    assert before == after
    assert "¿Está bien planteado el problema?" in before[1]


def test_wrong_use_is_told_in_spanish(capsys):
    status, _, err = run(capsys, "solve", "--language=es")
    assert status == 2
    assert "falta: FICHERO" in err
    assert ENGLISH.search(err) is None


def test_a_fault_of_a_file_is_told_in_spanish(capsys, tmp_path):
    path = tmp_path / "problem.yaml"
    path.write_text("points: {A: [0, 0], B: A right 2}\nmembers: {beam: A B}\nsupports: {A: fixed}\nloads: [3 N at F dwn]\nfind: [A]\n")
    status, _, err = run(capsys, "solve", str(path), "--language", "es")
    assert status == 1
    assert "error: loads > 1: no se conoce el punto «dwn»\n  remedio: quizá se quería decir «down»" in err


def test_a_sheet_a_page_and_a_figure_are_spanish(capsys, tmp_path):
    sheet, figure = tmp_path / "hoja.md", tmp_path / "figura.svg"
    assert run(capsys, "sheet", "boat-trailer", "flag-hoist", "-o", str(sheet), "--marks", "5,6", "--answers", "--language", "es")[0] == 0
    text = sheet.read_text("utf-8")
    assert "11 puntos en total." in text and "(a) Calcule la reacción en $H$." in text and "Respuestas del problema 1" in text
    assert run(capsys, "draw", "boat-trailer", "--which", "final", "-o", str(figure), "--language", "es")[0] == 0
    drawn = figure.read_text("utf-8")
    assert "<title>La respuesta" in drawn and 'aria-label="fuerza' in drawn and "2,50" in drawn


def test_data_keep_their_keys_and_their_decimal_point(capsys):
    import json

    status, out, _ = run(capsys, "solve", "boat-trailer", "--json", "--language", "es")
    data = json.loads(out)
    answer = next(a for a in data["answers"] if a["name"] == "H_y")
    assert status == 0
    assert (answer["value"], answer["sense"], answer["asked"], answer["printed"]) == (2.5, "up", "la reacción en H", "2,50\u202flb")
