"""fuelwiz sizes the fuel system of a fuel-injected car: pump, lines, filter, return, wiring and injectors."""

__version__ = "0.1.0"
