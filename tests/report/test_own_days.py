"""Days of the builder's own beside today: each comes to what the build comes to that is typed so."""

from __future__ import annotations

from copy import deepcopy

from fuelwiz.advice.blocks import Table
from fuelwiz.advice.sections.bad_days import bad_days
from fuelwiz.advice.subject import Subject

from .builds import plain, result_of

WINTER, SUMMER = {"fuel.ethanol": "60 %"}, {"fuel.temperature": "50 degC"}


def beside(data: dict[str, object]) -> dict[str, list[str]]:
    """The table of days beside one another, its head under ""."""
    result = result_of(data, "days")
    subject = Subject(result.session, result.figures)
    blocks = bad_days(subject, result.words)
    table = next(
        one for one in blocks if isinstance(one, Table) and one.columns[0].title == "Beside one another"
    )
    rows = {row[0].text: [cell.text.replace("\u00a0", " ") for cell in row[1:]] for row in table.rows}
    return {"": [column.title for column in table.columns[1:]], **rows}


def test_summer_and_winter_stand_beside_today_with_the_injectors() -> None:
    data = plain("full-session")
    del data["engine"]["bsfc"]  # so that it follows the fuel
    data["stress"] = {"case": [{"name": "winter", "change": WINTER}, {"name": "summer", "change": SUMMER}]}
    told = beside(data)
    assert told[""] == ["Today", "winter", "summer"]
    assert told["with"] == ["as typed", "ethanol in the fuel 60 %", "fuel temperature 122 °F"]
    for at, (section, key, value) in enumerate(
        (("fuel", "ethanol", "60 %"), ("fuel", "temperature", "50 degC")), 1
    ):
        typed = deepcopy(data)
        typed[section][key] = value
        assert beside(typed)["injector duty"][0] == told["injector duty"][at]
        assert beside(typed)["to spare"][0] == told["to spare"][at]
    assert told["injector duty"][1] != told["injector duty"][0]


def test_without_injectors_nothing_is_said_of_them() -> None:
    data = plain("full-session")
    del data["injectors"]
    assert "injector duty" not in beside(data)
