#!/usr/bin/env python3
"""Sets a PIN in the app's real window, and looks from outside at what is then on the disk.

    python3 tests/outside/lock.py PROGRAM [PICTURES]

Needs Xvfb and xdotool. PICTURES is a folder for pictures of the window, to be looked at. Fills the invented ward, sets a PIN and ends the program. Then nothing of the ward may be found
in any file of the folder; without the PIN and with another the database must not open, and with the
PIN it must, by `locked.py`, with every pair. Started again, the window must be locked: a click where
the ward was does nothing, a wrong PIN does not open it, the right one does.

Exit code 1 if any of this does not hold.
"""

import os
import pathlib
import re
import select
import shutil
import sqlite3
import sys
import tempfile
import time

from PIL import ImageGrab

from display import display
from kill_taps import (BABY_ON, BACK, BEGIN, CROSS_CRADLE, FILL, FIRST_ROW, HEIGHT, LEFT, WIDTH,
                       App, click, to_the_window, xdotool)
from locked import Locked, plain_database

# The places that are clicked, in a window of that size: the settings, and the key that sets a PIN.
SETTINGS, SET_PIN = (1190, 38), (950, 184)
PIN, OTHER = "402715", "402716"


def type_in(digits):
    for digit in digits:
        xdotool("key", digit)
    xdotool("key", "Return")
    time.sleep(1.5)


def clicks(*places):
    for place in places:
        xdotool(*click(place))
        time.sleep(1)


def picture(folder, name):
    if folder:
        ImageGrab.grab(xdisplay=os.environ["DISPLAY"]).save(pathlib.Path(folder) / name)


def rows(folder, pin, scratch):
    """The beds in a copy of the folder; None where it does not open."""
    shutil.rmtree(scratch, ignore_errors=True)
    shutil.copytree(folder, scratch)
    try:
        plain = plain_database(scratch, scratch / "plain.sqlite", pin)
    except Locked:
        return None
    database = sqlite3.connect(plain)
    try:
        assert database.execute("PRAGMA integrity_check").fetchone() == ("ok",)
        return [bed for (bed,) in database.execute("SELECT bed FROM pair ORDER BY bed")]
    finally:
        database.close()


def wrong(program, folder, pictures):
    data, scratch = folder / "data", folder / "copy"
    found = []

    def must(held, what):
        if not held:
            found.append(what)

    app = App(program, data)
    try:
        xdotool(*to_the_window())
        time.sleep(1)
        picture(pictures, "first-start.png")
        clicks(FILL, BACK)
        beds = rows(data, None, scratch)
        must(beds and len(beds) > 3, f"the ward was not filled: {beds}")
        clicks(SETTINGS, SET_PIN)
        picture(pictures, "new-pin.png")
        type_in(PIN)
        type_in(PIN)
        picture(pictures, "rescue.png")
        type_in("")
        picture(pictures, "settings.png")
    finally:
        app.kill()
    must(rows(data, None, scratch) is None, "it opens without the PIN")
    must(rows(data, OTHER, scratch) is None, "it opens with another PIN")
    must(rows(data, PIN, scratch) == beds, "the PIN does not open it, or not all is there")
    for file in data.iterdir():
        text = file.read_bytes()
        for told in (*(bed.encode() for bed in beds or []), b"SQLite format", b"CREATE TABLE"):
            must(told not in text, f"{file.name} holds {told!r}")
        must(file.stat().st_mode & 0o077 == 0 or file.name == "feedside.look",
             f"{file.name} can be read by others")

    app = App(program, data)
    try:
        xdotool(*to_the_window())
        time.sleep(1)
        picture(pictures, "locked.png")
        clicks(FIRST_ROW, BEGIN, LEFT, CROSS_CRADLE, BABY_ON)
        must(not app_says(app), "a locked window took a visit up")
        xdotool(*["key", "BackSpace"] * 12)
        type_in(OTHER)
        picture(pictures, "wrong.png")
        clicks(FIRST_ROW, BEGIN, LEFT, CROSS_CRADLE, BABY_ON)
        must(not app_says(app), "another PIN opened the window")
        xdotool(*["key", "BackSpace"] * 12)
        type_in(PIN)
        picture(pictures, "opened.png")
        clicks(FIRST_ROW, BEGIN, LEFT, CROSS_CRADLE, BABY_ON)
        must(app.first_safe() is not None, "the PIN did not open the window")
    finally:
        app.kill()
    return found


def app_says(app):
    """Whether the program told of an entry, as far as it has come."""
    while select.select([app.process.stdout], [], [], 0)[0]:
        read = os.read(app.process.stdout.fileno(), 65536)
        if not read:
            break
        app.text += read.decode()
    return re.search(r"^safe ", app.text, re.M)


def main(program, pictures=None):
    with display(WIDTH, HEIGHT), tempfile.TemporaryDirectory() as folder:
        found = wrong(program, pathlib.Path(folder), pictures)
    for it in found:
        print(it, file=sys.stderr)
    print(f"the lock from outside: {len(found)} things wrong")
    sys.exit(1 if found else 0)


if __name__ == "__main__":
    if not 2 <= len(sys.argv) <= 3:
        sys.exit(__doc__)
    main(*sys.argv[1:])
