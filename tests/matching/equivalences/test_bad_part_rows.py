"""A row of 'parts' that can't be used: told itself, and said of its statements as what it is, never as missing."""

from sourcing.matching.equivalences.table_file import read_table_csv

PARTS = b"code,name,side\nSHOE-L,Skid shoe,starboard\nBELT,Belt,\n"
HEADER = b"left maker,left number,relation,right maker,right number,standing,source,stated on,stated by\n"
REST = b",same part,Norrowby,NW-1,maker,list,2026-01-02,Oona Brandeth\n"


def test_statements_of_a_bad_part_row_say_which_row_it_is() -> None:
    """The code is on the worksheet; one that truly is not is still told so."""
    rows = HEADER + b"".join(b"(ours)," + code + REST for code in (b"shoe-l", b"BELT", b"KEEPER"))
    table, problems = read_table_csv({"parts.csv": PARTS, "statements.csv": rows}, "out")
    assert [one.code for one in problems] == ["unknown-word", "part-row-unusable", "no-such-part"]
    assert "our part 'shoe-l', whose row 2 of 'parts' can't be used" in problems[1].sentence()
    assert [one.left.printed for one in table.statements] == ["BELT"]
