"""Bytes to text without being told the encoding. Reference: Python's codecs wrote the bytes."""

import random

import pytest

from sourcing.basics.problem import Refused
from sourcing.sheets.files.encoding import decode

WORDS = {
    "German": "Gehäuse Stück Räumschild Größe Länge Prüfstück Öl Übersetzung Ätzmittel Maßstab Lüfterrad Zündkerze",
    "French": "pièce trapézoïdale référence déneigeuse boîte désignation côté sécurité Élément ça hélice fenêtre tôle",
    "Spanish": "descripción número tamaño pequeño piñón rígido código año cigüeñal máquina cuña Árbol métrica niño",
    "Dutch": "reünie geïsoleerd coördinaat ideeën vacuüm één patiënt poëzie riemschijf sneeuwfrees",
    "English": "belt café naïve façade auger drive fiancé keeper",
    "Swedish": "snöslunga kullager Ändstycke Åkgräsklippare öglebult smörjning låda kätting",
    "Portuguese": "transmissão peça descrição mão ações código três lâmpada",
    "Polish": "łożysko pasek śruba część żółty dźwignia wąż łańcuch prędkość sprężyna koło",
    "Russian": "ремень подшипник цена количество деталь масло",
}
PAGES = ["cp1252", "latin-1", "iso-8859-15", "cp1250", "mac-roman", "cp850", "cp437", "cp1251"]


def part_list(language: str, page: str, rows: int) -> str:
    """Rows of invented part numbers with words of the language that the page can write; blank if it has none."""
    chance = random.Random(f"{language}{page}")
    words = [word for word in WORDS[language].split() if word.encode(page, "ignore").decode(page) == word]
    if all(word.isascii() for word in words):
        return ""
    lines = [f"KR-{chance.randrange(9999):04};{chance.choice(words)};{chance.choice(words)};1,50" for _ in range(rows)]
    return "\n".join(["Nr;A;B;P", *lines, ""])


FILES = [(language, page) for language in WORDS for page in PAGES if part_list(language, page, 30)]


@pytest.mark.parametrize(("language", "page"), FILES)
def test_a_code_page_is_told_by_the_words_it_makes(language: str, page: str) -> None:
    text = part_list(language, page, 30)
    assert decode(text.encode(page), "a.csv").text == text


@pytest.mark.parametrize(
    ("data", "text"),
    [
        (b"Nr;Name\n1;St\x81ck", "Nr;Name\n1;Stück"),
        (b"Nr;Name\n1;St\x9fck", "Nr;Name\n1;Stück"),
        (b"Nr;Name\n1;St\xfcck", "Nr;Name\n1;Stück"),
        (b"UVP \x80;2", "UVP €;2"),
        (b"UVP \xa4 12,50;2", "UVP € 12,50;2"),
        (b"Shop\x92s \x93best\x94 belt \x96 new", "Shop’s “best” belt – new"),
        (b"40\xb0 angle;\xbd in", "40° angle;½ in"),
    ],
)
def test_one_word_can_be_enough(data: bytes, text: str) -> None:
    assert decode(data, "a.csv").text == text


SIGNS = ["10 µm", "5 µF", "it’s", "l’huile", "Bolt™", "Bolt®", "a—b", "a – b", "m³", "12 mm²", "½ in", "1½", "N·m"]
SIGNS += ["Ø12", "ø12", "Ø 12 mm", "Øre", "Gus Øde", "90°", "0 °C", "5×20", "“long”", "±2", "£5", "naïve", "für Öl"]


@pytest.mark.parametrize("count", [1, 6])
@pytest.mark.parametrize("sign", SIGNS)
def test_the_everyday_signs_of_a_plain_sheet_are_those_of_cp1252(sign: str, count: int) -> None:
    rows = [
        f"QZ-{at},{sign if at < count else 'bolt'},filter {sign if at < count else ''} long,{at}.50" for at in range(9)
    ]
    text = "\n".join(["part no,description,note,price", *rows, ""])
    assert decode(text.encode("cp1252"), "a.csv").text == text


@pytest.mark.parametrize("page", ["cp1253", "iso-8859-7"])
@pytest.mark.parametrize("word", ["Βίδα", "Άξονας", "Μπουλονι", "Ιμαντας", "Ρουλεμαν"])
def test_one_greek_word_is_not_taken_for_cyrillic(word: str, page: str) -> None:
    text = f"no,name\n1,{word}\n2,bolt\n"
    assert decode(text.encode(page), "a.csv").text == text


def test_one_zero_byte_in_a_short_file_is_not_utf_16() -> None:
    assert decode(b"a,b,c\n\x00,2,3\n", "a.csv").text == "a,b,c\n,2,3\n"


def test_signs_for_lost_characters_in_a_short_utf_8_file_are_text() -> None:
    text = "part,name\nQZ-1,R\ufffdumschild\nQZ-2,Geh\ufffduse\n"
    assert decode(text.encode(), "a.csv").text == text


@pytest.mark.parametrize(
    "encoding",
    ["utf-8", "utf-8-sig", "utf-16", "utf-16-le", "utf-16-be", "utf-32", "utf-32-le", "utf-32-be"],
)
@pytest.mark.parametrize("text", ["Nr;Stück\n1;Räumschild\n", "Nr;Цена\n12;Ремень\n", "a,b\n"])
def test_unicode_is_told_with_and_without_a_mark(encoding: str, text: str) -> None:
    assert decode(text.encode(encoding), "a.csv").text == text


def test_one_damaged_byte_does_not_spoil_the_rest_of_a_utf_8_file() -> None:
    data = "Größe;Stück;Gehäuse\n".encode() * 5 + b"St\xfcck\n" + "Öl für Düse\n".encode()
    decoded = decode(data, "a.csv")
    assert decoded.text == "Größe;Stück;Gehäuse\n" * 5 + "Stück\nÖl für Düse\n"
    assert decoded.encoding == "UTF-8"


def test_a_utf_8_file_cut_inside_a_character_is_utf_8() -> None:
    assert decode("Größe;Stück;Öl".encode()[:-2] + b"\xc3", "a.csv").text.startswith("Größe;Stück;")


def test_stray_zero_bytes_are_taken_out() -> None:
    assert decode(b"Part,Net\nA1,\x001.00\nA2,2.00\x00\x00\n" * 3, "a.csv").text == "Part,Net\nA1,1.00\nA2,2.00\n" * 3


@pytest.mark.parametrize("data", [bytes(range(256)) * 4, random.Random(5).randbytes(3000), b"ab\x00\x01\x02" * 30])
def test_bytes_that_are_no_text_are_refused(data: bytes) -> None:
    with pytest.raises(Refused) as refusal:
        decode(data, "a.csv")
    assert refusal.value.problems[0].code == "not-a-sheet"
