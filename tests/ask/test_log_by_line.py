"""A log told line by line: read where it is asked for, its columns picked by number, a proposal taken."""

from __future__ import annotations

from pathlib import Path

from measured.cars import Car, Logger, plain, write_log

from fuelwiz.ask.conversation import Conversation
from fuelwiz.desk import Desk
from fuelwiz.document.merge import merge


def at_the_log(folder: Path, said: list[str]) -> Conversation:
    """A conversation that has come to the log of a build."""
    path = folder / "car.toml"
    path.write_text(merge("format = 1\n", plain(Car())), encoding="utf-8")
    write_log(folder / "pull.csv", Car(factor=0.6), Logger(hz=20))
    desk = Desk.open(path)
    desk.update()
    talk = Conversation(desk, said.append)
    talk.begin()
    talk.form.go_to_path("log.file")
    return talk


def until(talk: Conversation, said: list[str], begin: str) -> None:
    """Empty lines until a question begins so."""
    for _ in range(40):
        if said[-1].startswith(begin):
            return
        talk.take("")
    raise AssertionError(f"{begin} was never asked")


def test_a_log_is_read_and_its_columns_are_picked(tmp_path: Path) -> None:
    said: list[str] = []
    talk = at_the_log(tmp_path, said)
    talk.take("pull.csv")
    assert said[-1] == "The log is held against the build as it is. y reads pull.csv."
    talk.take("y")
    assert said[-1].startswith(("The pump sends 60\u00a0%", "The pump sends 59\u00a0%"))
    assert said[-1].count("The pump sends") == 1
    until(talk, said, "y takes flow of the pump")
    talk.take("y")
    assert talk.desk.value("pump.health") is not None
    assert said[-1].startswith("The pump sends 100\u00a0%")  # it is held against the change at once
    until(talk, said, "Column: rail: Fuel pressure (psi) assumed. One of: 1 Fuel pressure (psi), ")
    talk.take("1")
    assert talk.desk.value("log.columns") == {"rail": "Fuel pressure (psi)"}
    until(talk, said, "Column: battery: ")
    talk.take("not in the log")
    assert talk.desk.value("log.columns.battery") == "none"


def test_a_log_that_cannot_be_read_is_a_sentence(tmp_path: Path) -> None:
    said: list[str] = []
    talk = at_the_log(tmp_path, said)
    talk.take("gone.csv")
    talk.take("y")
    assert said[-1].startswith("The log is not used. gone.csv: there is no such file.")
