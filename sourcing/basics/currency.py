"""Currencies and their minor units, by ISO 4217.

Source: ISO 4217 list of current currencies. Most have two minor units; the others stand in `OTHER_MINOR_UNITS`.
Babel's data follow cash practice for some currencies (it gives none to the Iraqi dinar, ISO gives three), so the
standard's figures are kept here and the differences are named in a test.
"""

from .problem import refused

NO_MINOR_UNITS = "BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX UYI VND VUV XAF XOF XPF"
THREE_MINOR_UNITS = "BHD IQD JOD KWD LYD OMR TND"
FOUR_MINOR_UNITS = "CLF UYW"
OTHER_MINOR_UNITS = {
    **dict.fromkeys(NO_MINOR_UNITS.split(), 0),
    **dict.fromkeys(THREE_MINOR_UNITS.split(), 3),
    **dict.fromkeys(FOUR_MINOR_UNITS.split(), 4),
}

TWO_MINOR_UNIT_CODES = """
AED AFN ALL AMD AOA ARS AUD AWG AZN BAM BBD BDT BMD BND BOB BOV BRL BSD BTN BWP BYN BZD CAD CDF CHE CHF CHW
CNY COP COU CRC CUP CVE CZK DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS GIP GMD GTQ GYD HKD HNL HTG HUF
IDR ILS INR IRR JMD KES KGS KHR KPW KYD KZT LAK LBP LKR LRD LSL MAD MDL MGA MKD MMK MNT MOP MRU MUR MVR MWK
MXN MXV MYR MZN NAD NGN NIO NOK NPR NZD PAB PEN PGK PHP PKR PLN QAR RON RSD RUB SAR SBD SCR SDG SEK SGD SHP
SLE SOS SRD SSP STN SVC SYP SZL THB TJS TMT TOP TRY TTD TWD TZS UAH USD USN UYU UZS VED VES WST XAD XCD XCG
YER ZAR ZMW ZWG
"""
TWO_MINOR_UNITS = frozenset(TWO_MINOR_UNIT_CODES.split())


def minor_units(currency: str) -> int:
    """How many decimals the currency's amounts have: 2 for USD, 0 for JPY. Refuses a code ISO 4217 does not list."""
    if currency in TWO_MINOR_UNITS:
        return 2
    units = OTHER_MINOR_UNITS.get(currency)
    if units is None:
        raise refused("unknown-currency", found=currency)
    return units


def is_currency(code: str) -> bool:
    """Whether ISO 4217 lists the code (upper case, three letters)."""
    return code in TWO_MINOR_UNITS or code in OTHER_MINOR_UNITS
