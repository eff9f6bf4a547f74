import shutil
from pathlib import Path

import pytest
from asking import Desk

EXAMPLES = Path(__file__).parents[2] / "examples"


@pytest.fixture
def desk(tmp_path):
    """A desk over a folder with two examples."""
    folder = tmp_path / "problems"
    folder.mkdir()
    for name in ("market-awning.yaml", "sack-crane.yaml"):
        shutil.copy(EXAMPLES / name, folder / name)
    return Desk(folder)
