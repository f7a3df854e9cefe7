"""How the physics behaves by itself: its limits, just outside them, and what its docstrings claim."""
