"""A picture in a page with all that belongs to it: what to look for, and the same figures as a table."""

from dataclasses import dataclass

from spindlewise.render.blocks import Section, Table
from spindlewise.site.picture import Picture


@dataclass(frozen=True, slots=True)
class Figured:
    """`caption` says what the marks mean; the title and the description are the picture's own."""

    picture: Picture
    caption: str
    table: Table
    opens: str = "The figures as a table"

    @property
    def section(self) -> Section:
        """The table as the page's blocks have it."""
        return Section(self.picture.name, (self.table,))


def figured(picture: Picture | None, caption: str, table: Table) -> tuple[Figured, ...]:
    """The figure, or nothing where there is no picture."""
    return (Figured(picture, caption, table),) if picture else ()
