"""What measured the values of a session file, as the comments beside them say."""

from __future__ import annotations

from fuelwiz.document.comments import own_comments
from fuelwiz.measured.proposals import OWN_COMMENT


def what_measured(text: str) -> dict[str, str]:
    """The comments of a file that say what measured a value and when, by the path of its key; no entries of lists."""
    return {
        ".".join(map(str, key)): comment
        for key, comment in own_comments(text, OWN_COMMENT).items()
        if not any(isinstance(part, int) for part in key)
    }
