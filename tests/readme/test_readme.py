"""The README is true: its first paragraph states the job, its console blocks are what the commands print."""

from pathlib import Path

from tests.readme.console_blocks import ROOT, run_blocks

README = (ROOT / "README.md").read_text(encoding="utf-8")


def test_the_outputs_shown_are_the_outputs_printed(tmp_path: Path) -> None:
    """If this fails and the change is meant: python -m tests.readme.console_blocks."""
    assert run_blocks(README, tmp_path).splitlines() == README.splitlines()


def test_it_opens_with_one_paragraph_that_states_the_job() -> None:
    """Title, then the paragraph, before anything else."""
    title, paragraph, after = README.split("\n\n")[:3]
    assert title.startswith("# ") and not paragraph.startswith(("#", "-", "`", "|"))
    assert "repairs outdoor power equipment" in paragraph and after.startswith("## ")


def test_the_demo_speaks_in_about_twenty_lines() -> None:
    """Readable in a minute."""
    block = README.split("$ sourcing demo\n")[1].split("```")[0]
    assert 12 <= len(block.splitlines()) <= 24
