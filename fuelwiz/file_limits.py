"""What the program's files keep to: how large, how deep, how long a name may be."""

from __future__ import annotations

MOST_BYTES = 64 * 1024
"""Of a session file, and of a table of points."""
MOST_DRAFT_BYTES = 512 * 1024
MOST_LEVELS = 8
"""Of tables and lists in a session file, one within the other."""
LONGEST_NAME = 200
"""Characters in the name of a build."""
UNNAMED = "Unnamed build"
"""What a build is called that has neither a name nor a file."""
