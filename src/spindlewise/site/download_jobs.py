"""Every download of the site: which files there are, how each is made, what a region's page says of it."""

from collections.abc import Mapping
from dataclasses import dataclass

from spindlewise.answer.desk import Desk
from spindlewise.answer.reply import Reply
from spindlewise.render.as_json import Json, plain_json
from spindlewise.site.comparison import (
    Comparison,
    comparison_csv,
    comparison_json,
    comparison_markdown,
)
from spindlewise.site.description import description_text
from spindlewise.site.downloads import prices_csv, products_csv, products_json, ranking_json
from spindlewise.site.job import Job
from spindlewise.site.json_schemas import products_schema, ranking_schema


@dataclass(frozen=True, slots=True)
class Download:
    """A file beside the pages: where it stands and what it is good for."""

    path: str
    said: str


RANKING_SCHEMA, PRODUCTS_SCHEMA = "data/ranking.schema.json", "data/products.schema.json"


def region_downloads(region: str) -> tuple[Download, ...]:
    """What a region's page offers to take along.

    >>> [download.path for download in region_downloads("EU")][0]
    'data/comparison-eu.csv'
    """
    stem = f"data/comparison-{region.lower()}"
    return (
        Download(f"{stem}.csv", "a sheet, with the units in its head and a status beside each figure"),
        Download(f"{stem}.json", "for programs, with each figure’s grade, date and source"),
        Download(f"{stem}.md", "a table to paste into a post"),
        Download(f"{stem}.txt", "to stand under a video, who gave what to whom first"),
        Download(RANKING_SCHEMA, "what the JSON holds, as a JSON Schema"),
    )


def catalog_jobs(desk: Desk) -> list[Job]:
    """The downloads about products, in which no price stands, and the schemas."""
    return [
        Job("data/products.csv", lambda: products_csv(desk)),
        Job("data/products.json", lambda: products_json(desk)),
        Job(RANKING_SCHEMA, lambda: _schema(ranking_schema())),
        Job(PRODUCTS_SCHEMA, lambda: _schema(products_schema())),
    ]


def price_job(desk: Desk) -> Job:
    """The price log up to the day."""
    return Job("data/prices.csv", lambda: prices_csv(desk))


def comparison_jobs(desk: Desk, region: str, comparison: Comparison) -> list[Job]:
    """A region's comparison in each of its forms."""
    sheet, data, table, text, _ = (download.path for download in region_downloads(region))
    return [
        Job(sheet, lambda: comparison_csv(desk, comparison)),
        Job(data, lambda: comparison_json(comparison)),
        Job(table, lambda: comparison_markdown(desk, comparison)),
        Job(text, lambda: description_text(desk, comparison.ranking)),
    ]


def ranking_job(name: str, reply: Reply) -> Job:
    """A buyer's ranking."""
    return Job(f"data/ranking-{name}.json", lambda: ranking_json(reply))


def _schema(schema: Mapping[str, Json]) -> bytes:
    return plain_json(schema).encode()
