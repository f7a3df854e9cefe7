"""Any edits in any order: nothing raises but what is documented, nothing typed is lost, the file says the same."""

from __future__ import annotations

import tempfile
from contextlib import suppress
from fractions import Fraction
from pathlib import Path

from hypothesis import HealthCheck, event, settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, initialize, invariant, precondition, rule
from rich.cells import cell_len

from fuelwiz.advice import Result, result
from fuelwiz.desk import Desk, NoSuchField, SaveRefused
from fuelwiz.desk.composites import CHOICE_QUESTIONS, field_of
from fuelwiz.desk.field_specs import spec_at
from fuelwiz.desk.refusals import BESIDE
from fuelwiz.printable import clean
from fuelwiz.questions import catalogue
from fuelwiz.session import Session, as_text, leaf_paths, list_key_paths, validate
from fuelwiz.sizing import quick_figures

EXAMPLES = sorted((Path(__file__).parents[1] / "examples").glob("*.toml"))
LISTS = tuple(".".join(map(str, value_path)) for value_path in list_key_paths())
NUMBERS = ("0", "1", "2", "40")


def _paths() -> st.SearchStrategy[str]:
    """Every key with and without list numbers, every question, cells of points, fittings, and no field at all."""
    inside = st.sampled_from(
        [
            "pump.curve.0.points.{}.0",
            "pump.curve.0.points.{}.1",
            "pump.curve.1.points.{}.0",
            "pump.curve.1.points.{}.1",
            "pump.current.{}.0",
            "pump.current.{}.1",
            "feed.run.{}.fittings.straight",
            "feed.run.{}.fittings.swept_90",
            "feed.run.{}.fittings.nonsense",
            "stress.case.{}.change.fuel.temperature",
            "stress.case.{}.change.feed.filter.0.clogging",
            "stress.case.{}.change.goal.power",
            "no.such.{}.field",
        ]
    )
    keys = st.sampled_from([key for key in leaf_paths() if not key.startswith("record")])
    numbered = st.builds(_numbered, keys, st.sampled_from(NUMBERS))
    cells = st.builds(str.format, inside, st.sampled_from(NUMBERS))
    return st.one_of(numbered, st.sampled_from(list(catalogue())), cells)


def _numbered(key: str, number: str) -> str:
    for path in LISTS:
        if key.startswith(f"{path}."):
            return f"{path}.{number}{key[len(path) :]}"
    return key


TEXTS = st.one_of(
    st.sampled_from(
        [
            "",
            " ",
            "0",
            "1",
            "2",
            "8",
            "22",
            "750",
            "1e9",
            "-4",
            "-8",
            "-6 -8 -10",
            "4 6 8 10",
            "22 psi",
            "1.5 bar",
            "22 gal/h",
            "120 gal/h",
            "750 hp",
            "300 kW",
            "15 %",
            "85 %",
            "40 degC",
            "104 °F",
            "13 ft",
            "3/8 in",
            "12 AWG",
            "4 mm^2",
            "13.5 V",
            "0.8",
            "1,5",
            "22 p",
            "psi",
            "?",
            "nan psi",
            "inf",
            "turbo",
            "blend",
            "own",
            "tank",
            "ptfe",
            "rail",
            "metric",
            "yes",
            "none",
            "figure",
            "curve",
            "sample",
            "\x1b[2J",
            "\u202e22 psi",
            '"""',
            "x" * 300,
            "a\nb",
            "½ in",
            "[@click=app.bell]x[/]",
        ]
    ),
    st.text(max_size=12),
    st.builds(
        "{} {}".format,
        st.integers(-5, 900),
        st.sampled_from(["psi", "bar", "gal/h", "L/h", "ft", "m", "V", "A", "%", "hp", "degC", "cc/min"]),
    ),
)


