"""The page on which readers weigh for themselves: form, ranking without script, and the export behind it."""

from collections.abc import Mapping, Sequence

from spindlewise.answer.desk import Desk
from spindlewise.answer.market import NoMarket
from spindlewise.buyer.buyer import Buyer
from spindlewise.render.fragment import PAGE, can_be_linked, fragment
from spindlewise.site.addresses import relative
from spindlewise.site.export import weigh_export
from spindlewise.site.export_reception import ReceptionTables
from spindlewise.site.figured import Figured
from spindlewise.site.frame import Frame
from spindlewise.site.part import Drawn
from spindlewise.site.templating import environment, json_for_script
from spindlewise.site.weigh_assets import weigh_assets
from spindlewise.site.weigh_table import WeighTable, weigh_table

NOTHING_DRAWN: Drawn = {}
WATER = ("IPX4", "IPX5", "IPX6", "IPX7", "IPX8", "IP54", "IP55", "IP66", "IP67", "IP68")
"""The codes that the form offers; a link may state any other."""


def weigh_page(
    desk: Desk,
    frame: Frame,
    buyers: Mapping[str, Buyer],
    tables: ReceptionTables | None = None,
    pictures: Sequence[Figured] = (),
    drawn: Drawn = NOTHING_DRAWN,
) -> bytes:
    """The page as bytes; it works from a folder on disk and asks for nothing else.

    `tables` are the reading modes of the catalog, worked out unless given; `pictures` stand in it for readers
    whose browser runs no script.
    """
    from markupsafe import Markup

    own = weigh_assets()
    export = weigh_export(desk, tables)
    template = environment().get_template("weigh.html.j2")
    text = template.render(
        page=PAGE,
        to=lambda target: relative(PAGE, target),
        frame=frame,
        section="weigh",
        # the package's own files and JSON that cannot end its element
        style=Markup(own.style),  # noqa: S704  # see above
        script=Markup(own.script),  # noqa: S704  # see above
        data=Markup(json_for_script(export)),  # noqa: S704  # see above
        policy=own.policy,
        table=_table(desk),
        pictures=pictures,
        drawn=drawn,
        criteria=export["criteria"],
        regions=[(code, name) for code, name, _ in frame.regions],
        water_options=[(code, f"{code} or better") for code in WATER],
        patterns=sorted({p.cleat.pattern for p in desk.catalog.products.values()} - {"none"}),
        products=[(p.id, f"{p.maker} {p.name}") for p in desk.catalog.products.values()],
        ready=[
            (buyer.name, fragment(buyer))
            for _, buyer in sorted(buyers.items())
            if can_be_linked(desk.catalog, buyer)
        ],
    )
    return text.encode()


def _table(desk: Desk) -> WeighTable | None:
    for region in desk.catalog.settings.regions:
        try:
            return weigh_table(desk, region)
        except NoMarket:
            continue
    return None
