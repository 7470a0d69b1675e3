"""What a ride's sheet lacks, in words: the path of an unknown as a reader would name the thing."""

KEYS = {
    "unit": "which unit it was",
    "ridden_km": "how far it had been ridden",
    "firmware": "the firmware",
    "battery": "the battery",
    "zero_offset.done": "whether a zero offset was made",
    "zero_offset.left": "the zero offset of the left side",
    "zero_offset.right": "the zero offset of the right side",
    "crank_set_mm": "the crank length that was set",
    "fitted_nm": "the torque of fitting",
    "tolerance_pct": "the maker's tolerance",
    "recorder": "the recorder",
    "recording.sha256": "the SHA-256 of the recording",
    "temperature_start_c": "the temperature at the start",
    "temperature_end_c": "the temperature at the end",
    "crank_mm": "the cranks on the bike",
}


def thing_at(path: str) -> tuple[str, str]:
    """The meter that the path of a sheet's `unknown` is about, empty for the ride, and the thing.

    >>> thing_at("meters.hub.firmware"), thing_at("crank_mm")
    (('hub', 'the firmware'), ('', 'the cranks on the bike'))
    """
    parts = path.split(".")
    if parts[0] != "meters" or len(parts) < 3:
        return "", KEYS.get(path, path)
    key = ".".join(parts[2:])
    return parts[1], KEYS.get(key, key)


def noted_words(path: str) -> str:
    """The thing at the path of a sheet's `unknown`.

    >>> noted_words("meters.hub.firmware"), noted_words("crank_mm")
    ('the firmware (hub)', 'the cranks on the bike')
    """
    about, thing = thing_at(path)
    return f"{thing} ({about})" if about else thing
