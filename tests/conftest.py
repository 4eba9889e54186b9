"""What all tests share: a deterministic search for counter-examples, and when tests of Node are skipped."""

import shutil
from pathlib import Path

import pytest
from hypothesis import settings

NODE_PACKAGES = Path(__file__).parent / "node" / "node_modules"

settings.register_profile("steady", derandomize=True, deadline=None)
settings.load_profile("steady")


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Skip the tests marked node where Node or its packages are missing."""
    if shutil.which("node") and NODE_PACKAGES.is_dir():
        return
    for item in items:
        if item.get_closest_marker("node"):
            item.add_marker(pytest.mark.skip(reason="needs Node and `npm install` in tests/node"))
