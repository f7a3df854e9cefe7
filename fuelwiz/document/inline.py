"""New entries into a list or an inline table as it is written: its line ends and comments survive."""

from __future__ import annotations

from typing import Any

from fuelwiz.document.matching import matched
from fuelwiz.document.toml_text import reads_as, same, value_text


def edited(written: str, old: Any, new: Any) -> str:
    """The text of a value with other entries.

    Args:
        written: the value as it stands in the file, a list or an inline table.
        old: what it holds.
        new: what it is to hold.
    """
    if _squeezed(written) == _squeezed(value_text(old)):
        return value_text(new)

    import tomlkit
    from tomlkit.exceptions import TOMLKitError

    try:
        document = tomlkit.parse(f"value = {written}\n")
        _edit(document, "value", old, new)
        text = document.as_string().removeprefix("value = ").removesuffix("\n")
    except (TOMLKitError, ValueError, IndexError, KeyError):
        return value_text(new)
    return text if reads_as(f"value = {text}\n", {"value": new}) else value_text(new)


def _squeezed(written: str) -> str:
    return written.replace(" ", "")


def _edit(holder: Any, key: Any, old: Any, new: Any) -> None:
    """Makes one entry of a tomlkit table or list the new value."""
    if same(old, new):
        return
    if isinstance(old, dict) and isinstance(new, dict):
        _edit_table(holder[key], old, new)
    elif isinstance(old, list) and isinstance(new, list):
        _edit_list(holder[key], old, new)
    else:
        holder[key] = _item(new)


def _edit_table(table: Any, old: dict[str, Any], new: dict[str, Any]) -> None:
    for name in old.keys() - new.keys():
        del table[name]
    for name, value in new.items():
        if name in old:
            _edit(table, name, old[name], value)
        else:
            table[name] = _item(value)


def _edit_list(entries: Any, old: list[Any], new: list[Any]) -> None:
    pairs = dict(matched(old, new))
    for number in reversed(range(len(old))):
        if number not in pairs:
            del entries[number]
    stayed = {place: number for number, place in pairs.items()}
    for place, value in enumerate(new):
        if place in stayed:
            _edit(entries, place, old[stayed[place]], value)
        else:
            entries.insert(place, _item(value))


def _item(value: Any) -> Any:
    import tomlkit

    return tomlkit.value(value_text(value))
