import pytest
from pydantic import ValidationError

from spindlewise.buyer.receiver import Channels, Receiver


def test_a_receiver_shows_what_it_gets_unless_said_otherwise() -> None:
    read = Receiver(name="watch", protocols=("ANT+",), channels="unknown", pairs_two_sensors="cannot")
    assert (read.shows_balance, read.shows_stroke_metrics) == ("can", "can")


def test_channels_are_counted_and_kept() -> None:
    channels = Channels(total=4, kept=("heart rate", "speed"))
    assert channels.total - len(channels.kept) == 2
    assert Channels(total=0).kept == ()


@pytest.mark.parametrize(
    "changes",
    [
        {"name": ""},
        {"protocols": ()},
        {"protocols": ("ANT",)},
        {"channels": 4},
        {"channels": {"total": -1}},
        {"channels": {"total": 65}},
        {"channels": {"total": 2, "kept": ("heartrate",)}},
        {"pairs_two_sensors": True},
        {"shows_balance": "maybe"},
        {"colour": "black"},
    ],
)
def test_what_a_receiver_cannot_be(changes: dict[str, object]) -> None:
    right = {"name": "watch", "protocols": ("ANT+",), "channels": "unlimited", "pairs_two_sensors": "unknown"}
    assert Receiver.model_validate(right)
    with pytest.raises(ValidationError):
        Receiver.model_validate({**right, **changes})
