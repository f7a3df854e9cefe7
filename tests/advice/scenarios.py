"""Variations of the examples, named by what each brings about."""

from __future__ import annotations

from functools import cache
from typing import Any

from fuelwiz.advice import Result

from .builds import told

Scenario = tuple[str, dict[str, Any]]

KEPT = [
    {"what": "tank to engine bay", "length": "15 ft"},
    {"what": "old hard line", "length": "2 ft", "hose": "tube", "bore": "4 mm"},
]
SUCTION = [{"what": "tank to pump", "size": "-6", "length": "4 ft"}]

LIMITS: dict[str, Scenario] = {
    "velocity": ("hill-climb-six", {"feed__chosen": "-4"}),
    "delivery": ("hill-climb-coupe", {"goal__power": "250 hp", "feed__chosen": "-4"}),
    "sag": ("mild", {"feed__chosen": "-4"}),
    "pump": ("hill-climb-six", {}),
    "relief": ("hill-climb-coupe", {"pump__relief": "60 psi"}),
    "vapour": ("hill-climb-coupe", {"fuel__temperature": "70 degC", "pump__place": "outside"}),
    "inlet": ("hill-climb-coupe", {"pump__place": "outside", "inlet__run": SUCTION}),
    "kept run": ("hill-climb-coupe", {"feed__run": KEPT}),
    "injector pressure": (
        "hill-climb-coupe",
        {"pressure__reference": "atmosphere", "pressure__boost": "50 psi"},
    ),
    "injectors": ("hill-climb-coupe", {"injectors__rated_flow": "700 cc/min"}),
    "return": ("twins", {}),
    "lift": ("hill-climb-coupe", {"surge": {"volume": "2 l", "lift_flow": "40 gal/h"}}),
    "rating": ("hill-climb-coupe", {"feed__filter__0__pressure_rating": "100 psi"}),
    "fuse": ("hill-climb-coupe", {"wiring": {"supply": "13.8 V", "wire": "22 AWG", "length": "14 ft"}}),
}

ONE_POINT = [{"voltage": "13.5 V", "points": [["58 psi", "100 gal/h"]]}]
CURVE_12V = [{"voltage": "12 V", "points": [["40 psi", "112 gal/h"], ["87 psi", "74 gal/h"]]}]
SHORT_CURVE = [{"points": [["30 psi", "118 gal/h"], ["58 psi", "100 gal/h"]]}]
FLAT_CURVE = [{"points": [["30 psi", "118 gal/h"], ["100 psi", "118 gal/h"]]}]
OWN_CASE = {"name": "mine", "change": {"fuel.temperature": "55 degC", "pressure.boost": "25 psi"}}
TWO_SHEETS = [
    {"voltage": "12 V", "points": [["40 psi", "102 gal/h"], ["87 psi", "64 gal/h"]]},
    {"voltage": "14 V", "points": [["40 psi", "122 gal/h"], ["87 psi", "84 gal/h"]]},
]
STEEP = [["40 psi", "9 A"], ["80 psi", "20 A"]]
THIRSTY = [["40 psi", "150 A"], ["80 psi", "190 A"]]
HEAVY = {"supply": "13.8 V", "wire": "8 AWG", "length": "14 ft"}
WIRED = {"supply": "13.8 V", "wire": "12 AWG", "length": "14 ft"}

HARD_PULL = {
    "goal__power": "200 hp",
    "goal__reserve": "0 %",
    "feed__chosen": "-4",
    "pull": [{"rpm": 5000, "power": "400 hp", "boost": "20 psi"}],
}
GOOD_REGULATOR = {"return_line__regulator": {"rated_flow": "100 gal/h", "rated_loss": "0.5 psi"}}

