"""Every kind of problem the program tells a person of, in one table: code, title, wording, remedy.

A message is written once, in the table of its part of the work; pages, command line and documents only show it.
"""

from .job_problem_kinds import JOB_KINDS
from .problem_kind import ProblemKind
from .sheet_problem_kinds import SHEET_KINDS
from .shop_problem_kinds import SHOP_KINDS
from .storage_problem_kinds import STORAGE_KINDS

KINDS: dict[str, ProblemKind] = {**SHEET_KINDS, **SHOP_KINDS, **JOB_KINDS, **STORAGE_KINDS}
