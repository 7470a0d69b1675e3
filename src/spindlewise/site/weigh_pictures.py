"""The weighing page's pictures for readers whose browser runs no script: those of the usual weighting."""

from spindlewise.answer.desk import Desk
from spindlewise.answer.ranking import rank
from spindlewise.render.blocks import Column, Table
from spindlewise.render.naming import naming
from spindlewise.site.buyer_pictures import contributions_figured
from spindlewise.site.charts import price_score_picture
from spindlewise.site.figured import Figured, figured
from spindlewise.site.region_table import RegionTable, chart_points
from spindlewise.site.usual import usual_buyer
from spindlewise.units import points_text


def weigh_pictures(desk: Desk, table: RegionTable) -> tuple[Figured, ...]:
    """Price against score, and where the scores come from; none of a region that cannot be served."""
    if table.missing:
        return ()
    ranking = rank(desk, usual_buyer(desk.catalog, table.code))
    return (*_price_score(table), *contributions_figured(ranking, naming(desk.catalog)))


def _price_score(table: RegionTable) -> tuple[Figured, ...]:
    points = chart_points(table)
    columns = (Column("Pedal"), Column("Price", "right"), Column("Score", "right"))
    rows = tuple((point.name, point.price_text, points_text(point.expected)) for point in points)
    caption = (
        "The stepped line joins the pedals that no other beats on both price and score. Bars tell how far a "
        "score may go either way; a cross is a pedal held back by a safety notice."
    )
    return figured(
        price_score_picture(points, table.currency), caption, Table("Price and score", columns, rows)
    )
