"""Keys that come once another screen stands in front: none is lost, and none acts on what lies below."""

from __future__ import annotations

from textual.events import Key, Paste
from textual.screen import Screen


def hand_on(screen: Screen[None], event: Key | Paste) -> bool:
    """Give a key to the screen in front, where that is another one by now; whether it was given away."""
    stack = screen.app.screen_stack  # `is_current` is so of the one below the front too
    if not stack or stack[-1] is screen:
        return False
    event.prevent_default(False)  # else nobody would be given it again
    stack[-1].post_message(event)
    return True
