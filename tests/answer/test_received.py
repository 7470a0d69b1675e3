"""What arrives on the buyer's receivers, as the ranking uses it."""

from datetime import date

import worlds
from spindlewise.answer.received import detail_standing, receive_all

HEARS_BLUETOOTH = {"name": "phone", "protocols": ("Bluetooth",), "channels": "unlimited"}


def received(product, *receivers, **changes):
    desk = worlds.desk([product], [])
    buyer = worlds.buyer(receivers=receivers, **changes) if receivers else worlds.buyer(receivers=())
    return receive_all(desk.catalog, desk.yardstick, buyer, desk.day)[product.id]


def receiver(**changes):
    return {**HEARS_BLUETOOTH, "pairs_two_sensors": "cannot", **changes}


def test_both_sides_over_one_protocol_and_one_doubled_over_the_other():
    heron = worlds.product(
        "heron", links=(worlds.link("ANT+"), worlds.link("Bluetooth", "one side doubled", "absent"))
    )

    assert received(heron, receiver()).reception.mode == "one side doubled"
    both = received(heron, receiver(protocols=("ANT+", "Bluetooth"))).reception
    assert (both.mode, both.protocol, both.balance) == ("both sides", "ANT+", "arrives")


def test_the_first_receiver_counts_and_all_are_told():
    heron = worlds.product("heron", links=(worlds.link("ANT+"),))
    found = received(heron, receiver(), receiver(name="head unit", protocols=("ANT+",)))

    assert [r.mode for r in found.receptions] == ["nothing", "both sides"]
    assert found.standings["detail"].value == "nothing"


def test_without_a_receiver_the_best_case_stands_in_and_says_so():
    found = received(worlds.product("heron"))

    assert found.assumed
    assert found.reception.receiver == "any receiver (none stated)"


def test_other_sensors_take_their_channels():
    two = worlds.product("heron", links=(worlds.link("Bluetooth", "two channels", "absent"),))
    roomy = receiver(pairs_two_sensors="can", channels={"total": 3, "kept": ("heart rate",)})
    full = receiver(pairs_two_sensors="can", channels={"total": 3, "kept": ("heart rate", "cadence")})

    assert received(two, roomy).reception.mode == "both sides"
    assert received(two, full).reception.mode == "one side only"


def test_promised_firmware_counts_as_absent():
    carries = (
        {"what": "power", "how": "one side doubled", **worlds.START},
        {
            "what": "power",
            "how": "both sides",
            "since": "promised",
            "firmware": "4.0",
            "source": "maker",
        },
        {
            "what": "balance",
            "how": "carried",
            "since": date(2027, 1, 1),
            "firmware": "4.1",
            "source": "maker",
        },
    )
    heron = worlds.product("heron", links=({"protocol": "Bluetooth", "carries": carries},))
    found = received(heron, receiver())

    assert (found.reception.mode, found.reception.balance) == ("one side doubled", "does not arrive")


def test_unknown_links_leave_the_reading_unknown_and_a_plain_pedal_sends_nothing():
    silent = received(worlds.product("heron", links="unknown"), receiver())
    plain = received(worlds.plain("gull"), receiver())

    assert silent.reception.mode == "unknown"
    assert (silent.standings["detail"].value, silent.standings["detail"].origin) == (None, "unknown")
    assert plain.reception.mode == "nothing"
    assert plain.standings["reading_uncertainty"].origin == "not applicable"


def test_detail_names_the_steps_that_remain_possible():
    def detail(power="both sides", balance="carried", metrics="carried", **changes):
        links = (worlds.link("Bluetooth", power, balance, metrics),)
        return detail_standing(received(worlds.product("heron", links=links), receiver(**changes)).reception)

    assert detail().value == "power, balance and stroke metrics"
    assert detail(metrics="absent").value == "power and balance"
    assert detail(balance="absent").value == "power only"
    assert detail(metrics="unknown").possible == (
        "power and balance",
        "power, balance and stroke metrics",
    )
    assert detail(balance="unknown", metrics="absent").possible == ("power only", "power and balance")
    assert detail("one side doubled", metrics="unknown").value == "one side doubled"
