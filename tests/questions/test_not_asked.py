"""What people look for and no question asks: each says why in a sentence or two, and leads to a question there is."""

from __future__ import annotations

from fuelwiz.questions import catalogue, not_asked


def test_each_leads_to_a_question_and_says_why_not() -> None:
    for one in not_asked():
        assert one.nearest in catalogue(), one.name
        assert one.say.endswith(".") and len(one.say) <= 120, one.name
        assert one.words, one.name


def test_none_has_the_name_of_a_question() -> None:
    labels = {question.label.lower() for question in catalogue().values()}
    assert not labels & {one.name.lower() for one in not_asked()}
