"""Text sheets whose trap is in their bytes: encodings, line ends, NULs, marks at the end."""

ENGLISH = (
    "Part Number,Description,Net Price,Stock",
    'NW-40388,"Belt, auger drive",119.00,2',
    "0031200,Idler bearing,11.60,18",
    "OS-2210,Gearbox seal kit,26.40,",
)
QUOTED = (
    '"Part Number","Description","Net Price"',
    '"NW-40388","Belt, auger drive","119.00"',
    '"0031200","Idler bearing","11.60"',
)
GERMAN = (
    "Artikelnummer;Bezeichnung;Nettopreis;Bestand",
    "KR-204.0388;Keilriemen für Räumschnecke;89,40;6",
    "KR-204.0412;Führungsöse;4,15;120",
    "KR-118.0007;Großer Schlüssel;23,05;0",
)
WITH_DIAMETER = (*GERMAN, "KR-118.0021;Hülse Ø 17 für Welle;7,20;14")
WITH_EURO = (*GERMAN[:1], "KR-204.0388;Keilriemen – Räumschnecke;89,40 €;6", "KR-204.0412;Öse ½ Zoll;4,15 €;120")
FRENCH = (
    "Référence;Désignation;Prix net;Quantité en stock",
    "KR-204.0388;Courroie trapézoïdale;89,40;6",
    "KR-204.0412;Jeu de joints d'étanchéité;24,15;0",
    "KR-118.0007;Clé à cliquet;23,05;3",
)


def lines(rows: tuple[str, ...], end: str = "\r\n") -> str:
    """The rows as text, each with its line end."""
    return "".join(row + end for row in rows)


def mixed_ends() -> bytes:
    """Each line ends another way, as when a file was pieced together."""
    return "".join(row + end for row, end in zip(ENGLISH, ("\r\n", "\n", "\r", "\r\n"), strict=True)).encode()


def byte_sheets() -> dict[str, bytes]:
    """Name to bytes."""
    english, german = lines(ENGLISH), lines(GERMAN)
    return {
        "carriage-return-only.csv": lines(ENGLISH, "\r").encode(),
        "mixed-line-ends.csv": mixed_ends(),
        "no-final-newline.csv": "\n".join(ENGLISH[:3]).encode(),
        "nul-bytes-in-cells.csv": english.replace("Idler bearing", "Idler bearing\0\0\0").encode() + b"\0" * 24,
        "end-of-file-mark.csv": english.encode() + b"\x1a",
        "utf-8-with-mark.csv": b"\xef\xbb\xbf" + german.encode(),
        "mark-before-a-quoted-header.csv": b"\xef\xbb\xbf" + lines(QUOTED).encode(),
        "utf-16-le-tabs.txt": b"\xff\xfe" + german.replace(";", "\t").encode("utf-16-le"),
        "utf-16-be.csv": b"\xfe\xff" + german.encode("utf-16-be"),
        "utf-16-le-without-mark.csv": german.encode("utf-16-le"),
        "cp1252-euro-sign.csv": lines(WITH_EURO).encode("cp1252"),
        "latin-1-french.csv": lines(FRENCH).encode("latin-1"),
        "cp437-german.csv": german.encode("cp437"),
        "cp850-diameter-sign.csv": lines(WITH_DIAMETER).encode("cp850"),
        "mac-roman-german.csv": lines(WITH_DIAMETER, "\r").encode("mac-roman"),
    }
