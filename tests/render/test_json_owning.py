from decimal import Decimal

import worlds
from spindlewise.render.json_owning import owned_json


def test_the_lines_add_up_to_the_total_and_money_is_text() -> None:
    a_desk = worlds.desk([worlds.product("heron", battery="unknown")], [worlds.price("heron", 500)])
    buyer = worlds.buyer(riding={"years": 2.0, "hours_per_year": 200.0})
    found = owned_json(a_desk.ownership(buyer)["heron"], "EUR")

    assert found["lines"] == [{"what": "purchase", "times": 1.0, "price": "500.00", "amount": "500.00"}]
    assert (found["total"], found["per_year"], found["per_hour"]) == ("500.00", "250.00", "1.25")
    assert sum(Decimal(line["amount"]) for line in found["lines"]) == Decimal(str(found["total"]))  # type: ignore[union-attr,index,call-overload,arg-type]
    assert (found["unknown"], found["complete"]) == (["batteries"], False)
