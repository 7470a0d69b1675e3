"""What a buyer states in short text: receivers, weights in points, an order of importance."""

import math
from collections.abc import Iterable, Mapping
from typing import Any, get_args

from spindlewise.buyer.receiver import Receiver
from spindlewise.buyer.weights import CRITERIA, CriterionName
from spindlewise.problems import nearest, quoted

PROTOCOLS = {"ant+": "ANT+", "ant": "ANT+", "bluetooth": "Bluetooth", "ble": "Bluetooth"}
LARGEST_POINTS = 1000.0
RECEIVER_SYNTAX = "NAME:PROTOCOLS[:channels=N][:pairs|no-pairs][:no-balance][:no-strokes]"
"""How a receiver is written: 'watch:ANT+,Bluetooth:channels=1:no-pairs'."""


def receiver_from(text: str) -> Receiver:
    """A receiver from its parts, parted by colons; what is not stated is unknown, not assumed.

    After the name come the protocols that it hears; then, in any order: `channels=N` for so many sensor
    channels left for power (or `channels=unlimited`), `pairs` or `no-pairs` for whether it takes two power
    sensors for one rider, `no-balance` and `no-strokes` for what it does not show.
    Raises ValueError with the part that is not understood.

    >>> receiver_from("watch:ANT+,Bluetooth:channels=1:no-pairs").pairs_two_sensors
    'cannot'
    """
    name, *parts = [part.strip() for part in text.split(":")]
    if not name or not name.isprintable() or not parts or not parts[0]:
        raise ValueError(f"{quoted(text)} is not a receiver; write it as {RECEIVER_SYNTAX}")
    fields: dict[str, Any] = {
        "name": name[:600],
        "protocols": _protocols(parts[0]),
        "channels": "unknown",
        "pairs_two_sensors": "unknown",
    }
    for part in parts[1:]:
        fields |= _ability(part)
    return Receiver.model_validate(fields)


def _protocols(text: str) -> tuple[str, ...]:
    found = []
    for word in text.split(","):
        protocol = PROTOCOLS.get(word.strip().casefold())
        if protocol is None:
            raise ValueError(
                f"{quoted(word.strip())} is no protocol known here; write ANT+, Bluetooth or both"
            )
        found.append(protocol)
    return tuple(dict.fromkeys(found))


def _ability(part: str) -> dict[str, Any]:
    plain: dict[str, dict[str, Any]] = {
        "pairs": {"pairs_two_sensors": "can"},
        "no-pairs": {"pairs_two_sensors": "cannot"},
        "no-balance": {"shows_balance": "cannot"},
        "no-strokes": {"shows_stroke_metrics": "cannot"},
        "channels=unlimited": {"channels": "unlimited"},
        "channels=unknown": {"channels": "unknown"},
    }
    if part in plain:
        return plain[part]
    key, _, number = part.partition("=")
    if key == "channels" and number.isascii() and number.isdigit() and int(number[:4]) <= 64:
        return {"channels": {"total": int(number[:4]), "kept": ()}}
    wanted = "channels=N (0 to 64), pairs, no-pairs, no-balance or no-strokes"
    raise ValueError(f"{quoted(part)} is not understood of a receiver; write {wanted}")


def points_from(text: str) -> Mapping[CriterionName, float]:
    """Weights in points, such as 'price=40,weight=20'; only their ratios count.

    Raises ValueError for a name that is no criterion, twice the same one, and what is no number from 0.

    >>> points_from("price=40, weight=20")
    {'price': 40.0, 'weight': 20.0}
    """
    points: dict[CriterionName, float] = {}
    for part in text.split(","):
        name, equals, number = part.partition("=")
        criterion = criterion_from(name)
        if not equals:
            raise ValueError(f"{quoted(part.strip())} has no number; write it as {criterion}=40")
        if criterion in points:
            raise ValueError(f"{criterion} stands twice; give each criterion one number")
        points[criterion] = _points(criterion, number.strip())
    return points


def _points(criterion: str, number: str) -> float:
    try:
        value = float(number)
    except ValueError:
        value = math.nan
    if not 0 <= value <= LARGEST_POINTS:
        raise ValueError(
            f"{criterion}={number[:40]} is no weight; write a number from 0 to {LARGEST_POINTS:g}"
        )
    return value


def order_from(text: str) -> tuple[CriterionName, ...]:
    """Criteria from most to least important, such as 'price,weight'. Raises ValueError like `points_from`.

    >>> order_from("weight,price")
    ('weight', 'price')
    """
    order = tuple(criterion_from(name) for name in text.split(","))
    if len(set(order)) != len(order):
        raise ValueError(f"{quoted(text)} names a criterion twice; name each once")
    return order


def criterion_from(text: str) -> CriterionName:
    """A criterion by its name; hyphens, spaces and capitals do not matter. Raises ValueError otherwise.

    >>> criterion_from("Running time")
    'running_time'
    """
    name = text.strip().casefold().replace("-", "_").replace(" ", "_")
    for criterion in get_args(CriterionName):
        if criterion == name:
            return CRITERIA[CRITERIA.index(criterion)]
    raise ValueError(f"no criterion is called {quoted(text.strip())}; {did_you_mean(name, CRITERIA)}")


def did_you_mean(word: str, known: Iterable[str]) -> str:
    """The near one, or all that there are where none is near and the list is short.

    >>> did_you_mean("prise", ["price", "weight"])
    'did you mean price?'
    """
    names = sorted(known)
    near = nearest(word, names)
    if near is not None:
        return f"did you mean {near}?"
    if len(names) <= 40:
        return f"there are {', '.join(names)}" if names else "there are none"
    return f"there are {len(names)}, from {names[0]} to {names[-1]}"
