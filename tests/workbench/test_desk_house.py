"""What the desk hands out follows the house style in its folder, and is in the language of the desk where that says none."""

from asking import Desk

import unpin


def markdown(desk):
    return desk.post("/publish", text=(desk.folder / "market-awning.yaml").read_text("utf-8"), name="market-awning.yaml", ending=".md").content.decode()


def test_a_handout_of_the_desk_is_that_of_the_command_with_the_style_in_its_folder(desk):
    style = desk.folder / "house.style"
    style.write_text("names: {link: S_AB}\ndecimals: 1\nmoments: clockwise\n")
    lesson = unpin.explain(unpin.solve(unpin.load(desk.folder / "market-awning.yaml", style=style)))

    assert markdown(desk) == unpin.as_markdown(lesson, "market-awning-figures")[0]
    assert "S_{\\mathit{BD}}" in markdown(desk) and "835.3" in markdown(desk)


def test_a_style_above_the_folder_that_was_opened_is_not_looked_at(desk):
    (desk.folder.parent / "house.style").write_text("names: {link: S_AB}\n")

    assert "S_{\\mathit{BD}}" not in markdown(desk)


def test_a_faulty_style_is_told_and_nothing_is_handed_out(desk):
    (desk.folder / "house.style").write_text("decimals: many\n")
    text = (desk.folder / "market-awning.yaml").read_text("utf-8")

    reply = desk.post("/publish", text=text, name="market-awning.yaml", ending=".md")
    assert reply.status_code == 422
    assert (reply.json()["code"], reply.json()["message"]) == ("style", "The house style in this folder has faults; unpin check says which.")


def test_handouts_are_in_the_language_of_the_desk_unless_the_style_has_one(desk):
    spanish = Desk(desk.folder, "es")
    assert "Datos" in markdown(spanish) and "Given" in markdown(desk)

    (desk.folder / "house.style").write_text("language: en\n")
    assert "Given" in markdown(spanish)
