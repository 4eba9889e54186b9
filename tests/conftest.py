"""What all tests share: a deterministic search for counter-examples, and when tests of other programs are skipped."""

import shutil
from pathlib import Path

import pytest
from hypothesis import settings

NODE_PACKAGES = Path(__file__).parent / "node" / "node_modules"

settings.register_profile("steady", derandomize=True, deadline=None)
settings.load_profile("steady")


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Skip the tests marked node or client where what they need is missing."""
    node = shutil.which("node") and NODE_PACKAGES.is_dir()
    for item in items:
        if item.get_closest_marker("node") and not node:
            item.add_marker(pytest.mark.skip(reason="needs Node and `npm install` in tests/node"))
        programs = [name for marker in item.iter_markers("client") for name in marker.args]
        if missing := [name for name in programs if not shutil.which(name)]:
            item.add_marker(pytest.mark.skip(reason=f"needs {', '.join(missing)}"))
