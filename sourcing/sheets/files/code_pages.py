"""Which single-byte code page a text was written in, told by what its high bytes mean as letters of words.

0x9f in 'St?ck' is 'ü' in Mac Roman, a capital 'Ÿ' inside a word in cp1252: the first is a word, the second is none.
The letters of each language are those of its alphabet (Unicode CLDR, exemplar characters; from memory).
"""

import re
from collections import Counter
from functools import cache

CODE_PAGES = (
    "cp1252", "iso-8859-15", "cp1250", "mac-roman", "cp850", "cp437", "cp1251", "cp866", "koi8-r", "cp1253",
    "iso-8859-7",
)  # fmt: skip
"""In the order in which they are preferred where they explain a text equally well."""
LETTERS = tuple(
    frozenset(letters + letters.upper())
    for letters in (
        "äöüßé", "éèêëàâçîïôûùüœæ", "áéíóúñüªº", "ëéèïöüáóê", "åäöæøé", "ãõáéíóúâêôçàªº", "àèéìòùªº",
        "ąćęłńóśźż", "áčďéěíňóřšťúůýžľĺôä", "áéíóöőúüű", "čćđšž", "ăâîșțşţ", "абвгдеёжзийклмнопрстуфхцчшщъыьэюя",
        "αβγδεζηθικλμνξοπρσςτυφχψωάέήίόύώϊϋ",
    )
)  # fmt: skip
"""German, French, Spanish, Dutch, Nordic, Portuguese, Italian, Polish, Czech and Slovak, Hungarian, Croatian and
Slovene, Romanian, Russian, Greek: the letters beyond a to z."""
WESTERN, FARTHER = 7, 0.95
"""The first seven are likelier in this trade: they win where a lone letter could be of either kind."""
MARKS = frozenset("’‘“”„‚«»‹›–—…•·\u00a0")
SIGNS = frozenset("°²³µ½¼¾±×£€©®™§¿¡ºªØ¢¥")
AFTER_WORDS = frozenset("£™®½¼¾²³ºª")
"""Signs with which no word begins."""
NOT_INSIDE = frozenset("“”„‚«»‹›")
FIRST_GREEK = "\u0370"
"""Where the Greek letters begin, and the Cyrillic ones follow: neither stand in words with Latin ones."""
EVERYDAY = re.compile(
    r"(?<![^\W\d_])µ(?:[mFAVsgHWl](?![^\W\d_])|(?![^\W\d_]))|(?<=[a-z][a-z])[™®](?![^\W\d_])"
    r"|(?<=[a-z])[’‘](?=[stdmSTDM](?![a-z])|ll|re|ve)|(?<![a-z][a-z])(?<=[ldjmnstc])[’‘](?=[aeiouyhé])"
    r"|(?<=[mtn])[²³](?![^\W\d_])|(?<=[\d ])[½¼¾](?![^\W\d_])|(?<=\d)°|(?<=\d )°(?!\d)|(?<=[NLA])·(?=[msh](?![a-z]))"
    r"|(?<![^\W_])[Øø](?= ?\d)",
    re.IGNORECASE,
)
"""Signs where every parts list has them: 5 µm, it's, l'huile, m³, 90°, N·m, Ø 12 (common practice, no source)."""
EVERYDAY_SIGNS = frozenset("µ™®’‘²³°½¼¾·Øø")
EVERYDAY_FIT = 1.3
"""A little more than a letter that a language has."""
FIRST_CHOICE = 1.05
"""cp1252 is by far the likeliest (common practice, no source): another page must be better by more than one letter,
and by that much for each where a file has only one sign: in an English sheet it is a dash, not a letter."""
VOWELS = frozenset("аеёиоуыэюяαεηιουωάέήίόύώϊϋ")
ALTERNATING = 0.15
"""In words a vowel stands beside a consonant more often than two of a kind: that tells Greek from Cyrillic."""
AROUND = re.compile(rb"([\x00-\x7f]{0,2})([\x80-\xff]{1,30})(?=([\x00-\x7f]{0,2}))")
MOST = 20_000
"""So many high bytes are looked at."""


