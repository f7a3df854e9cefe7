"""What comes from the terminal's line, parted into keys and pasted text; nothing that comes raises an error.

A line brings more than keys: bytes in another encoding, reports of a mouse, answers of the terminal that come
late, and whole files by a slip of the paste key.
"""

from __future__ import annotations

import codecs
import re
from collections.abc import Iterator
from dataclasses import dataclass, field

from fuelwiz.record import record

MOST_PASTED = 64 * 1024
"""Characters that are taken of one paste; what is over is let go."""
BURST = 128
"""Characters that come at one stroke without a control sequence: nobody types that many, so they are pasted."""

_ESC = "\x1b"
_PASTE_START, _PASTE_END = "\x1b[200~", "\x1b[201~"
_OLD_MOUSE = re.compile(rb"\x1b\[M[\x00-\xff]{3}", re.DOTALL)
_OLD_MOUSE_CUT_SHORT = re.compile(rb"\x1b(?:\[(?:M[\x00-\xff]{0,2})?)?\Z", re.DOTALL)
_ANSWER = re.compile(
    "\x1b[\\]PX^_][^\x07\x1b]{1,4096}(?:\x07|\x1b\\\\)"  # of a color, of a feature, of a string
    "|\x1b\\[[?>=][0-9;:]*[a-zA-Z]"  # of a device, of a keyboard; a mode is answered with $y, which is taken
    "|\x1b\\[[0-9;]*[nct]"
)
_ANSWER_CUT_SHORT = re.compile(
    "\x1b(?:[\\]PX^_](?=[0-9+$!>|]|\\Z)[^\x07\x1b]{0,4096}\x1b?|\\[[?>=]?[0-9;:$]{0,64}|O)?\\Z"
)
_IN_BAND_SIZE = "\x1b[48;"
_COLOR = "\x1b]1"
_ALT_KEY = re.compile("\x1b(?![\\[O\x1b])[^\x00-\x1f]|\x1bO(?![A-Za-z0-9])")
_SEQUENCE = re.compile("\x1b(?:\\[[0-?]*[ -/]*[@-~]|O[ -~]|.)?", re.DOTALL)
_STRING = re.compile("\x1b[\\]PX^_][^\x07\x1b\r\n]*(?:\x07|\x1b\\\\)?")
"""A title and the like; one without an end is over with its line, as nobody could tell it from what follows."""
_OF_EIGHT_BITS = re.compile("[\x80-\x9f]")
_PLAIN = re.compile("[^\x00-\x08\x0b\x0c\x0e-\x1f\x7f]+")


@record
class Keys:
    """Characters and control sequences of keys, as they came."""

    text: str


@record
class Pasted:
    """Text that came as a whole."""

    text: str


@record
class Answered:
    """What the terminal answered when it was asked for a color."""

    text: str


Piece = Keys | Pasted | Answered


@dataclass(slots=True)
class KeyboardInput:
    """Takes the bytes of the line, as they come, in time that grows with their number and no faster."""

    _decoder: codecs.IncrementalDecoder = field(
        default_factory=lambda: codecs.getincrementaldecoder("utf-8")(errors="ignore")
    )
    _bytes: bytes = b""
    _text: str = ""
    _paste: list[str] | None = None
    _pasted: int = 0

    @property
    def is_waiting(self) -> bool:
        """Whether something has begun that the next bytes may complete."""
        return bool(self._bytes or self._text) or self._paste is not None

    @property
    def is_in_paste(self) -> bool:
        """Whether a paste has begun and not ended."""
        return self._paste is not None

    def take(self, content: bytes) -> Iterator[Piece]:
        """What the bytes complete; what they only begin is held back."""
        content = _OLD_MOUSE.sub(b"", self._bytes + content)
        cut = _OLD_MOUSE_CUT_SHORT.search(content)
        self._bytes = content[cut.start() :] if cut else b""
        self._text += self._decoder.decode(content[: cut.start()] if cut else content)
        yield from self._parted()

    def nothing_came(self) -> Iterator[Piece]:
        """What was held back, once nothing more came for a while: a lone Esc is a key, half an answer is none."""
        held, self._text = self._text + (_ESC if self._bytes == _ESC.encode() else ""), ""
        self._bytes = b""
        if self._paste is not None:
            self._add_pasted(held)
            yield from self._end_paste()
        elif held.startswith(_ESC) and len(held) > 1:
            return
        elif held:
            yield Keys(held)

    def _parted(self) -> Iterator[Piece]:
        while self._text:
            if self._paste is not None:
                if not self._ends_paste():
                    return
                yield from self._end_paste()
                continue
            before, start, after = self._text.partition(_PASTE_START)
            if start:
                yield from _typed(before)
                self._text, self._paste, self._pasted = after, [], 0
                continue
            cut = _ANSWER_CUT_SHORT.search(before)
            self._text = before[cut.start() :] if cut else ""
            yield from _typed(before[: cut.start()] if cut else before)
            return

    def _ends_paste(self) -> bool:
        """Whether the paste ends in what has come; the rest of it is taken in."""
        before, end, after = self._text.partition(_PASTE_END)
        if end:
            self._add_pasted(before)
            self._text = after
            return True
        keep = next((n for n in range(len(_PASTE_END) - 1, 0, -1) if before.endswith(_PASTE_END[:n])), 0)
        self._add_pasted(before[: len(before) - keep])
        self._text = before[len(before) - keep :]
        return False

    def _add_pasted(self, text: str) -> None:
        assert self._paste is not None
        text = text[: MOST_PASTED - self._pasted]
        self._pasted += len(text)
        self._paste.append(text)

    def _end_paste(self) -> Iterator[Pasted]:
        text, self._paste = "".join(self._paste or ()), None
        if text:
            yield Pasted(_without_sequences(text))


def _typed(text: str) -> Iterator[Piece]:
    """Keys without the terminal's late answers and without letters that came with Alt; bursts are pasted."""
    yield from (Answered(answer) for answer in _ANSWER.findall(text) if answer.startswith(_COLOR))
    text = _ANSWER.sub(lambda answer: answer[0] if answer[0].startswith(_IN_BAND_SIZE) else "", text)
    text = _ALT_KEY.sub("", text)
    at = 0
    for plain in _PLAIN.finditer(text):
        if len(plain[0]) >= BURST and not text.endswith(_ESC, 0, plain.start()):
            if text[at : plain.start()]:
                yield Keys(text[at : plain.start()])
            yield Pasted(plain[0][:MOST_PASTED])
            at = plain.end()
    if text[at:]:
        yield Keys(text[at:])


def _without_sequences(text: str) -> str:
    """Pasted text without whole control sequences: of a title or a color that was copied along no letter stays."""
    text = _OF_EIGHT_BITS.sub(lambda sign: _ESC + chr(ord(sign[0]) - 0x40), text)
    return _SEQUENCE.sub("", _STRING.sub("", text)).replace("\x00", "") if _ESC in text else text
