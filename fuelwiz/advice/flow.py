"""How fuel flows in a line, in words."""

from __future__ import annotations

from fuelwiz.sizing.figures import SizeFigures


def flow_regime(size: SizeFigures) -> str:
    """Turbulent, laminar or between, with the Reynolds number in two digits."""
    number = f"Reynolds number {float(f'{size.reynolds:.2g}'):.0f}"
    match size.regime:
        case "laminar":
            return f"laminar, so the line is far larger than needed ({number})"
        case "transitional":
            return f"between laminar and turbulent, where the loss is least sure ({number})"
        case "turbulent":
            return f"turbulent, as usual ({number})"
