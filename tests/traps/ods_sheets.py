"""OpenDocument spreadsheets written by hand (OASIS OpenDocument 1.2, part 1)."""

from tests.traps.workbook_writer import zipped

NAME = "urn:oasis:names:tc:opendocument:xmlns:"
KIND = "application/vnd.oasis.opendocument.spreadsheet"


def text(value: str, repeated: int = 1) -> str:
    """A text cell, or a run of them."""
    more = f' table:number-columns-repeated="{repeated}"' if repeated > 1 else ""
    return f'<table:table-cell office:value-type="string"{more}><text:p>{value}</text:p></table:table-cell>'


def number(value: str, shown: str, currency: str = "") -> str:
    """A number cell and how it is shown; with a currency it is a money cell."""
    kind = f'"currency" office:currency="{currency}"' if currency else '"float"'
    return (
        f'<table:table-cell office:value-type={kind} office:value="{value}"><text:p>{shown}</text:p></table:table-cell>'
    )


def nothing(columns: int) -> str:
    """Empty cells in a row."""
    return f'<table:table-cell table:number-columns-repeated="{columns}"/>'


def row(*cells: str, more: str = "") -> str:
    """A row; `more` are further attributes."""
    return f"<table:table-row{more}>{''.join(cells)}</table:table-row>"


def document(*rows: str) -> bytes:
    """The file as bytes, always the same."""
    content = (
        f'<?xml version="1.0" encoding="UTF-8"?><office:document-content xmlns:office="{NAME}office:1.0" '
        f'xmlns:table="{NAME}table:1.0" xmlns:text="{NAME}text:1.0" office:version="1.2"><office:body>'
        f'<office:spreadsheet><table:table table:name="Prices">{"".join(rows)}</table:table></office:spreadsheet>'
        "</office:body></office:document-content>"
    )
    manifest = (
        f'<?xml version="1.0" encoding="UTF-8"?><m:manifest xmlns:m="{NAME}manifest:1.0" m:version="1.2">'
        f'<m:file-entry m:full-path="/" m:media-type="{KIND}"/></m:manifest>'
    )
    return zipped({"mimetype": KIND, "META-INF/manifest.xml": manifest, "content.xml": content})


def header(*words: str) -> str:
    """A row of text cells."""
    return row(*[text(word) for word in words])


def ods_sheets() -> dict[str, bytes]:
    """Name to bytes."""
    return {
        "open-document-money-cells.ods": document(
            header("Artikelnummer", "Bezeichnung", "Nettopreis", "Bestand"),
            row(text("KR-204.0388"), text("Keilriemen"), number("89.4", "89,40 €", "EUR"), number("6", "6")),
            row(text("0412007"), text("Lager 6203"), number("1234.56", "1.234,56 €", "EUR"), nothing(1)),
        ),
        "open-document-repeated-cells.ods": document(
            header("Part Number", "Description", "List Price", "Net Price"),
            row(nothing(1024), more=' table:number-rows-repeated="2"'),
            row(text("NW-40388"), text("Belt auger drive"), text("119.00", repeated=2), nothing(1000)),
            row(text("NW-3120"), text("Idler bearing"), text("16.20"), text("11.60")),
            row(nothing(1024), more=' table:number-rows-repeated="1048571"'),
        ),
    }
