"""Every kind of problem the program tells a person of, in one table: code, title, wording, remedy.

A message is written once, in the table of its part of the work; pages, command line and documents only show it.
"""

from .alarm_problem_kinds import ALARM_KINDS
from .answer_problem_kinds import ANSWER_KINDS
from .basket_problem_kinds import BASKET_KINDS
from .bill_problem_kinds import BILL_KINDS
from .choice_problem_kinds import CHOICE_KINDS
from .counter_problem_kinds import COUNTER_KINDS
from .date_problem_kinds import DATE_KINDS
from .identity_problem_kinds import IDENTITY_KINDS
from .job_problem_kinds import JOB_KINDS
from .judgement_problem_kinds import JUDGEMENT_KINDS
from .landed_problem_kinds import LANDED_KINDS
from .link_problem_kinds import LINK_KINDS
from .margin_problem_kinds import MARGIN_KINDS
from .match_problem_kinds import MATCH_KINDS
from .order_change_problem_kinds import ORDER_CHANGE_KINDS
from .package_problem_kinds import PACKAGE_KINDS
from .part_problem_kinds import PART_KINDS
from .plan_problem_kinds import PLAN_KINDS
from .price_problem_kinds import PRICE_KINDS
from .problem_kind import ProblemKind
from .pulley_problem_kinds import PULLEY_KINDS
from .receipt_problem_kinds import RECEIPT_KINDS
from .same_page_problem_kinds import SAME_PAGE_KINDS
from .sent_sheet_problem_kinds import SENT_SHEET_KINDS
from .settings_problem_kinds import SETTINGS_KINDS
from .sheet_problem_kinds import SHEET_KINDS
from .shop_problem_kinds import SHOP_KINDS
from .statement_problem_kinds import STATEMENT_KINDS
from .storage_problem_kinds import STORAGE_KINDS
from .table_problem_kinds import TABLE_KINDS
from .terms_problem_kinds import TERMS_KINDS

KINDS: dict[str, ProblemKind] = {
    **SHEET_KINDS,
    **PACKAGE_KINDS,
    **SHOP_KINDS,
    **JOB_KINDS,
    **PULLEY_KINDS,
    **STORAGE_KINDS,
    **STATEMENT_KINDS,
    **TABLE_KINDS,
    **TERMS_KINDS,
    **MATCH_KINDS,
    **JUDGEMENT_KINDS,
    **IDENTITY_KINDS,
    **DATE_KINDS,
    **CHOICE_KINDS,
    **BASKET_KINDS,
    **LANDED_KINDS,
    **PLAN_KINDS,
    **MARGIN_KINDS,
    **PRICE_KINDS,
    **ORDER_CHANGE_KINDS,
    **BILL_KINDS,
    **RECEIPT_KINDS,
    **ALARM_KINDS,
    **ANSWER_KINDS,
    **COUNTER_KINDS,
    **SENT_SHEET_KINDS,
    **SAME_PAGE_KINDS,
    **SETTINGS_KINDS,
    **LINK_KINDS,
    **PART_KINDS,
}
