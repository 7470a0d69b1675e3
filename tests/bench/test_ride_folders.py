from spindlewise.bench.ride_folders import ride_folders


def test_every_folder_with_a_sheet_is_found_however_deep(tmp_path):
    for name in ("2025/b", "2025/a", "c"):
        (tmp_path / name).mkdir(parents=True)
        (tmp_path / name / "ride.yaml").write_text("")
    (tmp_path / "notes").mkdir()
    assert ride_folders(tmp_path) == (tmp_path / "2025" / "a", tmp_path / "2025" / "b", tmp_path / "c")
    assert ride_folders(tmp_path / "c") == (tmp_path / "c",)


def test_where_there_is_no_folder_there_is_no_ride(tmp_path):
    assert ride_folders(tmp_path / "nowhere") == ()
