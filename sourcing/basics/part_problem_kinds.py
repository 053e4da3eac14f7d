"""The kinds of problem met when a person adds a part of ours, changes it or takes it out again."""

from .problem_kind import ProblemKind, kind

PART_KINDS: dict[str, ProblemKind] = {
    "part-code-missing": kind(
        "Code missing",
        "our code for the part holds no letter and no digit",
        "write the code the shop will know it by",
    ),
    "part-code-damaged": kind(
        "Code that looks damaged",
        "'{found}' is no code as somebody would write it: {why}",
        "write it as it is printed; if it is meant so, set it apart with a dash",
    ),
    "part-there-already": kind(
        "Part of ours twice",
        "'{found}' is a part of ours already: {ours}, {name}",
        "look whether it is the same part; if not, give this one another code, for case, spaces and punctuation make "
        "no difference",
    ),
    "part-number-of-another": kind(
        "Number of another part of ours",
        "'{found}' is a number of our part {ours} already",
        "if it is that part, nothing needs adding; if not, give this one another code",
    ),
    "part-not-kept": kind(
        "Statement about a part that is not kept",
        "it speaks of a new part whose code is another part's number: {found}",
        "give the part another code; this statement then counts",
    ),
    "part-code-too-long": kind(
        "Code too long",
        "the code '{found}' has more than {most} characters",
        "give the part a short code; what it is goes into its name",
    ),
    "our-part-unknown": kind(
        "No such part of ours",
        "no part of ours has the code '{found}'",
        "add it first with 'sourcing table add-part {found}', or correct the code",
    ),
    "part-unchanged": kind(
        "Nothing changed",
        "our part {found} is so already",
        "change what is to be another",
    ),
    "part-in-use": kind(
        "Part in use",
        "our part {found} can't be taken out: {why}",
        "change its name, size or note instead",
    ),
}
