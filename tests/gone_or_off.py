"""What a line says is gone or off, and is not added to a larder."""

from calmlarder.larder.lines_to_lots import LarderReader


def is_gone_or_off(reader: LarderReader, line: str) -> bool:
    """Whether a line adds nothing and says why."""
    reading = reader.read(line, "line 1")
    assert reading is not None
    said = reading.problem is not None and reading.problem.remedy.startswith("not added, as it is gone or off")
    return said and not reading.lots and reading.to_answer is None
