from pathlib import Path

from command_line import as_expected, copied, read, run

DUO = "tarnquell-liskar-duo"
SERIES = "".join(
    f"2025-0{i + 1}-03,{DUO},60,{pct},1,counts,serial 12,{km}\n"
    for i, (km, pct) in enumerate(((0, 0.1), (200, 0.1), (1000, 0.3), (1100, 0.2), (9000, 1.4), (9100, 1.5)))
)


def test_sessions_one_after_the_other() -> None:
    result = run("bench", "history", DUO)
    assert result.exit_code == 0
    as_expected("bench_history.txt", result.stdout)


def test_a_unit_at_0_1000_and_9000_km_drifts(tmp_path: Path) -> None:
    folder = copied(tmp_path)
    head = "date,product,minutes,mean_difference_pct,sd_pct,verdict,unit,ridden_km\n"
    (folder / "bench" / "sessions.csv").write_text(head + SERIES, "utf-8")
    found = read("bench", "history", DUO, catalog=folder)
    assert found["schema"] == "spindlewise bench history 1"
    assert found["change_per_1000_km_pct"]["proved"] is True
    assert "it drifts" in " ".join(run("bench", "history", DUO, catalog=folder).stdout.split())


def test_a_snippet_and_a_file_of_all_sessions(tmp_path: Path) -> None:
    result = run("bench", "history", DUO, "--snippet")
    assert "source: bench/sessions.csv, 2025-08-05 to 2025-08-14" in result.stdout
    assert run("bench", "history", DUO, "--write", tmp_path).exit_code == 0
    assert len(list(tmp_path.iterdir())) == 1


def test_without_three_sessions_there_is_no_snippet() -> None:
    result = run("bench", "history", "grevanik-zelvik", "--snippet")
    assert result.exit_code == 4
    plain = run("bench", "history", "grevanik-zelvik")
    assert plain.exit_code == 0
    assert "There was no session by" in plain.stdout
