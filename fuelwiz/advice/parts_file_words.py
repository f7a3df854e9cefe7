"""How to make a parts file: what is said where there is none yet."""

from __future__ import annotations

from collections.abc import Iterator

from fuelwiz.advice.blocks import Block, Heading, Paragraph

BEGINNING = """\
format = 1
kind = "parts"
currency = "USD"
[[pump]]
name = "pump A"
price = 140
[[pump.curve]]
points = [["40 psi", "95 gph"], ["80 psi", "66 gph"]]
[[hose]]
hose = "ptfe"
size = "-8"
price = 9.5
per = "1 ft"
end = 32
"""
"""A parts file of a few lines, invented."""


def how_to_make_one(folder: str) -> Iterator[Block]:
    """Where a parts file is kept, and what may stand in it.

    Args:
        folder: where it is found by itself, as it may be shown.
    """
    yield Paragraph(
        "There is no parts file yet: a list of the parts that you may buy or have, with prices, typed by yourself."
        " None comes with the program.",
        strong=True,
    )
    yield Paragraph(f"Keep it as a text file that ends in .toml in {folder}; there it is found by itself.")
    yield Heading("So it may begin")
    for line in BEGINNING.splitlines():
        yield Paragraph(line)
    yield Paragraph(
        "Wire, injectors and a regulator may stand there too, and what is owned; a price that is left out is not"
        " known. `fuelwiz schema --parts` has every key."
    )
