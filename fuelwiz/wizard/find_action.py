"""The command palette: the actions of the screen in front, found by typing a few letters of them."""

from __future__ import annotations

from collections.abc import AsyncIterator
from functools import partial
from typing import TYPE_CHECKING, cast

from textual.command import DiscoveryHit, Hit, Provider

from fuelwiz.wizard.actions import BUILD, Action

if TYPE_CHECKING:
    from fuelwiz.wizard.editor.build_screen import BuildScreen

NOT_OFFERED = ("next", "previous", "size", "keys", "palette")


class ActionProvider(Provider):
    """Offers the actions of a build's screen."""

    @property
    def _offered(self) -> list[Action]:
        from fuelwiz.wizard.editor.build_screen import BuildScreen

        if not isinstance(self.screen, BuildScreen):
            return []
        return [action for action in BUILD if action.id not in NOT_OFFERED]

    def _do(self, name: str) -> None:
        screen = cast("BuildScreen", self.screen)
        screen.actions.do(name)
        screen.show_all()

    async def discover(self) -> AsyncIterator[DiscoveryHit]:
        """Every action, before anything is typed."""
        for action in self._offered:
            yield DiscoveryHit(action.text, partial(self._do, action.id), help=action.shown_key)

    async def search(self, query: str) -> AsyncIterator[Hit]:
        """The actions whose line fits what was typed."""
        matcher = self.matcher(query)
        for action in self._offered:
            score = matcher.match(action.text)
            if score > 0:
                yield Hit(
                    score, matcher.highlight(action.text), partial(self._do, action.id), help=action.shown_key
                )
