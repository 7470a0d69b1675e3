import gc

import pytest

from spindlewise.catalog.collector import collector_paused


@pytest.mark.parametrize("on", [True, False])
def test_it_is_left_as_it_was_whatever_happens(on: bool) -> None:
    try:
        (gc.enable if on else gc.disable)()
        with pytest.raises(ZeroDivisionError), collector_paused():
            1 // int(gc.isenabled())
        assert gc.isenabled() is on
        assert gc.get_freeze_count() == 0
    finally:
        gc.enable()
