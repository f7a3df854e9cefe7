"""The current in a pump's table: one figure under each of its points, at the pressure of that point.

The file keeps current apart from flow, against pressures of its own. Those that are none of the first curve's
stay as they are, and are asked for in a table of their own.
"""

from __future__ import annotations

POINTS = ("pump", "curve", 0, "points")
CURRENT = ("pump", "current")
