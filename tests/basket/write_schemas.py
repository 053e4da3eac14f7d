"""Writes the JSON Schemas that are shipped with the program: `python tests/basket/write_schemas.py --write`."""

import sys
from pathlib import Path

ROOT = Path(__file__).parents[2]
sys.path.insert(0, str(ROOT))

from sourcing.documents.schemas import ANSWER_SCHEMA, BASKET_SCHEMA, answer_schema, basket_schema  # noqa: E402

if __name__ == "__main__":
    for name, text in ((BASKET_SCHEMA, basket_schema()), (ANSWER_SCHEMA, answer_schema())):
        if "--write" in sys.argv:
            (ROOT / "templates" / name).write_text(text, encoding="utf-8")
        else:
            print(text)
