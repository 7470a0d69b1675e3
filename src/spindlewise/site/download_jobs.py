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
    region_comparison,
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


def download_jobs(desk: Desk, replies: Mapping[str, Reply]) -> list[Job]:
    """The jobs of all downloads."""
    jobs = [
        Job("data/products.csv", lambda: products_csv(desk)),
        Job("data/prices.csv", lambda: prices_csv(desk)),
        Job("data/products.json", lambda: products_json(desk)),
        Job(RANKING_SCHEMA, lambda: _schema(ranking_schema())),
        Job(PRODUCTS_SCHEMA, lambda: _schema(products_schema())),
    ]
    jobs += [_ranking(name, reply) for name, reply in replies.items()]
    for region in desk.catalog.settings.regions:
        comparison = region_comparison(desk, region)
        if comparison is not None:
            jobs += _comparison(desk, region, comparison)
    return jobs


def _comparison(desk: Desk, region: str, comparison: Comparison) -> list[Job]:
    sheet, data, table, text, _ = (download.path for download in region_downloads(region))
    return [
        Job(sheet, lambda: comparison_csv(desk, comparison)),
        Job(data, lambda: comparison_json(comparison)),
        Job(table, lambda: comparison_markdown(desk, comparison)),
        Job(text, lambda: description_text(desk, comparison.ranking)),
    ]


def _ranking(name: str, reply: Reply) -> Job:
    return Job(f"data/ranking-{name}.json", lambda: ranking_json(reply))


def _schema(schema: Mapping[str, Json]) -> bytes:
    return plain_json(schema).encode()
