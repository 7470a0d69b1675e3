import pytest
from pydantic import ValidationError

from spindlewise.bench.stated import FileName, Stated, Words


class Note(Stated):
    text: Words = "x"
    file: FileName = "a.csv"


@pytest.mark.parametrize("file", ["../a.csv", "sub/a.csv", "a\\b.csv", ".hidden", "a\x1b.csv", ""])
def test_a_recording_is_named_by_a_plain_file_name(file):
    with pytest.raises(ValidationError):
        Note(file=file)


def test_words_can_be_seen():
    assert Note(text="the left pedal, retightened").text
    with pytest.raises(ValidationError, match="cannot be seen"):
        Note(text="a\u202eb")
    with pytest.raises(ValidationError):
        Note(number=1)
