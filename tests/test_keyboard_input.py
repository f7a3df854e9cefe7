"""Whatever comes down the line is a key, pasted text, or nothing; and it takes no longer than it is long."""

from __future__ import annotations

import time

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fuelwiz.terminal.keyboard_input import BURST, MOST_PASTED, Answered, KeyboardInput, Keys, Pasted, Piece


def taken(*chunks: bytes) -> list[Piece]:
    """What comes of bytes that come one after another, and then of silence."""
    keyboard = KeyboardInput()
    pieces = [piece for chunk in chunks for piece in keyboard.take(chunk)]
    return [*pieces, *keyboard.nothing_came()]


def typed(*chunks: bytes) -> str:
    """The keys among it."""
    return "".join(piece.text for piece in taken(*chunks) if isinstance(piece, Keys))


@pytest.mark.parametrize(
    ("came", "keys"),
    [
        (b"\xff", ""),
        (b"4\xff3", "43"),
        (b"\xe9x", "x"),  # an accented letter of a Latin-1 terminal
        ("é".encode(), "é"),
        (b"\x1b[M !\xf01", "1"),  # a mouse beyond column 95, as terminals without SGR reports say it
        (b"\x1b5", ""),  # Alt and a digit
        (b"\x1bx7", "7"),
        (b"\x1b[?62;22c4", "4"),  # an answer to "what are you"
        (b"\x1b]11;rgb:ffff/ffff/ffff\x1b\\5", "5"),  # an answer to "which background"
        (b"\x1b]11;rgb:ffff/ffff/ffff\x075", "5"),
        (b"\x1bP>|term 1.0\x1b\\6", "6"),
        (b"\x1b[?2026;2$y", "\x1b[?2026;2$y"),  # awaited
        (b"\x1b[A\x1bOP\x1b[15~", "\x1b[A\x1bOP\x1b[15~"),
        (b"\x1b", "\x1b"),
        (b"\x1b\x1b[B", "\x1b\x1b[B"),
    ],
)
def test_stray_bytes_are_no_keys_and_keys_are_kept(came: bytes, keys: str) -> None:
    assert typed(came) == keys


@pytest.mark.parametrize(
    "came", [b"\x1b]11;rgb:ffff/0000/ffff\x1b\\", b"\x1b[?62;22c", b"\x1b[M !\xf0", "é".encode(), b"\x1b[15~"]
)
def test_it_does_not_matter_where_the_line_parts_them(came: bytes) -> None:
    whole = typed(came + b"7")
    for at in range(1, len(came)):
        assert typed(came[:at], came[at:], b"7") == whole


def test_a_paste_is_one_with_brackets_and_without() -> None:
    table = b"40 psi\t97\r60 psi\t84\r" * 20
    assert len(table) >= BURST
    assert taken(table) == [Pasted(table.decode())]
    assert taken(b"1\x1b[200~" + table + b"\x1b[201~2") == [Keys("1"), Pasted(table.decode()), Keys("2")]
    assert taken(b"\x1b[200~12", b" ps", b"i\x1b[2", b"01~") == [Pasted("12 psi")]


def test_a_paste_that_never_ends_holds_no_key_back_for_ever() -> None:
    keyboard = KeyboardInput()
    assert not list(keyboard.take(b"\x1b[200~12"))
    assert list(keyboard.nothing_came()) == [Pasted("12")]
    assert list(keyboard.take(b"3")) == [Keys("3")]


def test_no_letter_of_a_control_sequence_is_pasted() -> None:
    for sequence in (
        "\x1b]0;title\x07\x1b[2J",
        "\x1b]0;title\x1b[2J",  # without its end
        "\x1b]0;title\x1b\\",
        "\x1bP1$r0m\x1b\\",
        "\x9d0;title\x9c\x9b2J",  # of eight bits: ECMA-48, 5.3
    ):
        assert taken(f"\x1b[200~12 {sequence}psi\x1b[201~".encode()) == [Pasted("12 psi")], sequence
    assert taken(b"\x1b[200~12 \x1b]0;title\r\n13\x1b[201~") == [Pasted("12 \r\n13")]


@pytest.mark.parametrize("answer", [b"\x1b[?62;22c", b"\x1b]11;rgb:ffff/ffff/ffff\x1b\\", b"\x1b[?2026;2$y"])
def test_an_answer_that_comes_late_types_nothing(answer: bytes) -> None:
    for cut in range(1, len(answer)):
        assert typed(b"4", answer[:cut], answer[cut:], b"3").replace(answer.decode(), "") == "43"


def test_more_than_the_most_is_let_go() -> None:
    (pasted,) = taken(b"\x1b[200~" + b"7" * (MOST_PASTED + 5) + b"\x1b[201~")
    assert pasted == Pasted("7" * MOST_PASTED)


@pytest.mark.parametrize(
    "sign", [b"7", b"\x1b[200~7", b"\x1b", b"\x1b[1", b"\x1b]1", b"\x1b[M", b"\xff", b"\x1bx", b"7\x1b[201~"]
)
def test_takes_no_longer_than_it_is_long(sign: bytes) -> None:
    """Four times as much may take eight times as long, not sixteen."""

    def seconds(count: int) -> float:
        start = time.process_time()
        taken(*[sign * 512] * (count // 512))
        return time.process_time() - start

    assert min(seconds(65_536) for _ in range(3)) < 8 * min(seconds(16_384) for _ in range(3)) + 0.05


@given(st.lists(st.binary(max_size=40), max_size=12))
def test_nothing_raises_and_nothing_is_made_up(chunks: list[bytes]) -> None:
    came = b"".join(chunks).decode("utf-8", "ignore")
    for piece in taken(*chunks):
        assert piece.text and not set(piece.text) - set(came)


@given(st.text(st.characters(blacklist_categories=["Cc", "Cs"]), max_size=BURST - 1), st.integers(1, 9))
def test_what_is_typed_arrives(text: str, size: int) -> None:
    came = text.encode()
    assert typed(*(came[at : at + size] for at in range(0, len(came), size))) == text


@pytest.mark.parametrize("end", [b"\x07", b"\x1b\\"])
def test_the_color_of_a_background_is_an_answer_and_no_key(end: bytes) -> None:
    answer = b"\x1b]11;rgb:ffff/ffff/ffff" + end
    (piece,) = taken(answer)
    assert piece == Answered(answer.decode())
    assert typed(b"4" + answer + b"3") == "43"
