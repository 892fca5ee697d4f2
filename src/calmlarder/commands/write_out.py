"""A file that the cook asked for: written anew over an older one of its kind, never over anything else."""

from pathlib import Path

from calmlarder.problems import CannotGoOn, Problem


def write_out(file: Path, text: str, begins: str, option: str) -> None:
    """Write UTF-8 with the line ends of the text. Raises CannotGoOn where the file cannot be, or is another's.

    `begins` is how every file of this kind begins.
    """
    try:
        if file.exists() and not file.read_bytes().startswith(begins.encode()):
            remedy = "name another file, or move that one away"
            raise CannotGoOn(
                [Problem(where=option, what=f"{file.name} is there and is not one of these", remedy=remedy)]
            )
        file.write_text(text, encoding="utf-8", newline="")
    except OSError as error:
        remedy = "check the folder and whether it may be written"
        what = f"{file.name} cannot be written ({error.strerror or error})"
        raise CannotGoOn([Problem(where=option, what=what, remedy=remedy)]) from None
