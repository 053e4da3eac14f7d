"""Where the templates and the demo's files are: inside the package in a wheel, beside it in a checkout."""

from pathlib import Path

PACKAGE = Path(__file__).resolve().parents[1]
INSIDE = "_files"


class NotShipped(RuntimeError):
    """A folder that the program needs is neither in the package nor in a checkout: a bug of the build."""


def template_folder() -> Path:
    """The folder of the paper templates. Raises NotShipped where the program was packed without them."""
    return _folder("templates", PACKAGE)


def demo_folder() -> Path:
    """The folder of the demo's sheets and settings. Raises NotShipped where the program was packed without them."""
    return _folder("demo_prices", PACKAGE)


def _folder(name: str, package: Path) -> Path:
    inside, beside = package / INSIDE / name, package.parent / name
    if inside.is_dir():
        return inside
    # Only a checkout has pyproject.toml there: in site-packages a neighbour called 'templates' is somebody else's.
    if beside.is_dir() and (package.parent / "pyproject.toml").is_file():
        return beside
    raise NotShipped(
        f"The program was packed without its folder '{name}': it is neither at {inside} nor at {beside}. "
        "This is a bug of the program, not of your data; please report it with the way you installed it."
    )
