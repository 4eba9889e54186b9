"""XML whose text knows where it stands in the source.

The standard library's element tree keeps no positions, so this small tree is built on the same parser (expat)
directly. A document type is refused, and with it every entity that could swell.
"""

from dataclasses import dataclass, field
from xml.parsers import expat

from notesmith.errors import CaptionError
from notesmith.transcript.passages import Piece

_DEEPEST = 100
_MOST = 2_000_000


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

    Raises CaptionError for broken or truncated XML, a document type, nesting deeper than 100
    and more than two million elements.
    """
    return _Builder(source).root()


class _Builder:
    def __init__(self, source: str) -> None:
        self.source = source
        self.skipped = len(source) - len(source.lstrip())
        self.data = source[self.skipped :].encode()
        self.byte, self.char, self.count = 0, self.skipped, 0
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
        self.count += 1
        if len(self.open) > _DEEPEST or self.count > _MOST:
            what = "XML nested too deep" if len(self.open) > _DEEPEST else f"XML of more than {_MOST:,} elements"
            where = f"line {self.parser.CurrentLineNumber}"
            raise CaptionError(what, where=where, mend="export the captions again")

    def end(self, _name: str) -> None:
        self.open.pop()

    def characters(self, text: str) -> None:
        start = self.char_at(self.parser.CurrentByteIndex)
        end = start + len(text)
        if self.source.startswith("&", start) and not self.literal:
            end = self.source.index(";", start) + 1
        elif self.source.startswith("\r\n", start):
            end = start + 2
        self.open[-1].children.append(Piece(text, start, end))

    def char_at(self, byte: int) -> int:
        """From the parser's count of bytes, which only grows, to a character of the source."""
        self.char += len(self.data[self.byte : byte].decode())
        self.byte = byte
        return self.char

    def doctype(self, *_declaration: object) -> None:
        raise CaptionError("XML with a document type, which is not read", mend="take the <!DOCTYPE …> out")


def _local(name: str) -> str:
    return name.rpartition(" ")[2]