# severity, what it is about, words that must be in it
REMARKS: dict[str, tuple[Scenario, tuple[str, str, str]]] = {
    "next goal below": (
        ("hill-climb-coupe", {"goal__next_power": "350 hp"}),
        ("warning", "goal.next_power", "350 hp is below this one of 560 hp"),
    ),
    "leans out": (("twins", {"goal__power": "1500 hp"}), ("warning", "goal.power", "the mixture goes lean")),
    "one point": (
        ("hill-climb-coupe", {"pump__curve": ONE_POINT}),
        ("warning", "pump.curve", "the rest is a guess"),
    ),
    "off the table": (
        ("hill-climb-coupe", {"pump__curve": SHORT_CURVE}),
        ("warning", "pump.curve", "beyond the pump's table"),
    ),
    "carried far": (
        ("hill-climb-coupe", {"pump__curve": CURVE_12V}),
        ("warning", "pump.curve", "1.5 V is a long way"),
    ),
    "never falls to zero": (
        ("hill-climb-coupe", {"pump__curve": FLAT_CURVE}),
        ("warning", "pump.relief", "never falls to zero"),
    ),
    "near boiling": (
        ("hill-climb-coupe", {"fuel__temperature": "61 degC"}),
        ("warning", "inlet", "above boiling"),
    ),
    "boils when hot": (
        ("hill-climb-coupe", {"fuel__temperature": "57 degC"}),
        ("warning", "fuel.temperature", "can boil"),
    ),
    "sags": (
        ("mild", {"feed__run__0__length": "90 ft"}),
        ("warning", "pressure.regulator", "Rail pressure drops"),
    ),
    "back pressure": (
        (
            "hill-climb-coupe",
            {
                "return_line__run__0__length": "40 ft",
                "return_line__chosen": "-6",
                "return_line__regulator": {"rated_flow": "100 gal/h", "rated_loss": "1 psi"},
                "pressure__idle_vacuum": "14 psi",
            },
        ),
        ("warning", "return_line", "of rail pressure"),
    ),
    "low volts": (("hill-climb-coupe", {"pump__volts": "12.7 V"}), ("warning", "pump.volts", "12.7 V")),
    "more than supply": (
        ("hill-climb-coupe", {"wiring": {**WIRED, "supply": "13.1 V"}}),
        ("warning", "pump.volts", "more than the supply"),
    ),
    "no such engine": (
        ("hill-climb-coupe", {"engine__bsfc": "0.3 lb/(hp*h)"}),
        ("warning", "engine.bsfc", "not credible"),
    ),
    "little pressure left": (
        ("hill-climb-coupe", {"pressure__reference": "atmosphere"}),
        ("warning", "pressure.reference", "they flow 26 % less"),
    ),
    "loss, not velocity": (("twins", {}), ("warning", "feed.run", "Velocity is good, but")),
    "velocity, not loss": (
        (
            "hill-climb-coupe",
            {
                "goal__power": "640 hp",
                "goal__reserve": "0 %",
                "feed__chosen": "-6",
                "feed__run__0__length": "1 ft",
                "feed__run__0__fittings": {},
                "feed__filter": [],
            },
        ),
        ("note", "feed.run", "sounds worse than it is"),
    ),
    "filter over its rating": (("twins", {}), ("warning", "feed.filter", "rated for 120 gal/h")),
    "filter over at full delivery": (("hill-climb-six", {}), ("note", "feed.filter", "within its rating")),
    "bores mixed": (
        ("hill-climb-six", {"feed__run__1__hose": "nominal"}),
        ("warning", "feed.run.hose", "1 of 2 runs"),
    ),
    "tank warms": (
        (
            "twins",
            {"goal__power": "150 hp", "pump__count": 5, "tank": {"volume": "40 l", "fill": "100 %"}},
        ),
        ("warning", "tank.volume", "heat up by"),
    ),
    "bigger than needed": (
        ("hill-climb-coupe", {"feed__chosen": "-10"}),
        ("note", "feed.chosen", "-8 is enough"),
    ),
    "smaller than sound": (
        ("hill-climb-coupe", {"goal__power": "630 hp", "goal__reserve": "0 %", "feed__chosen": "-6"}),
        ("warning", "feed.chosen", "brisk"),
    ),
    "one pump dead": (("twins", {}), ("warning", "pump.count", "check valve for each pump")),
    "in series": (
        ("twins", {"pump__arrangement": "series"}),
        ("warning", "pump.arrangement", "one that stops blocks"),
    ),
    "staged": (
        ("twins", {"pump__running_at_idle": 1}),
        ("note", "pump.running_at_idle", "all must run from"),
    ),
    "more pump than needed": (("mild", {}), ("note", "pump", "112 % more")),
    "E85": (("hill-climb-coupe", {}), ("note", "fuel.ethanol", "51 to 83 % (ASTM D5798)")),
    "methanol": (
        ("hill-climb-coupe", {"fuel__kind": "methanol", "fuel__ethanol": None}),
        ("note", "fuel.kind", "must be rated for it"),
    ),
    "no inlet": (("mild", {}), ("note", "inlet", "not known")),
    "no return": (("hill-climb-six", {}), ("note", "return_line", "not known")),
    "no injectors": (("hill-climb-six", {}), ("note", "injectors", "not known")),
    "no wiring": (("hill-climb-six", {}), ("note", "wiring", "not checked")),
    "no ratings": (
        ("hill-climb-coupe", {}),
        ("warning", "feed.run.pressure_rating", "a guess beyond the pump's"),
    ),
    "volts assumed": (
        ("hill-climb-coupe", {"pump__volts": None}),
        ("note", "pump.volts", "13.0 V at the pump is assumed"),
    ),
    "kind not known": (
        ("hill-climb-coupe", {"pump__kind": None, "pump__volts": "12.6 V"}),
        ("note", "pump.kind", "a turbine would give"),
    ),
    "kind does not matter": (
        ("hill-climb-coupe", {"pump__kind": None, "pump__curve": TWO_SHEETS}),
        ("note", "pump.kind", "either kind gives the same"),
    ),
    "weeps early": (
        ("hill-climb-coupe", {"pump__relief": "72 psi", "goal__power": "350 hp"}),
        ("warning", "pump.relief", "such valves weep early"),
    ),
    "supply is lost": (
        (
            "hill-climb-coupe",
            {"pump__volts": None, "pump__current": THIRSTY, "wiring": {**WIRED, "wire": "24 AWG"}},
        ),
        ("warning", "wiring.length", "loses all"),
    ),
    "current at one pressure": (
        (
            "hill-climb-coupe",
            {"pump__volts": None, "pump__current": [["40 psi", "11 A"]], "wiring": HEAVY},
        ),
        ("warning", "pump.current", "known at 40.0 psi alone"),
    ),
    "wire not given": (
        ("hill-climb-coupe", {"pump__volts": None, "wiring": {"supply": "13.8 V", "length": "14 ft"}}),
        ("warning", "wiring.wire", "its size is not given"),
    ),
    "boost from nowhere": (
        ("hill-climb-coupe", {"engine__induction": "none"}),
        ("warning", "engine.induction", "nothing that makes it"),
    ),
    "no manifold hose at the tank": (
        (
            "mild",
            {
                "engine__induction": "supercharger",
                "pressure__boost": "8 psi",
                "pressure__reference": "atmosphere",
            },
        ),
        ("warning", "pressure.reference", "a regulator on the rail"),
    ),
    "boost from nowhere next year": (
        (
            "mild",
            {"goal__next_power": "500 hp", "goal__next_boost": "8 psi", "goal__next_induction": "none"},
        ),
        ("warning", "goal.next_induction", "8.0 psi of boost is given for the next goal, but no boost"),
    ),
    "no manifold hose next year": (
        (
            "mild",
            {
                "pressure__reference": "atmosphere",
                "goal__next_power": "500 hp",
                "goal__next_boost": "8 psi",
                "goal__next_induction": "supercharger",
            },
        ),
        ("warning", "pressure.reference", "For 500 hp at 8.0 psi of boost: the regulator has no hose"),
    ),
    "rubber and alcohol": (
        ("hill-climb-coupe", {"feed__run__0__hose": "rubber"}),
        ("warning", "feed.run.hose", "not made for that"),
    ),
    "beyond the possible": (
        ("hill-climb-coupe", {"feed__run__0__bore": "1 mm", "feed__run__0__length": "300 ft"}),
        ("warning", "feed.run", "no pump makes that"),
    ),
    "below a vacuum": (
        ("hill-climb-coupe", {"inlet__strainer": {"rated_flow": "5 gal/h", "rated_loss": "10 psi"}}),
        ("warning", "inlet", "below a perfect vacuum"),
    ),
    "a part that costs most": (
        (
            "hill-climb-coupe",
            {
                "goal__power": "350 hp",
                "feed__part": [{"what": "old check valve", "rated_flow": "60 gal/h", "rated_loss": "10 psi"}],
            },
        ),
        ("warning", "feed.run", "the old check valve"),
    ),
    "a nameless part that costs most": (
        (
            "hill-climb-coupe",
            {"goal__power": "350 hp", "feed__part": [{"rated_flow": "60 gal/h", "rated_loss": "10 psi"}]},
        ),
        ("warning", "feed.run", "the other parts"),
    ),
    "stages": (
        ("twins", {"pump__running_at_idle": 1}),
        ("note", "pump.running_at_idle", "Switch the second on at"),
    ),
    "all pumps on": (
        ("twins", {"pump__running_at_idle": 1, "return_line__chosen": "-4"}),
        ("warning", "pump.running_at_idle", "With all 2 pumps on"),
    ),
    "all pumps together": (
        ("twins", {"pump__current": [["40 psi", "9 A"], ["80 psi", "15 A"]], "wiring": HEAVY}),
        ("note", "wiring", "All pumps together draw"),
    ),
    "injectors to look for": (("hill-climb-six", {}), ("note", "injectors", "Look for 6 of")),
    "not covered": (("hill-climb-coupe", {}), ("note", "pump.place", "direct injection")),
    "bad days": (("hill-climb-coupe", {}), ("warning", "stress", "low volts and combined bad day")),
    "relay and fuse": (
        ("hill-climb-coupe", {"wiring": WIRED}),
        ("note", "wiring", "a blade fuse may hold that for minutes or hours"),
    ),
    "a fuse that holds a blocked line": (
        ("hill-climb-coupe", {"wiring": WIRED, "pump__relief": "100 psi"}),
        ("note", "wiring", "a blade fuse holds that"),
    ),
    "a fuse that a blocked line blows": (
        ("hill-climb-coupe", {"wiring": HEAVY, "pump__current": STEEP}),
        ("note", "wiring", "that blows a blade fuse within minutes, as it should"),
    ),
    "pot": (
        ("hill-climb-coupe", {"surge": {"volume": "2 l", "lift_flow": "120 gal/h"}}),
        ("note", "surge.volume", "pick-up dry"),
    ),
}