@cache
def decoding_table(page: str) -> str:
    """The 256 characters of the page. A byte it leaves open is the control character of that number, as in ISO 8859."""
    characters = (bytes([byte]).decode(page, "ignore") or chr(byte) for byte in range(256))
    return "".join(characters)


def best_code_page(data: bytes) -> str:
    """The code page under which the high bytes make the best words; cp1252 where nothing tells."""
    places: Counter[tuple[bytes, bytes, bytes]] = Counter()
    seen = 0
    for found in AROUND.finditer(data):
        places[found.group(1), found.group(2), found.group(3)] += 1
        seen += len(found.group(2))
        if seen >= MOST:
            break
    one_sign = len({byte for _, high, _ in places for byte in high}) == 1
    first = FIRST_CHOICE * (places.total() if one_sign else 1)
    return max(CODE_PAGES, key=lambda page: _sense(places, page) + first * (page == CODE_PAGES[0]))


def _sense(places: Counter[tuple[bytes, bytes, bytes]], page: str) -> float:
    """How much sense the page makes: the best that any one language makes of it. Plain marks count in all."""
    by_letter: Counter[str] = Counter()
    table, total = decoding_table(page), 0.0
    for (left, high, right), count in places.items():
        text = left.decode("ascii") + "".join(table[byte] for byte in high) + right.decode("ascii")
        for at in range(len(left), len(left) + len(high)):
            character, before, after = text[at], text[at - 1] if at else " ", text[at + 1 : at + 2] or " "
            if character in EVERYDAY_SIGNS and EVERYDAY.match(text, at):
                total += count * EVERYDAY_FIT
                continue
            total += count * (_fit(character, before, after) + ALTERNATING * _alternates(character, after))
            if character.isalpha() and (character not in SIGNS or (character == "Ø" and after.islower())):
                by_letter[character] += count
    west = max(sum(by_letter[letter] for letter in letters) for letters in LETTERS[:WESTERN])
    known = max(west, *(FARTHER * sum(by_letter[letter] for letter in letters) for letters in LETTERS[WESTERN:]))
    return total + 2 * known - sum(by_letter.values())


@cache
def _fit(character: str, before: str, after: str) -> float:
    """How well the character stands between its neighbours, whatever the language: -3 to 0.7."""
    inside = before.isalpha() and after.isalpha()
    if character in SIGNS and not (character == "Ø" and after.islower() and not before.isalpha()):
        return -1.0 if inside or (after.isalpha() and character in AFTER_WORDS) else 0.7
    if character in MARKS:
        if inside and character in NOT_INSIDE:
            return -0.5
        return 0.2 if inside and character not in "’\u00a0" else 0.6
    if not character.isalpha():
        return -3.0 if not character.isprintable() else -1.0
    if character >= FIRST_GREEK and (_is_latin(before) or _is_latin(after)):
        return -1.5
    if character.isupper() and before.islower():
        return -1.5
    if character.islower() and character != "ß" and (after.isupper() or before.isdigit() or after.isdigit()):
        return -1.5  # 'NetáUSD', '3.54á': a no-break space read by another page
    if character.islower() and before.isupper() and after.isupper() and character != "ß":
        return -1.0
    return 0.2 if before.isalpha() or after.isalpha() else -0.5


def _alternates(character: str, after: str) -> bool:
    """Whether these two letters, Greek or Cyrillic, are a vowel and a consonant in either order."""
    both = character >= FIRST_GREEK and character.isalpha() and after >= FIRST_GREEK and after.isalpha()
    return both and (character.lower() in VOWELS) != (after.lower() in VOWELS)


def _is_latin(character: str) -> bool:
    return character.isalpha() and character < FIRST_GREEK
