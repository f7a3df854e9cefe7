"""What the program's files keep to: how they end, how large, how deep, how long a name or a text may be."""

from __future__ import annotations

SUFFIX = ".toml"
"""Of the name of a session file."""
MOST_BYTES = 64 * 1024
"""Of a session file, and of a table of points."""
MOST_DRAFT_BYTES = 512 * 1024
MOST_LEVELS = 8
"""Of tables and lists in a session file, one within the other."""
LONGEST_NAME = 200
"""Characters in the name of a build."""
LONGEST_TEXT = 4000
"""Characters in a field, of whatever is typed there."""
UNNAMED = "Unnamed build"
"""What a build is called that has neither a name nor a file."""