GOAL_ON_E85 = {"fuel__ethanol": "85 %"}
PRESSED = {**GOAL_ON_E85, "pressure__base": "43.5 psi", "pressure__boost": "0 psi"}
SOUND = {"goal__power": "350 hp", "feed__chosen": "-8", "pump__volts": None, "wiring": HEAVY}
SMALL_POT = {"volume": "2 l", "lift_flow": "40 gal/h", "return_to": "tank"}

OUTSIDE = {
    "pump__place": "outside",
    "fuel__temperature": "40 degC",
    "inlet": {"strainer": {}},
    "pressure__altitude": "5000 ft",
}

OTHERS: dict[str, Scenario] = {
    "close to boiling today, boils when hot": ("mild", OUTSIDE),
    "nothing known before a pump outside": ("mild", {**OUTSIDE, "inlet": None}),
    "the same with injectors too small": ("mild", {**OUTSIDE, "injectors": {"rated_flow": "200 cc/min"}}),
    "injectors too small but on some days": (
        "hill-climb-coupe",
        {"goal__power": "580 hp", "injectors__rated_flow": "1000 cc/min"},
    ),
    "current not known": ("hill-climb-coupe", {"pump__current": None, "pump__volts": None, "wiring": WIRED}),
    "volts lost in plugs": (
        "hill-climb-coupe",
        {"pump__volts": None, "wiring": {**HEAVY, "connections": "0.6 V"}},
    ),
    "wire too long": ("hill-climb-coupe", {"pump__volts": None, "wiring": {**WIRED, "length": "40 ft"}}),
    "lift pump short of the reserve": (
        "hill-climb-coupe",
        {"surge": {"volume": "2 l", "lift_flow": "82 gal/h"}},
    ),
    "a rating and no end of the curve": (
        "hill-climb-coupe",
        {"pump__curve": FLAT_CURVE, "feed__filter__0__pressure_rating": "200 psi"},
    ),
    "a kept run that chokes a sagging rail": (
        "mild",
        {
            "feed__run": [
                {"what": "old pipe", "hose": "tube", "size": "-4", "length": "40 ft"},
                {"length": "2 ft"},
            ]
        },
    ),
    "a pull harder than the goal": ("hill-climb-coupe", HARD_PULL),
    "a pull harder than the goal, regulator at the tank": (
        "mild",
        {
            "pull": [{"power": "900 hp", "boost": "20 psi"}],
            "feed__run__0__length": "60 ft",
            "feed__chosen": "-6",
        },
    ),
    "a pull that opens the relief": (
        "hill-climb-coupe",
        {"pump__relief": "78 psi", "goal__power": "300 hp", "pull": [{"power": "300 hp", "boost": "36 psi"}]},
    ),
    "a pull that boils": (
        "hill-climb-coupe",
        {
            "inlet__strainer": {"rated_flow": "60 gal/h", "rated_loss": "1.8 psi"},
            "fuel__temperature": "55 degC",
            "pull": [{"rpm": 4000, "power": "300 hp", "boost": "0 psi"}],
        },
    ),
    "a pull near boiling outside the tank": (
        "hill-climb-coupe",
        {
            "inlet__strainer": {"rated_flow": "60 gal/h", "rated_loss": "1.8 psi"},
            "fuel__temperature": "46 degC",
            "pump__place": "outside",
            "pull": [{"rpm": 4000, "power": "300 hp", "boost": "0 psi"}],
        },
    ),
    "a pull through a narrow suction line": (
        "hill-climb-coupe",
        {
            "pump__place": "outside",
            "inlet__run": [{"what": "tank to pump", "bore": "10.5 mm", "length": "1 ft"}],
            "pull": [{"rpm": 4000, "power": "300 hp", "boost": "0 psi"}],
        },
    ),
    "a pull without a speed": ("hill-climb-coupe", {"pull": [{"power": "900 hp", "boost": "20 psi"}]}),
    "a pull that asks less": ("hill-climb-coupe", {"pull": [{"power": "200 hp", "boost": "5 psi"}]}),
    "injectors short at a point": (
        "hill-climb-coupe",
        {
            "goal__power": "300 hp",
            "pull": [{"power": "640 hp", "boost": "20 psi"}],
            "injectors__rated_flow": "900 cc/min",
        },
    ),
    "a pot's pump near boiling": (
        "hill-climb-coupe",
        {"fuel__temperature": "75 degC", "pump__place": "surge", "surge": {"volume": "2 l"}},
    ),
    "a wire that does as much as a pump": (
        "twins",
        {
            "goal__power": "1000 hp",
            "pump__volts": None,
            "pump__current": [["40 psi", "9 A"], ["80 psi", "13 A"]],
            "wiring": {"supply": "13.8 V", "wire": "10 AWG", "length": "14 ft", "circuits": 1},
            "return_line": None,
            "injectors__rated_flow": "1500 cc/min",
        },
    ),
    "two pumps where one does": (
        "twins",
        {"goal__power": "500 hp", "pump__running_at_idle": 1, "return_line__chosen": None},
    ),
    "a rail that one pump never holds": (
        "twins",
        {
            "pump__running_at_idle": 1,
            "pump__curve": [
                {"voltage": "13.5 V", "points": [["20 psi", "100 gal/h"], ["40 psi", "10 gal/h"]]}
            ],
        },
    ),
    "a small return with a good regulator": ("twins", {**GOOD_REGULATOR, "return_line__chosen": "-4"}),
    "a small return with a good regulator, all on": (
        "twins",
        {**GOOD_REGULATOR, "return_line__chosen": "-6", "pump__running_at_idle": 1},
    ),
    "the largest return is not at ease": (
        "twins",
        {
            **GOOD_REGULATOR,
            "return_line__chosen": None,
            "return_line__sizes": ["-6"],
            "pressure__idle_vacuum": "0 psi",
        },
    ),
    "a volt by a known kind": ("hill-climb-coupe", {"pump__kind": "turbine"}),
    "the line on the car is fast": (
        "hill-climb-coupe",
        {"feed__run__0__size": "-6", "goal__power": "640 hp", "goal__reserve": "0 %"},
    ),
    "goal far beyond any change": ("hill-climb-coupe", {"goal__power": "4000 hp"}),
    "too fast at a point with less boost": (
        "hill-climb-coupe",
        {
            "goal__power": "200 hp",
            "feed__chosen": "-4",
            "pressure__boost": "60 psi",
            "pull": [{"power": "100 hp", "boost": "0 psi"}],
        },
    ),
    "the one return just holds": (
        "twins",
        {
            "return_line__regulator": {"rated_flow": "100 gal/h", "rated_loss": "3 psi"},
            "return_line__chosen": None,
            "return_line__sizes": ["-6"],
        },
    ),
    "a larger return just holds": (
        "twins",
        {
            "return_line__regulator": {"rated_flow": "100 gal/h", "rated_loss": "3 psi"},
            "return_line__chosen": "-4",
            "return_line__sizes": ["-6"],
        },
    ),
    "one line, too fast": (
        "hill-climb-coupe",
        {"feed__run__0__size": "-4", "goal__power": "300 hp", "pull": []},
    ),
    "too fast and barely enough": ("hill-climb-six", {"feed__chosen": "-4", "goal__power": "590 hp"}),
    "a kept run that eats the pump": (
        "hill-climb-six",
        {
            "feed__chosen": "-10",
            "feed__run__0__size": "-6",
            "feed__run__0__length": "40 ft",
            "goal__power": "720 hp",
        },
    ),
    "E30": ("hill-climb-coupe", {"fuel__ethanol": "30 %"}),
    "a filter that loses most": (
        "hill-climb-coupe",
        {"goal__power": "400 hp", "feed__filter__0__rated_loss": "12 psi"},
    ),
    "a long line of the largest size": (
        "hill-climb-coupe",
        {"goal__power": "480 hp", "feed__sizes": ["-8"], "feed__run__0__length": "90 ft"},
    ),
    "bores by the dash": ("hill-climb-coupe", {"feed__run__0__hose": "nominal"}),
    "one pump is enough": ("twins", {"goal__power": "400 hp"}),
    "no return size works": ("twins", {"return_line__sizes": ["-4"], "return_line__chosen": None}),
    "the return on the car is small": (
        "twins",
        {"return_line__run__0__size": "-4", "return_line__chosen": None},
    ),
    "lift pump and return to the tank": ("hill-climb-coupe", {"surge": SMALL_POT}),
    "no fuse is large enough": ("hill-climb-coupe", {"pump__current": THIRSTY, "wiring": WIRED}),
    "pumps on one circuit": ("twins", {"pump__current": THIRSTY, "wiring": {**WIRED, "circuits": 1}}),
    "outside pump near boiling": (
        "hill-climb-coupe",
        {"fuel__temperature": "50 degC", "pump__place": "outside", "inlet__run": SUCTION},
    ),
    "no pump, chosen brisk": ("no-pump-yet", {"feed__chosen": "-6"}),
    "next goal on another line": (
        "hill-climb-coupe",
        {"goal__power": "400 hp", "goal__next_power": "560 hp", "goal__next_boost": "20 psi"},
    ),
    "goal and fuel": ("goal-alone", GOAL_ON_E85),
    "goal, fuel and pressure": ("goal-alone", PRESSED),
    "all but the line": ("goal-alone", {**PRESSED, "pump__curve": SHORT_CURVE}),
    "downhill": ("hill-climb-coupe", {"goal__power": "200 hp", "feed__run__0__rise": "-9 m"}),
    "sound": ("hill-climb-coupe", {**SOUND, "goal__next_power": None}),
    "sound but for the next goal": ("hill-climb-coupe", {**SOUND, "goal__next_power": "1500 hp"}),
    "comfortable where the computer holds the rail": (
        "hill-climb-coupe",
        {
            **SOUND,
            "feed__chosen": None,
            "goal__power": "420 hp",
            "pressure__regulator": "none",
            "feed__filter": [],
            "feed__run__0__length": "2 ft",
        },
    ),
    "no pump, settled too small": ("no-pump-yet", {"feed__chosen": "-4"}),
    "no pump, settled large": ("no-pump-yet", {"feed__chosen": "-12"}),
    "no pump, nothing fits": ("no-pump-yet", {"feed__sizes": ["3 mm", "4 mm"]}),
    "no pump, next goal": ("no-pump-yet", {"goal__next_power": "1500 hp"}),
    "no pump, one line": ("no-pump-yet", {"feed__run__0__size": "-8", "feed__run__1__size": "-8"}),
    "one line": ("hill-climb-coupe", {"feed__run__0__size": "-8"}),
    "one line, too small": ("hill-climb-coupe", {"feed__run__0__size": "-4"}),
    "nothing fits": ("hill-climb-coupe", {"feed__sizes": ["3 mm", "4 mm"]}),
    "nothing at all": ("hill-climb-coupe", {"pressure__base": "150 psi", "pressure__boost": "100 psi"}),
    "at the wheels": ("hill-climb-coupe", {"goal__power_at": "wheels", "goal__power": "400 hp"}),
    "no reserve wanted": ("hill-climb-coupe", {"goal__reserve": "0 %"}),
    "computer holds the rail": ("hill-climb-coupe", {"pressure__regulator": "none"}),
    "own case": (
        "hill-climb-six",
        {"stress": {"case": [OWN_CASE]}},
    ),
    "settled before there is a line": ("goal-alone", {"feed__chosen": "-4"}),
    "own fuel": (
        "hill-climb-coupe",
        {
            "fuel": {
                "kind": "own",
                "density": "760 kg/m^3",
                "viscosity": "0.7 mm^2/s",
                "lhv": "30 MJ/kg",
            }
        },
    ),
    "next goal met": ("hill-climb-coupe", {"goal__next_power": "570 hp", "goal__reserve": "10 %"}),
    "next goal with the first boost": ("mild", {"goal__next_power": "500 hp", "goal__next_boost": "8 psi"}),
    "next goal short of the reserve with the first boost": (
        "mild",
        {
            "pump__curve": [{"points": [["58 psi", "46 gal/h"], ["80 psi", "30 gal/h"]]}],
            "goal__next_power": "400 hp",
            "goal__next_boost": "8 psi",
            "goal__next_induction": "supercharger",
        },
    ),
    "next goal, all short": (
        "hill-climb-coupe",
        {"goal__next_power": "1500 hp", "goal__next_boost": "60 psi"},
    ),
}

ALL: dict[str, Scenario] = {
    **{f"limit: {name}": scenario for name, scenario in LIMITS.items()},
    **{f"remark: {name}": scenario for name, (scenario, _) in REMARKS.items()},
    **OTHERS,
}


@cache
def made(name: str, units: str | None = None) -> Result:
    """A scenario in words, solved once; in the units of a system, else in those of its example."""
    example, changes = ALL[name]
    return told(example, **changes, **({} if units is None else {"show_units": units}))