class AnyEdits(RuleBasedStateMachine):
    """Someone at the desk who does anything at all."""

    def __init__(self) -> None:
        super().__init__()
        self.folder = tempfile.TemporaryDirectory()
        self.desk = Desk.new(Path(self.folder.name))
        self.last: tuple[str, Result] | None = None

    def teardown(self) -> None:
        self.folder.cleanup()

    @initialize(example=st.one_of(st.none(), st.sampled_from(EXAMPLES)), warm=st.booleans())
    def begin(self, example: Path | None, warm: bool) -> None:
        if example is not None:
            path = Path(self.folder.name) / example.name
            path.write_text(example.read_text(encoding="utf-8"), encoding="utf-8")
            self.desk = Desk.open(path)
        if warm:
            self.desk.update()

    @rule(path=_paths(), raw=TEXTS, visits=st.booleans())
    def types(self, path: str, raw: str, visits: bool) -> None:
        if visits:
            self.desk.visit(path)
        try:
            self.desk.type(path, raw)
        except NoSuchField:
            event("no such field")
            return
        if path not in CHOICE_QUESTIONS and clean(raw).strip():
            shown = self.desk.text_in_field(path)
            assert shown.text == clean(raw, lines=path == "notes"), (path, raw, shown)
            self.desk.visit("notes")
            kept = self.desk.text_in_field(path)
            event("refused" if kept.refused else "taken")
            if not kept.refused and kept.text != shown.text:
                self.desk.type(path, f"{kept.text} {kept.unit}".strip())
                again = self.desk.text_in_field(path)
                assert again.refused is None
                assert again.echo == kept.echo

    @rule(path=_paths(), share=st.sampled_from(["1", "0.5", "1.1", "2", "7/8"]))
    def types_something_likely(self, path: str, share: str) -> None:
        """The example that is declared for the field, or some share of it."""
        try:
            spec = spec_at(field_of(path))
        except NoSuchField:
            return
        number, _, unit = as_text(spec.example if spec.example is not None else "a text").partition(" ")
        with suppress(ValueError):
            number = f"{float(number) * float(Fraction(share)):.4g}"
        self.types(path, f"{number} {unit}".strip(), True)

    @rule(path=_paths(), answer=st.data())
    def chooses(self, path: str, answer: st.DataObject) -> None:
        asked = catalogue().get(path)
        choices = [choice.value for choice in asked.choices] if asked else []
        value = answer.draw(st.sampled_from([*choices, "nonsense"]))
        try:
            self.desk.choose(path, value)
        except NoSuchField:
            assert value == "nonsense" or asked is None or path.endswith(".fittings")

    @rule(path=_paths())
    def is_not_sure(self, path: str) -> None:
        try:
            said = self.desk.unsure(path)
        except NoSuchField:
            return
        assert said.endswith(".")

    @rule(path=st.sampled_from([*LISTS, "feed", "nonsense"]))
    def adds(self, path: str) -> None:
        try:
            number = self.desk.add(path, {})
        except NoSuchField:
            return
        assert self.desk.value(f"{path}.{number}") == {}

    @rule(path=st.sampled_from(LISTS), number=st.integers(-1, 3))
    def removes(self, path: str, number: int) -> None:
        before = self.desk.value(path) or []
        try:
            self.desk.remove(path, number)
        except NoSuchField:
            assert not 0 <= number < len(before)
            return
        assert (self.desk.value(path) or []) == [*before[:number], *before[number + 1 :]]

    @rule(path=st.sampled_from(LISTS), number=st.integers(0, 2), to=st.integers(0, 2))
    def moves(self, path: str, number: int, to: int) -> None:
        try:
            self.desk.move(path, number, to)
        except NoSuchField:
            return

    @rule(points=st.lists(st.tuples(st.integers(0, 100), st.integers(0, 200)), max_size=6))
    def pastes(self, points: list[tuple[int, int]]) -> None:
        try:
            self.desk.set_points("pump.curve.points", [(f"{p} psi", f"{q} gal/h") for p, q in points])
        except NoSuchField:
            assert not points

    @rule(times=st.integers(1, 4))
    def undoes_and_redoes(self, times: int) -> None:
        before = self.told()
        back = [self.desk.undo() for _ in range(times)]
        for path in [path for path in back if path is not None]:
            assert self.desk.redo() is not None, path
        assert self.told() == before

    @rule()
    def undoes(self) -> None:
        self.desk.undo()

    @rule()
    def finishes(self) -> None:
        self.desk.finish()
        assert self.desk.complete or self.desk.result is None

    @rule()
    def keeps_a_draft_and_comes_back(self) -> None:
        place = self.desk.write_draft()
        assert (place is None) == (not self.desk.dirty)
        if place is None:
            return
        again = Desk.from_draft(place)
        again.update()
        self.desk.update()
        assert again.path == self.desk.path
        assert again.folder == self.desk.folder
        assert (again.plain, again._state.raw, again._state.picked) == (
            self.desk.plain,
            self.desk._state.raw,
            self.desk._state.picked,
        )
        for path in self.desk._state.raw:
            assert again.text_in_field(path) == self.desk.text_in_field(path)

    @rule()
    def saves_and_reads_again(self) -> None:
        self.desk.update()
        path = Path(self.folder.name) / "saved.toml"
        try:
            saved = self.desk.save(path, overwrite=True)
        except SaveRefused as refused:
            event("save refused")
            assert refused.path is not None
            return
        event("saved")
        assert not self.desk.dirty
        again = Desk.open(saved.path)
        again.update()
        again.finish()
        assert again.refused == {}
        assert again.plain == self.desk.plain
        assert again.result == self.desk.result

    @precondition(lambda self: self.desk.is_loaded)
    @invariant()
    def what_is_said_is_short_and_safe(self) -> None:
        for path, why in self.desk.refused.items():
            assert clean(why) == why
            field = self.desk.text_in_field(path)
            assert field.is_missing or field.refused is not None, "half of a point may be no more than begun"
            assert cell_len(field.refused or "") <= BESIDE, field.refused
        if self.desk.held:
            assert clean(self.desk.held) == self.desk.held

    @precondition(lambda self: self.desk.is_loaded and self.desk.result is not None and not self.desk.refused)
    @invariant()
    def the_answer_is_that_of_what_is_told(self) -> None:
        session = validate(self.desk.plain, self.desk._default_name)
        assert self.desk.session == session
        self.desk.finish()
        assert self.desk.result == self.wanted(session)

    def wanted(self, session: Session) -> Result:
        """What a session comes to; most steps change nothing in what is told."""
        told = repr((session.name, self.desk.plain))
        if self.last is None or self.last[0] != told:
            self.last = told, result(session, quick_figures(session))
        return self.last[1]

    def told(self) -> tuple[object, ...]:
        state = self.desk._state
        return state.plain, state.raw, state.picked, state.stashed


TestAnyEdits = AnyEdits.TestCase
TestAnyEdits.settings = settings(
    max_examples=100, stateful_step_count=40, deadline=None, suppress_health_check=list(HealthCheck)
)
