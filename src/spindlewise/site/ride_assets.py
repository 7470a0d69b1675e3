"""Style and script of a ride's page, on which readers look closer, and the policy that allows both."""

from functools import cache

from spindlewise.site.templating import Assets, asset, assets, assets_of


@cache
def ride_assets() -> Assets:
    """The site's own style with the page's, and the page's script."""
    return assets_of(assets().style + asset("ride.css"), asset("ride.js"))
