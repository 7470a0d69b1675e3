"""Serves a folder to browsers on this machine; a module of its own, since servers take long to import."""

from collections.abc import Iterator
from contextlib import contextmanager
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from threading import Thread

LOOPBACK = "127.0.0.1"


@contextmanager
def served(folder: Path, port: int) -> Iterator[str]:
    """Serve a folder on loopback while the block runs; gives its address. Raises OSError for a taken port."""
    handler = partial(_Quiet, directory=str(folder))
    with ThreadingHTTPServer((LOOPBACK, port), handler) as server:
        Thread(target=server.serve_forever, daemon=True).start()
        try:
            yield f"http://{LOOPBACK}:{server.server_port}/"
        finally:
            server.shutdown()


class _Quiet(SimpleHTTPRequestHandler):
    """Says nothing of each request, and lets no browser keep a page that may change."""

    def log_message(self, format: str, *args: object) -> None:  # the library's own name
        """Say nothing."""

    def end_headers(self) -> None:
        """Have every page asked for anew."""
        self.send_header("Cache-Control", "no-store")
        super().end_headers()
