"""XML whose text knows where it stands in the source.

The standard library's element tree keeps no positions, so this small tree is built on the same parser (expat)
directly. A document type is refused, and with it every entity that could swell.
"""

from bisect import bisect_right
from dataclasses import dataclass, field
from itertools import accumulate
from xml.parsers import expat

from notesmith.errors import CaptionError
from notesmith.transcript.passages import Piece

_DEEPEST = 100
_STRIDE = 4096


@dataclass(slots=True)
class Element:
    """An element with its name and attributes (namespaces left off), and its elements and text in order."""

    name: str
    attributes: dict[str, str]
    children: list["Element | Piece"] = field(default_factory=list)

    def elements(self, name: str) -> list["Element"]:
        """The child elements of a name."""
        return [child for child in self.children if isinstance(child, Element) and child.name == name]

    def text(self) -> str:
        """The element's own text, tidied."""
        return " ".join("".join(child.text for child in self.children if isinstance(child, Piece)).split())


def parse_xml(source: str) -> Element:
    """Parse a document into its root element.

    Raises CaptionError for broken or truncated XML, a document type, and nesting deeper than 100.
    """
    return _Builder(source).root()


class _Builder:
    def __init__(self, source: str) -> None:
        self.source = source
        self.skipped = len(source) - len(source.lstrip())
        self.data = source[self.skipped :].encode("utf-8", "replace")
        self.char_of = _CharOffsets(source[self.skipped :])
        self.document = Element("", {})
        self.open = [self.document]
        self.literal = False
        # The text is decoded already: whatever encoding it declares no longer holds.
        self.parser = expat.ParserCreate("utf-8", " ")
        self.parser.StartElementHandler = self.start
        self.parser.EndElementHandler = self.end
        self.parser.CharacterDataHandler = self.characters
        self.parser.StartDoctypeDeclHandler = self.doctype
        self.parser.StartCdataSectionHandler = lambda: setattr(self, "literal", True)
        self.parser.EndCdataSectionHandler = lambda: setattr(self, "literal", False)

    def root(self) -> Element:
        try:
            self.parser.Parse(self.data, True)
        except expat.ExpatError as error:
            what = f"broken or truncated XML ({expat.ErrorString(error.code)})"
            raise CaptionError(what, where=f"line {error.lineno}", mend="export the captions again") from None
        return next(child for child in self.document.children if isinstance(child, Element))

    def start(self, name: str, attributes: dict[str, str]) -> None:
        element = Element(_local(name), {_local(key): value for key, value in attributes.items()})
        self.open[-1].children.append(element)
        self.open.append(element)
        if len(self.open) > _DEEPEST:
            where = f"line {self.parser.CurrentLineNumber}"
            raise CaptionError("XML nested too deep", where=where, mend="export the captions again")

    def end(self, _name: str) -> None:
        self.open.pop()

    def characters(self, text: str) -> None:
        start = self.skipped + self.char_of(self.parser.CurrentByteIndex)
        end = start + len(text)
        if self.source.startswith("&", start) and not self.literal:
            end = self.source.index(";", start) + 1
        elif self.source.startswith("\r\n", start):
            end = start + 2
        self.open[-1].children.append(Piece(text, start, end))

    def doctype(self, *_declaration: object) -> None:
        raise CaptionError("XML with a document type, which is not read", mend="take the <!DOCTYPE …> out")


class _CharOffsets:
    """From byte offsets of UTF-8 to character offsets."""

    def __init__(self, text: str) -> None:
        self.text = text
        self.ascii = text.isascii()
        blocks = () if self.ascii else (text[at : at + _STRIDE] for at in range(0, len(text), _STRIDE))
        self.starts = list(accumulate((len(block.encode("utf-8", "replace")) for block in blocks), initial=0))

    def __call__(self, byte: int) -> int:
        if self.ascii:
            return byte
        block = bisect_right(self.starts, byte) - 1
        encoded = self.text[block * _STRIDE : (block + 1) * _STRIDE].encode("utf-8", "replace")
        return block * _STRIDE + len(encoded[: byte - self.starts[block]].decode("utf-8", "replace"))


def _local(name: str) -> str:
    return name.rpartition(" ")[2]
