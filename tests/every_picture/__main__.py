"""A picture of every page, dialog and menu in every text size and palette, to be looked at one by one before a release:
``python -m tests.every_picture FOLDER [WIDTHxHEIGHT …] [TEXT-SIZE …] [PALETTE …] [PART-OF-A-NAME …]`` (wants Xvfb,
the window manager openbox and ImageMagick).

The pictures are called after what they show, as ``swatches 150 dark.png``. They are made on the sample, on a screen of 1366×768
or of each size named, zoomed, with the frames and titles that a window manager gives. Parts are those of the names of ``SCENES``.
What is cut, lies over something else or reaches beyond its place in one of them is told, and kept in ``faults.txt``; a picture
at which a dialog did not come up is named at the end.
"""

import gc
import os
import re
import subprocess
import sys
import tempfile
from itertools import product
from pathlib import Path

from logbook.tasks.sampling import new_sample
from tests.every_picture import dialogs, menus, pages
from tests.every_picture.stage import EVERYTHING_OPEN, Scene, a_stage
from tests.support.display import SIZE, own_display

SIZES = ("100", "150", "200")
PALETTES = ("light", "dark")
SCENES: tuple[Scene, ...] = (*pages.SCENES, *dialogs.SCENES, *menus.SCENES)


def main(folder: Path, words: list[str]) -> None:
    """Takes the pictures whose scene's name holds one of the words, or all, on each screen, in each size and palette named."""
    folder.mkdir(parents=True, exist_ok=True)
    gc.disable()  # a worker that happened to collect what is left of a window would reach for Tk from its thread
    screens = [word for word in words if re.fullmatch(r"\d+x\d+", word)] or ["{}x{}".format(*SIZE)]
    sizes = [word for word in words if word.isdigit()] or SIZES
    palettes = [word for word in words if word in PALETTES] or PALETTES
    parts = [word for word in words if word not in {*screens, *sizes, *palettes}]
    scenes = [one for one in SCENES if not parts or any(part in one.__name__ for part in parts)]
    missed: list[str] = []
    with tempfile.TemporaryDirectory() as home:
        os.environ["LOGBOOK_HOME"] = home
        (Path(home) / "sample").mkdir()
        with new_sample(Path(home) / "sample") as book:
            sample = book.path
        for screen in screens:
            width, height = map(int, screen.split("x"))
            place = folder if len(screens) == 1 else folder / screen
            place.mkdir(exist_ok=True)
            with own_display(size=(width, height)):
                manager = subprocess.Popen(["openbox"], stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
                try:
                    for size, palette, scene in product(sizes, palettes, scenes):
                        missed += played(scene, sample, place, int(size), palette)
                finally:
                    manager.terminate()
                    manager.wait()
    print("\n".join(["Not taken:", *missed]) if missed else f"All pictures are in {folder}.")


def played(scene: Scene, sample: Path, folder: Path, size: int, palette: str) -> list[str]:
    """Takes the pictures of one scene, tells the faults in them; what was missed."""
    opened = () if scene in pages.FOLDED else EVERYTHING_OPEN
    with a_stage(sample, folder, size, palette, opened) as stage:
        scene(stage)
        told = "".join(f"{name}: {fault}\n" for name, faults in stage.faults.items() for fault in faults)
        print(told, end="")
        with (folder / "faults.txt").open("a") as file:
            file.write(told)
        missed = stage.missed
    gc.collect()
    return missed


if __name__ == "__main__":
    main(Path(sys.argv[1]), sys.argv[2:])
