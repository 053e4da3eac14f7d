"""Several problems at once, as a page tells them: what is to be done is said once where it is the same for all."""

from collections.abc import Sequence

from ..basics.problem import Problem


def problem_lines(problems: Sequence[Problem]) -> tuple[list[str], str]:
    """A line for each problem, and what is to be done about all of them; blank where each line says it itself."""
    told = list(dict.fromkeys(one.sentence() for one in problems))
    remedies = {one.remedy for one in problems}
    if len(told) < 2 or len(remedies) > 1 or any(one.suggestions for one in problems):
        return told, ""
    return list(dict.fromkeys(f"{one.fault()}." for one in problems)), f"{remedies.pop()}."
