from command_line import run


def test_the_group_names_its_commands() -> None:
    text = run("price", "--help", catalog=None).stdout
    assert all(name in text for name in ("add", "at", "history", "repair"))
