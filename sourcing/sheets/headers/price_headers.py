"""Price headers without what is said beside the price: 'Net price 2026 (USD) per 100 excl. VAT' is 'net price'.

Only what another part of this step reads, or what changes nothing, is left out: currency, a basis that
`basis_in_header` understands, a year, 'without tax'. A price with tax is no cost. Common practice, no source.
"""

import re

from ..cells.basis_cells import VAGUE, basis_in_header
from .header_keys import header_key, plain_text, without_currency

TAX = r"(?:vat|tax|taxes|gst|hst|sales tax|mwst|ust|mehrwertsteuer|umsatzsteuer|btw|iva|i v a|tva|taxe|taxes|tps)"
WITH = (
    r"(?:incl|inc|including|inclusive(?: of)?|with|inkl|inklusive|mit|con|avec|inclusief|incluido|incluida|met|einschl)"
)
WITHOUT = (
    r"(?:excl|ex|exc|exclusive(?: of)?|excluding|without|plus|net of|before|exkl|exklusive|ohne"
    r"|zzgl|zuzugl|zuzuglich|sin"
    r"|s|mas|hors|sans|exclusief|zonder|excluye|no incluye|o)"
)
WITH_TAX = re.compile(
    rf"\b{WITH}\s+{TAX}\b|\b{TAX}\s+(?:{WITH}|included|inclusive|comprise|inbegriffen|inbegrepen)\b"
    r"|\bttc\b|\bt t c\b|\btax paid\b"
)
WITHOUT_TAX = re.compile(
    rf"\b(?:{WITHOUT})\s+{TAX}\b|\b{TAX}\s+(?:{WITHOUT}|extra|excluded|excluido|exclusive|exempt|no incluido)\b"
    r"|\bht\b|\bh t\b|\bhtva\b|\bhors taxes?\b|[+]\s*iva\b|\bex\s*btw\b|\b[+]\s*(?:vat|mwst|tax|btw)\b"
)
GROSS_OF_TAX = re.compile(
    r"\b(?:ek|uvp|vk|hek|einkaufspreis|verkaufspreis)[\s-]*(?:preis)?[\s-]*brutto\b|\bbrutto[\s-]*(?:ek|uvp|vk)\b"
)
DAY = (
    r"(?:\d{1,2}[./-]\d{1,2}[./-](?:20)?\d\d|20\d\d-\d\d?(?:-\d\d?)?"
    r"|\d{1,2}[./]20\d\d|(?<!\d)20[1-4]\d(?!\d)|q[1-4]\s*20\d\d)"
)
MONTH = (
    r"(?:jan|feb|mar|apr|may|jun|jul|aug|sep|sept|oct|nov|dec|januar|februar|marz|mai|juni|juli|august|oktober|dezember|"
    r"january|february|march|april|june|july|september|october|november|december)"
)
DATED = re.compile(
    rf"\b(?:(?:effective|eff|as of|as from|from|valid from|stand|ab|gultig ab|per|du|a partir du|desde|vanaf)\s+)?"
    rf"(?:{MONTH}\.?\s+)?{DAY}"
)
BASIS = re.compile(
    r"[(\[]?\s*(?:\b(?:per|pro|je|par|por|p|au|aux|le|les|al|el|los|las)\b\.?|/|\ba la\b|\ba l\b)"
    r"\s*(?P<of>[^()\[\]/]*)[)\]]?\s*$"
)
UNITS = re.compile(
    r"\b(?:in|en|im)?\s*[(\[]?\b(?:lbs?|kgs?|kilos?|oz|g|gr|grams?|gramm|pounds?|pcs|pc|pieces|each|ea|units?|stk|stuck|stueck|st"
    r"|uds?|unidades|stuks?|pieces|days?|weeks?|tage|wochen|jours|semaines|dias|semanas|dagen|weken|working days"
    r"|y\s*/?\s*n|yes\s*/\s*no|ja\s*/\s*nein|oui\s*/\s*non|si\s*/\s*no|ja\s*/\s*nee|x)\b\.?[)\]]?\s*$"
)

LENGTH_UNITS = re.compile(
    r"(?:\b(?:in|en)\s+)?[(\[]?\s*(?:\b(?:cm|mm|m|in|inch|inches|ft|feet|zoll|pouces?|po|pulgadas?|pulg|duim)\b|[\"″”])"
    r"\.?\s*[)\]]?\s*$"
)


def says_with_tax(header: str) -> bool:
    """Whether the header says that tax is in the price: 'incl. VAT', 'TTC', 'inkl. MwSt', 'EK brutto'."""
    text = _spaced(header)
    return bool(WITH_TAX.search(text) or GROSS_OF_TAX.search(text))


def without_tax(header: str) -> str:
    """The header without what it says about tax; one that says nothing as it stands."""
    text = _spaced(header)
    bare = WITH_TAX.sub(" ", WITHOUT_TAX.sub(" ", text))
    return header if bare == text else bare


def bare_price_key(header: str) -> str:
    """The key of the header without currency, date, basis, 'each' and 'without tax'. '' where nothing is left."""
    text = plain_text(DATED.sub(" ", without_tax(_spaced(without_currency(header)))))
    if GROSS_OF_TAX.search(text):
        text = text.replace("brutto", " ")
    if match := BASIS.search(text):
        of = " ".join(match["of"].split()).strip(" .")
        if not of or of in VAGUE or basis_in_header(without_currency(header).strip()):
            text = text[: match.start()]
    text = re.sub(r"[\s(]+(?:each|ea)\W*$", " ", text)
    return header_key(text)


def without_unit_key(header: str) -> str:
    """The key without a unit at the end: 'Weight (lbs)', 'Stock pcs', 'Hazmat (Y/N)'; for fields that have units."""
    return header_key(UNITS.sub(" ", plain_text(header)))


def without_length_unit_key(header: str) -> str:
    """The key without a unit of length at the end: 'Pkg length (in)', 'L x W x H cm'."""
    return header_key(LENGTH_UNITS.sub(" ", plain_text(header)))


def _spaced(header: str) -> str:
    """Small letters without accents; the points of abbreviations are spaces, those between digits stay."""
    return " ".join(re.sub(r"(?<!\d)[.,;:]|[.,;:](?!\d)", " ", plain_text(header)).split())
