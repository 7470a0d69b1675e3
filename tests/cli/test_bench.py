from command_line import run


def test_the_group_names_its_commands() -> None:
    result = run("bench", "--help", catalog=None)
    assert result.exit_code == 0
    for name in ("weigh", "hours", "ride", "sheet", "history"):
        assert name in result.stdout
