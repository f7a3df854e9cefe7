"""Files and drafts that were damaged at random: read, or refused in a sentence, and nothing else."""

from __future__ import annotations

import random
from pathlib import Path

from fuelwiz.desk import Desk
from fuelwiz.document.file import load
from fuelwiz.errors import FuelwizError
from fuelwiz.store.build_file import draft_entry, read_build_file

from .amount import amount

SAMPLES = sorted((Path(__file__).parents[2] / "saved_sessions").glob("*.toml"))
PIECES = (
    b"",
    b"\x00",
    b"\xff",
    b"[",
    b"]]",
    b"{",
    b'"',
    b"'''",
    b"=",
    b"\n",
    b"1e999",
    b"-1",
    b"nan",
    b"9" * 40,
)


def mutant(good: bytes, dice: random.Random) -> bytes:
    """A text with one to four places damaged."""
    content = bytearray(good)
    for _ in range(dice.randrange(1, 5)):
        at = dice.randrange(len(content))
        content[at : at + dice.randrange(12)] = dice.choice([*PIECES, bytes(content[at : at + 30])])
        content = content or bytearray(b"x")
    return bytes(content)


def test_mutants_of_files(tmp_path: Path) -> None:
    dice, path = random.Random(18), tmp_path / "b.toml"
    good = [sample.read_bytes() for sample in SAMPLES]
    for number in range(amount(40_000)):
        path.write_bytes(mutant(good[number % len(good)], dice))
        entry = read_build_file(path)
        try:
            load(path)
        except FuelwizError as error:
            assert str(error).isprintable() or "\n" in str(error)
        assert entry.fault is None or entry.fault.isprintable()


def test_mutants_of_drafts(tmp_path: Path) -> None:
    desk = Desk.open(SAMPLES[0])
    desk.storage.folder, desk.storage.path = tmp_path, None
    desk.update()
    desk.type("pressure.boost", "22 gal/h")
    place = desk.write_draft()
    assert place is not None
    good, dice = place.read_bytes(), random.Random(18)
    for _ in range(amount(10_000)):
        place.write_bytes(mutant(good, dice))
        entry = draft_entry(place)
        assert entry is not None
        try:
            Desk.from_draft(place)
        except FuelwizError:
            continue
