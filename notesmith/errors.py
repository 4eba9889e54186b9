"""What can go wrong, said in one line: what is wrong, where, and how to mend it."""


class NotesmithError(Exception):
    """Base of every error a user can cause; each kind has an exit status of its own.

    >>> print(CaptionError("the file is empty", where="talk.vtt", mend="export the captions again"))
    talk.vtt: the file is empty; export the captions again
    """

    exit_status = 1

    def __init__(self, what: str, *, where: str = "", mend: str = "") -> None:
        self.what, self.where, self.mend = what, where, mend
        super().__init__(what)

    def __str__(self) -> str:
        line = f"{self.where}: {self.what}" if self.where else self.what
        return f"{line}; {self.mend}" if self.mend else line


class CaptionError(NotesmithError):
    """A caption file that cannot be read, or could be read in two ways."""

    exit_status = 3


class NotesFileError(NotesmithError):
    """Notes that cannot be read; they come of captions and share their exit status."""

    exit_status = CaptionError.exit_status


class SheetError(NotesmithError):
    """A tasting sheet that contradicts itself or says what the program does not know."""

    exit_status = 4


class LexiconError(NotesmithError):
    """A lexicon whose files do not fit together."""

    exit_status = 5


class OutputError(NotesmithError):
    """A place that cannot be written, or that would be overwritten unasked."""

    exit_status = 6


class NoTastingError(NotesmithError):
    """A recording in which nothing is tasted."""

    exit_status = 7


class ModelError(NotesmithError):
    """The English pipeline is missing or is not the one the program knows."""

    exit_status = 8


class FaultError(NotesmithError):
    """A fault of the program itself, found before it could reach the notes."""

    exit_status = 9


class MissingError(NotesmithError):
    """A program or a package that is not installed, or a file that had to be named."""

    exit_status = 10


class MediaError(NotesmithError):
    """A recording that cannot be read, or that cannot hold what is to be put into it."""

    exit_status = 11
