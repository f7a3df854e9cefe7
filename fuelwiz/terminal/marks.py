"""The marks that say in a sign what a word beside them says, in UTF-8 and in ASCII."""

from __future__ import annotations

MARKS: dict[str, tuple[str, str]] = {
    "easy": ("✓✓", "++"),
    "good": ("✓", "+"),
    "brisk": ("~", "~"),
    "fast": ("~~", "~~"),
    "too fast": ("✗", "x"),
    "works": ("✓", "+"),
    "yes": ("✓", "+"),
    "no": ("✗", "x"),
    "stop": ("✗", "x"),
    "warning": ("!", "!"),
    "note": ("·", "."),
    "untouched": ("·", "."),
    "done": ("✓", "+"),
    "look here": ("!", "!"),
    "not sure": ("?", "?"),
    "pointer": ("▸", ">"),
    "marked": ("•", "*"),
    "unknown": ("–", "-"),
    "chosen": ("*", "*"),
    "bar": ("█", "#"),
    "could": ("▒", "="),
    "track": ("░", "."),
    "goal": ("┊", ":"),
    "rule": ("─", "-"),
    "axis": ("│", "|"),
    "corner": ("└", "+"),
    "crossing": ("◆", "X"),
}
