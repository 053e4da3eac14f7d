"""The number formats of an OpenDocument spreadsheet, written as the format texts the other workbooks have.

A cell names its style, the style its data style, and that is tags (OASIS OpenDocument 1.2, part 1, section 16.27):
text, digits with texts among them, a currency sign. Put in a row they say the same as '"NW-"0000' in an XLSX.
"""

from .workbook_formats import NumberFormat, read_format

DATA_STYLES = frozenset({"number-style", "currency-style", "percentage-style"})
NOT_PLAIN = frozenset({"fraction", "scientific-number"})
LONGEST_FORMAT = 500
NOTHING = NumberFormat()


class OdsFormats:
    """Told the tags of the styles; knows by the name of a cell's style what its format says."""

    def __init__(self) -> None:
        self.codes: dict[str, str] = {}
        self.data_style: dict[str, str] = {}
        self.parent: dict[str, str] = {}
        self.above_zero: dict[str, str] = {}
        self.name = ""
        self.code: list[str] = []
        self.among: list[tuple[int, str]] = []
        self.digits: dict[str, str] = {}
        self.percent = False
        self.known: dict[str, NumberFormat] = {}

    def begin(self, name: str, given: dict[str, str]) -> None:
        """A style, a data style, or a piece of one."""
        if name == "style" and given.get("family") == "table-cell":
            style = given.get("name", "")
            self.data_style[style] = given.get("data-style-name", "")
            self.parent[style] = given.get("parent-style-name", "")
        elif name in DATA_STYLES:
            self.name, self.code, self.percent = given.get("name", ""), [], name == "percentage-style"
        elif name == "number":
            self.digits, self.among = given, []
        elif name in NOT_PLAIN:
            self.code.append("0E+0")
        elif name == "map" and self.name and given.get("condition", "").replace(" ", "") in ("value()>=0", "value()>0"):
            self.above_zero[self.name] = given.get("apply-style-name", "")
        elif name == "embedded-text":
            self.among.append((_small(given.get("position", "0")), ""))

    def end(self, name: str, text: str) -> None:
        """The tag ends that held this text."""
        if name == "text":
            self.code.append("%" if self.percent and text.strip() == "%" else _literal(text))
        elif name == "currency-symbol":
            self.code.append(f"[${text.replace(']', '')}]")
        elif name == "embedded-text" and self.among:
            self.among[-1] = (self.among[-1][0], text)
        elif name == "number":
            self.code.append(self._digits())
        elif name in DATA_STYLES:
            self.codes[self.name] = "".join(self.code)[:LONGEST_FORMAT]
            self.name = ""

    def _digits(self) -> str:
        whole = list("0" * _small(self.digits.get("min-integer-digits", "1")) or "#")
        for position, text in sorted(self.among):
            if position <= len(whole):
                whole.insert(len(whole) - position - _inserted(self.among, position), _literal(text))
        grouped = "#," if self.digits.get("grouping") == "true" else ""
        decimals = "0" * _small(self.digits.get("decimal-places", "0"))
        return grouped + "".join(whole) + (f".{decimals}" if decimals else "")

    def of(self, style: str) -> NumberFormat:
        """What the format of this style says, or that of the style it is made from."""
        if style not in self.known:
            at, data = style, ""
            for _ in range(20):
                data = self.data_style.get(at, "")
                if data or not self.parent.get(at):
                    break
                at = self.parent[at]
            self.known[style] = read_format(self.codes.get(self.above_zero.get(data, data), ""))
        return self.known[style]


def _small(text: str) -> int:
    return min(int(text), 30) if text.isdecimal() and len(text) < 9 else 0


def _literal(text: str) -> str:
    return '"' + text.replace('"', "") + '"' if text else ""


def _inserted(among: list[tuple[int, str]], position: int) -> int:
    """How many texts already stand further right."""
    return sum(1 for other, text in among if other < position and text)
