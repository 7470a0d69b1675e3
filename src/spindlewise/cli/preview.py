"""`spindlewise preview`: the site on this machine only, published anew whenever the catalog changes."""

from collections.abc import Callable, Iterable
from importlib import import_module
from pathlib import Path
from tempfile import TemporaryDirectory
from threading import Event
from typing import Annotated

import typer

from spindlewise.cli.endings import wrong_usage
from spindlewise.cli.opening import open_desk
from spindlewise.cli.options import AsOf, Catalog, Common, Json, common
from spindlewise.cli.printing import remark


def add_to(app: typer.Typer) -> None:
    """Add the command."""
    app.command("preview")(preview)


def preview(
    ctx: typer.Context,
    port: Annotated[
        int,
        typer.Option(min=0, max=65535, help="Where to listen; 0: any port that is free."),
    ] = 0,
    watch: Annotated[
        bool, typer.Option("--watch", help="Publish anew when a file of the catalog changes.")
    ] = False,
    catalog: Catalog = None,
    as_of: AsOf = None,
    json: Json = False,
) -> None:
    """Show the site on this machine alone, while you write.

    Open the address that it says in a browser; Ctrl-C ends it and leaves nothing behind. A catalog with
    errors leaves the last good site standing and says what is wrong.
    """
    from spindlewise.cli.serving import served

    asked = common(ctx, catalog, as_of, json)
    changes = _changes(open_desk(asked).catalog.folder) if watch else None
    with TemporaryDirectory(prefix="spindlewise-") as place:
        out = Path(place) / "site"
        _publish(asked, out)
        with served(out, port) as address:
            remark(f"{address}index.html, on this machine only; Ctrl-C ends it.")
            try:
                _stay(asked, out, changes)
            except KeyboardInterrupt:
                remark("Ended.")


def _changes(folder: Path) -> Iterable[object]:
    try:
        watch: Callable[..., Iterable[object]] = import_module("watchfiles").watch
    except ImportError:
        wrong_usage("--watch needs the package watchfiles: pip install 'spindlewise[preview]'")
    return watch(folder, raise_interrupt=True)


def _stay(asked: Common, out: Path, changes: Iterable[object] | None) -> None:
    if changes is None:
        Event().wait()
        return
    for _ in changes:
        try:
            _publish(asked, out)
        except typer.Exit:
            remark("The last good site stays; correct the catalog and it is published anew.")


def _publish(asked: Common, out: Path) -> None:
    from spindlewise.cli.publish import publish_site

    desk = open_desk(asked)
    publish_site(desk.catalog, desk.day, out)
