"""What a build is put beside: itself as saved, what a what-if is tried against, or another one of its folder."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING

from fuelwiz.errors import FuelwizError
from fuelwiz.wizard.editor.host import Host
from fuelwiz.wizard.form.finding import Findable, Offer

if TYPE_CHECKING:
    from fuelwiz.desk.desk import Desk
    from fuelwiz.report.differences import JudgedBuild
    from fuelwiz.store.build_file import BuildFile

TITLE = "Compare with"
NOTHING = "No build of this folder has all of these words."
NEEDS = "To compare, this build needs a power first."
ALONE = "There is nothing to compare with yet: this build is as it was saved, and the only one of its folder."
AS_SAVED, UNCHANGED = "as saved", "unchanged"
NOW, TRIED = "as it stands here", "what if"


class CompareDialog:
    """Asks which build where there is more than one, and opens both side by side."""

    def __init__(self, host: Host) -> None:
        self.host = host

    def open(self) -> None:
        """Compare with the only one there is, else ask which; the likeliest stands first."""
        if self.host.desk.result is None:
            self.host.say(NEEDS)
            return
        try:
            beside = list(self._beside())
        except FuelwizError as error:
            self.host.say(str(error))
            return
        if not beside:
            self.host.say(ALONE)
        elif len(beside) == 1:
            self._show(beside[0])
        else:
            self.host.program.find(beside, self._show, Offer(TITLE, NOTHING, go="compare"))

    def _beside(self) -> Iterator[Findable]:
        from fuelwiz.store.folder import entries

        desk = self.host.desk
        if desk.origin is not None:
            yield _offered("", desk.origin.name, UNCHANGED)
        elif desk.path is not None and desk.dirty:
            yield _offered(str(desk.path), desk.name, AS_SAVED)
        own = {one.path for one in (desk, desk.origin) if one is not None}
        for build in entries(desk.folder):
            if build.fault is None and not build.is_draft and build.path not in own:
                yield _offered(str(build.path), build.name, _said_of(build))

    def _show(self, picked: Findable) -> None:
        desk, origin = self.host.desk, self.host.desk.origin
        here = _judged(desk, NOW if origin is None else TRIED)
        if picked.id:
            self.host.program.compare([here, Path(picked.id)])
        elif origin is not None:
            self.host.program.compare([_judged(origin, UNCHANGED), here])


def _offered(path: str, name: str, beside: str) -> Findable:
    return Findable("build", path, name, beside, (name, beside, path))


def _said_of(build: BuildFile) -> str:
    """The goal and the file of a build, to tell it from one of the same name."""
    goal = " ".join(build.goal or ())
    return f"{goal}  {build.file_name}" if goal else build.file_name


def _judged(desk: Desk, called: str) -> JudgedBuild:
    from fuelwiz.report.differences import JudgedBuild

    if not desk.complete:
        desk.finish()  # what else waits for a pause in typing
    assert desk.result is not None
    return JudgedBuild(called, desk.plain, desk.result)
