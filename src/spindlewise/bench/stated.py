"""The strict base of what is noted about a ride, and the small kinds of value that its records share."""

from typing import Annotated, Literal

from pydantic import AfterValidator, BaseModel, ConfigDict, Field


class Stated(BaseModel):
    """Something noted by whoever rode: strict types, no unknown keys, never changed after reading."""

    model_config = ConfigDict(strict=True, frozen=True, extra="forbid", allow_inf_nan=False, defer_build=True)


def _plain(text: str) -> str:
    if any(not c.isprintable() for c in text):
        raise ValueError("has characters that cannot be seen | write plain text")
    return text


def _plain_file_name(text: str) -> str:
    if "/" in text or "\\" in text or text.startswith("."):
        raise ValueError(
            "is not a plain file name | put the recording beside the ride's sheet and name it only"
        )
    return _plain(text)


Words = Annotated[str, Field(min_length=1, max_length=600), AfterValidator(_plain)]
FileName = Annotated[str, Field(min_length=1, max_length=120), AfterValidator(_plain_file_name)]
Id = Annotated[str, Field(pattern=r"^[a-z0-9]+(-[a-z0-9]+)*$", min_length=2, max_length=60)]
Unknown = Literal["unknown"]
NotApplicable = Literal["not applicable"]
