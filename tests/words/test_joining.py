"""Words that run together. Spanish: *de el* → *del*, *a el* → *al*; *y* → *e* before the sound i, *o* → *u* before the sound o
(Real Academia Española, Ortografía de la lengua española, 2010, and Diccionario panhispánico de dudas, "y", "o"; from memory)."""

import pytest

from unpin.lesson.flow import flow
from unpin.lesson.formula import Letter
from unpin.lesson.nodes import Listing, Text
from unpin.words.joining import joined


@pytest.mark.parametrize(("apart", "together"), [
    ("las fuerzas de el pasador", "las fuerzas del pasador"),
    ("lo une a el disco", "lo une al disco"),
    ("A el pasador", "A el pasador"),
    ("vigas y hilos", "vigas e hilos"),
    ("agua y hielo", "agua y hielo"),
    ("siete o ocho", "siete u ocho"),
    ("apoyo o barra", "apoyo o barra"),
])
def test_spanish_words_run_together_as_the_grammar_says(apart, together):
    assert joined(apart, "es") == together


def test_english_words_are_left_as_they_are():
    assert joined("de el pasador y hilos", "en") == "de el pasador y hilos"


def test_a_point_called_i_changes_the_word_before_it():
    listed = Text("count.unknown", {"count": 2, "unknowns": Listing((Letter("A", "x"), Letter("I", "x")))})
    assert flow(listed, "es") == ["2 incógnitas: ", Letter("A", "x"), " e ", Letter("I", "x"), "."]
    assert " and " in flow(listed, "en")


def test_an_article_after_a_preposition_is_contracted_across_the_pieces_of_a_sentence():
    said = Text("diagram.caption", {"body": Text("thing.pin", {"point": Letter("C")})})
    assert flow(said, "es") == ["Diagrama de cuerpo libre del pasador ", Letter("C"), "."]
