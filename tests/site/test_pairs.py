import worlds
from spindlewise.answer.reply import reply_to
from spindlewise.answer.versus import versus
from spindlewise.render.blocks import Heading, Table
from spindlewise.render.words_versus import versus_blocks
from spindlewise.site.pairs import pair_of


def desk(*names):
    return worlds.desk(
        [worlds.product(name) for name in names],
        [worlds.price(name, 400 + 50 * place, line=2 + place) for place, name in enumerate(names)],
    )


def test_the_pick_beside_what_comes_next_in_the_words_of_versus():
    world, buyer = desk("heron", "siskin", "plover"), worlds.buyer()
    reply = reply_to(world, buyer)
    found = pair_of(world, "tester", reply)
    assert (found.first, found.second) == ("heron", "siskin")
    whole = versus_blocks(world.catalog, versus(world, buyer, "heron", "siskin"))
    assert found.words.blocks == whole[: len(found.words.blocks)]
    assert isinstance(found.words.blocks[0], Heading)
    assert any(isinstance(block, Table) for block in found.words.blocks)
    assert found.verdict in [getattr(block, "text", "") for block in found.words.blocks]


def test_nobody_stands_alone_beside_nobody():
    alone = desk("heron")
    assert pair_of(alone, "tester", reply_to(alone, worlds.buyer())) is None
    none = desk("heron", "siskin")
    assert pair_of(none, "tester", reply_to(none, worlds.buyer(budget=1))) is None
