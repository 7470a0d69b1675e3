"""Which safety notices an answer must tell, whatever was asked for and however it was weighed."""

from spindlewise.answer.desk import Desk
from spindlewise.answer.ranking import Ranking
from spindlewise.catalog.as_of import standing_notices
from spindlewise.catalog.product import SafetyNotice


def notices_told(desk: Desk, ranking: Ranking) -> tuple[tuple[str, SafetyNotice], ...]:
    """The notices on the buyer's present pedals, which are ridden today, and on all that is placed.

    Each with its product's id, the present pedals' first. What a need keeps out is not recommended, and is
    told only where it is ridden already.
    """
    products = desk.catalog.products
    ridden = ranking.buyer.present_pedals
    names = dict.fromkeys([*([ridden] if ridden in products else []), *ranking.table.products])
    return tuple((name, notice) for name in names for notice in standing_notices(products[name], desk.day))
