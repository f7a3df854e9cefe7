"""A parts file: what a builder may buy or has on the shelf, every key declared once.

Values are SI floats; prices are bare numbers of the file's own currency, None where nobody knows.
"""

from __future__ import annotations

from typing import Annotated, ClassVar, Literal

from fuelwiz.session import PumpCurve, Section, Size, fields
from fuelwiz.terms import Hose, PumpKind, PumpPlace

FileKind = Literal["parts"]

MOST_OF_A_KIND = 200
PRICE = fields.ratio(0, 100_000, example=140)
WEIGHT = fields.quantity("mass", "0 kg", "200 kg", example="0.4 kg")
OWNED = fields.yes_no(False, example=True)
PER = fields.quantity("length", "1 cm", "1000 ft", "1 ft", example="1 m")


class _Part(Section):
    """What may stand in each part."""

    name: Annotated[str, fields.text()]
    price: Annotated[float | None, PRICE]
    owned: Annotated[bool, OWNED]
    weight: Annotated[float | None, WEIGHT]


class PumpOnOffer(_Part):
    """A pump, as its sheet has it."""

    place: Annotated[PumpPlace, fields.choice(PumpPlace, "tank")]
    kind: Annotated[PumpKind | None, fields.choice(PumpKind, example="turbine")]
    alcohol: Annotated[bool | None, fields.yes_no(example=True)]
    most: Annotated[int, fields.count(1, 6, 2)]
    relief: Annotated[float | None, fields.RELIEF]
    current: Annotated[tuple[tuple[float, float], ...], fields.CURRENT]
    curve: Annotated[tuple[PumpCurve, ...], fields.Tables(1, 8)]


class HoseOnOffer(_Part):
    """A hose of one kind and size: price and weight for so much of it, and the price of each end."""

    hose: Annotated[Hose, fields.choice(Hose, required=True, example="ptfe")]
    size: Annotated[Size, fields.needed(fields.SIZE)]
    per: Annotated[float, PER]
    end: Annotated[float | None, PRICE]


class WireOnOffer(_Part):
    """A wire: price and weight for so much of it."""

    wire: Annotated[float, fields.needed(fields.WIRE)]
    per: Annotated[float, PER]


class InjectorsOnOffer(_Part):
    """Injectors of one rating; price and weight are those of each."""

    rated_flow: Annotated[float, fields.INJECTOR_FLOW]
    rated_pressure: Annotated[float, fields.quantity("pressure_change", "5 psi", "300 psi", "3 bar")]


class RegulatorOnOffer(_Part):
    """A regulator, wide open, and from where to where it may be set."""

    rated_flow: Annotated[float, fields.FLOW]
    rated_loss: Annotated[float, fields.LOSS]
    set_range: Annotated[
        tuple[float, ...] | None,
        fields.span("pressure_change", "1 psi", "200 psi", example=["30 psi", "70 psi"]),
    ]


class Parts(Section):
    """One parts file."""

    called: ClassVar[str] = "parts file"

    format: Annotated[int, fields.FORMAT]
    kind: Annotated[FileKind, fields.choice(FileKind, required=True, example="parts")]
    currency: Annotated[str, fields.text(most=20)]
    pump: Annotated[tuple[PumpOnOffer, ...], fields.Tables(0, MOST_OF_A_KIND)]
    hose: Annotated[tuple[HoseOnOffer, ...], fields.Tables(0, MOST_OF_A_KIND)]
    wire: Annotated[tuple[WireOnOffer, ...], fields.Tables(0, MOST_OF_A_KIND)]
    injectors: Annotated[tuple[InjectorsOnOffer, ...], fields.Tables(0, MOST_OF_A_KIND)]
    regulator: Annotated[tuple[RegulatorOnOffer, ...], fields.Tables(0, MOST_OF_A_KIND)]
