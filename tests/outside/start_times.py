#!/usr/bin/env python3
"""Measures how long the app takes from its start to its first picture.

    python3 tests/outside/start_times.py PROGRAM FOLDER [TIMES=10]

Needs Xvfb. FOLDER is a data folder, filled by the example `filled_folder`. Starts the program TIMES
times and watches the display's own memory until the Ward screen's keys are drawn, and then until its
first pair is. Prints figures; the first start, which works the list out, stands apart. Speed depends
on the machine.
"""

import json
import subprocess
import sys
import tempfile
import time

from display import display
from kill_taps import HEIGHT, WIDTH, PATIENCE_S
from tap_times import Picture, spread

# On the key for the settings, and on the first pair's card, beside the words: lighter than the paper.
KEY, CARD = (1130, 20), (1200, 130)
WHITE = 750


def first_picture(program, folder, picture):
    """Milliseconds from the start to the screen's first picture, and to its list."""
    start = time.monotonic()
    process = subprocess.Popen([program, "--data", folder], stderr=subprocess.DEVNULL)
    times = []
    try:
        for place in KEY, CARD:
            while picture.light(*place) < WHITE:
                if PATIENCE_S < time.monotonic() - start:
                    sys.exit("the Ward screen never came")
                time.sleep(0.001)
            times.append((time.monotonic() - start) * 1000)
        return times
    finally:
        process.kill()
        process.wait()
        while any(WHITE <= picture.light(*place) for place in (KEY, CARD)):
            time.sleep(0.01)


def main(program, data, times="10"):
    with tempfile.TemporaryDirectory() as memory, \
            display(WIDTH, HEIGHT, "-fbdir", memory):
        picture = Picture(memory)
        first = first_picture(program, data, picture)
        pictures, lists = zip(*(first_picture(program, data, picture) for _ in range(int(times))))
    print(json.dumps({"first_start_ms": [round(it) for it in first],
                      "picture_ms": spread(pictures), "list_ms": spread(lists)}))


if __name__ == "__main__":
    if not 3 <= len(sys.argv) <= 4:
        sys.exit(__doc__)
    main(*sys.argv[1:])
