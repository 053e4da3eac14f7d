"""The counter over a fresh copy of the test world, and browsers of its people."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from flask import Flask

from tests.web.world import Browser, counter, logged_in


@pytest.fixture
def app(tmp_path: Path) -> Iterator[Flask]:
    """The counter."""
    with counter(tmp_path) as made:
        yield made


@pytest.fixture
def owner(app: Flask) -> Browser:
    """The owner's browser."""
    return logged_in(app, "owner")


@pytest.fixture
def clerk(app: Flask) -> Browser:
    """The clerk's browser."""
    return logged_in(app, "clerk")


@pytest.fixture
def technician(app: Flask) -> Browser:
    """The technician's browser."""
    return logged_in(app, "technician")
