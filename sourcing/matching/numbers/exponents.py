"""Numbers with an E between figures, which a spreadsheet reads as powers of ten.

Ziemann, Eren and El-Osta, Genome Biology 17:177 (2016): 2310009E13 became 2.31E+13 in published tables.
"""

import re

_EXPONENT = re.compile(r"([0-9]{1,15})E([0-9]{1,2})")
MOST_ZEROS = 30


def written_out(key: str) -> str:
    """'12300000' for '123E5': the whole number a spreadsheet makes of the key; '' where it makes none.

    Zeros before the figures are gone, as they are for the spreadsheet. More than thirty zeros are not written out.
    """
    found = _EXPONENT.fullmatch(key) if "E" in key else None
    if found is None or int(found[2]) > MOST_ZEROS or not found[1].strip("0"):
        return ""
    return found[1].lstrip("0") + "0" * int(found[2])
