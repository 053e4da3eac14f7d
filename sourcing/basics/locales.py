"""Whether there is such a way of writing days and numbers. Names as the Unicode CLDR has them, by Babel's tables."""

from babel import Locale, UnknownLocaleError


def known_locale(name: str) -> Locale | None:
    """The locale of that name ('en_US' or 'en-US'); None where there is none."""
    try:
        return Locale.parse(name.replace("-", "_"))
    except (UnknownLocaleError, ValueError):
        return None
