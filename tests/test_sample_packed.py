"""The program packed into one file has its sample with it."""

import os
import subprocess
import sys
import zipfile
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent


def test_the_sample_is_found_inside_a_packed_program(tmp_path: Path) -> None:
    packed = tmp_path / "program.zip"
    with zipfile.ZipFile(packed, "w") as file:
        for path in (ROOT / "logbook").rglob("*"):
            if path.is_file() and "__pycache__" not in path.parts:
                file.write(path, path.relative_to(ROOT))
        for path in (ROOT / "sample_data").rglob("*.*"):
            file.write(path, Path("logbook", "sample_data", path.relative_to(ROOT / "sample_data")))
    code = "from logbook import sample; print(sample.__file__); print(sorted(p.name for p in sample.folder().iterdir()))"
    env = {**os.environ, "PYTHONPATH": str(packed)}
    done = subprocess.run([sys.executable, "-c", code], env=env, cwd=tmp_path, capture_output=True, text=True, check=True)
    where, names = done.stdout.splitlines()
    assert where.startswith(str(packed))
    assert {"swatches.csv", "pieces.json"} <= set(eval(names))
