from dataclasses import replace
from datetime import timedelta

import worlds
from spindlewise.catalog.file_digest import digests
from spindlewise.site import rests_on
from spindlewise.site.rests_on import RestsOn, bench_digests, program

BUYERS = {"tester": worlds.buyer()}


def world(*rows, weight=330):
    products = [worlds.product("heron", {"weight_g": (worlds.weighed(weight),)}), worlds.product("siskin")]
    return worlds.catalog(products, [worlds.price("heron", 500), worlds.price("siskin", 450, line=3), *rows])


def on(catalog, buyers=BUYERS, day=worlds.DAY):
    return RestsOn(catalog, buyers, day)


def test_a_price_reaches_its_product_and_its_region_and_nothing_else():
    before, after = on(world()), on(world(worlds.price("siskin", 430, line=4)))
    assert after.all != before.all
    assert after.prices_in("EU") != before.prices_in("EU")
    assert after.prices_of("siskin") != before.prices_of("siskin")
    assert after.prices_in("US") == before.prices_in("US")
    assert after.prices_of("heron") == before.prices_of("heron")
    assert after.all_but_prices() == before.all_but_prices()


def test_anything_else_reaches_everything():
    before = on(world())
    settings = world().settings.model_copy(update={"title": "Another"})
    others = {
        "a weighing": on(world(weight=331)),
        "a day": on(world(), day=worlds.DAY + timedelta(1)),
        "a buyer": on(world(), {"tester": worlds.buyer(budget=900)}),
        "no buyer": on(world(), {}),
        "a title": on(replace(world(), settings=settings)),
        "a rate": on(replace(world(), rates=type(world().rates)(()))),
        "a file of the bench": on(replace(world(), bench_files=frozenset({"bench/more.csv"}))),
    }
    for what, after in others.items():
        assert after.all_but_prices() != before.all_but_prices(), what
        assert after.prices_in("EU") != before.prices_in("EU"), what
        assert after.prices_of("heron") != before.prices_of("heron"), what
        assert after.all != before.all, what


def test_kinds_of_digests_are_never_mistaken_for_each_other():
    found = on(world())
    every = {found.all, found.all_but_prices(), found.prices_in("heron"), found.prices_of("heron")}
    every |= {
        found.prices_of("heron", "more"),
        found.all_but_prices("heron"),
        found.all_but_prices("her", "on"),
    }
    assert len(every) == 7


def test_another_program_is_another_site(monkeypatch, tmp_path):
    before = program()
    assert program() == before
    program.cache_clear()
    (tmp_path / "one.py").write_text("x = 1\n")
    (tmp_path / "one.pyc").write_text("compiled")
    monkeypatch.setattr(rests_on, "PACKAGE", tmp_path)
    other = program()
    assert other != before
    program.cache_clear()
    (tmp_path / "one.py").write_text("x = 2\n")
    assert program() != other
    program.cache_clear()


def test_the_bench_counts_by_its_files(site):
    files = bench_digests(digests(site.catalog.folder))
    assert "bench/weighings.csv" in files
    assert all(name.startswith("bench/") for name in files)
    assert on(site.catalog).bench == files


def test_a_decoder_that_is_not_there_is_another_program_than_one_that_is(monkeypatch):
    program.cache_clear()
    before = program()
    monkeypatch.setattr(rests_on, "DECODER", "no-such-decoder")
    program.cache_clear()
    assert program() != before
    program.cache_clear()
