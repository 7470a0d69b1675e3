import pytest

from spindlewise.catalog import yaml_refusals as refusals


@pytest.mark.parametrize("key", ["weight_g", "schema", "Norway", "north", "a b", "ANT+", "v1"])
def test_a_word_is_a_key(key: str) -> None:
    assert refusals.plain_key(key) is None


@pytest.mark.parametrize(
    ("key", "words"),
    [
        (
            "NO",
            (
                "ambiguous-word",
                "the key 'NO' without quotes means false to some YAML readers",
                'write "NO" in quotes, or another word as the key',
            ),
        ),
        (
            "1:30",
            (
                "ambiguous-number",
                "the key '1:30' without quotes means 90 to some YAML readers",
                'write "1:30" in quotes, or another word as the key',
            ),
        ),
        ("5", ("key-kind", "the key 5 is a number", 'write "5" in quotes, or a word as the key')),
        (
            "2024-01-01",
            ("key-kind", "the key 2024-01-01 is a day", 'write "2024-01-01" in quotes, or a word as the key'),
        ),
        ("<<", ("merge-key", "the merge key '<<' copies keys from elsewhere", "write the keys out in full")),
        ("", ("key-kind", "a value stands without its key", "write the key before the colon")),
    ],
)
def test_other_keys_are_refused_with_the_way_to_write_them(key: str, words: refusals.Words) -> None:
    assert refusals.plain_key(key) == words


def test_names_are_cut_and_made_visible() -> None:
    for rule, message, _ in (
        refusals.anchor("x" * 999),
        refusals.alias("x" * 999),
        refusals.tag("\x1b" * 999),
    ):
        assert rule in ("anchor", "alias", "tag")
        assert message.isprintable()
        assert len(message) < 350
    assert refusals.tag("tag:yaml.org,2002:str")[1] == "the tag '!!str' stands before a value"


def test_a_second_key_names_the_first() -> None:
    assert (
        refusals.duplicate_key(3, 5)[1] == "the key stands a second time; it stands first in line 3, column 5"
    )
