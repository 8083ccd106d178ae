"""Plays a scanner on the desk's real window: keys of a keyboard, by their place on it.

    python3 tests/outside/window_scans.py DESK_PROGRAM REHEARSAL_DIR TEXTS_FILE

Needs Xvfb, xdotool and setxkbmap. A keyboard-wedge scanner presses the keys where an American
keyboard has the digits; what they write is up to the layout that the computer has. For each layout
looked at:

- The window is opened over the rehearsal's desk without its records; every code of the record is
  typed, two milliseconds a key, Enter behind it. The record is stored, the receipt is the rehearsal's,
  and the sounds are as many as there are codes, the last one that of a record that is safe.
- The sound files are sound files by Python's `wave` module.
"""

import os
import pathlib
import shutil
import sqlite3
import subprocess
import sys
import tempfile
import time
import wave

from display import display
from listen_again import receipts_in, run, stored

WIDTH, HEIGHT = 1180, 760
# The keys of the digits 0 to 9 on a keyboard, as X numbers them (evdev plus eight), and Enter.
DIGITS = ["19", "10", "11", "12", "13", "14", "15", "16", "17", "18"]
ENTER = "36"
KEY_MS = 2
# Digits as such, digits only with Shift, other letters, and other signs.
LAYOUTS = ["us", "de", "fr", "cz", "ara", "hu"]
PATIENCE_S = 60
failed = []


def check(what, held, told=""):
    print(f"{'yes' if held else 'NO '}  {what}")
    if not held:
        failed.append(what)
        print(f"     {told!r}")


def until(true):
    end = time.monotonic() + PATIENCE_S
    while not true() and time.monotonic() < end:
        time.sleep(0.1)
    return true()


def xdotool(*words):
    done = subprocess.run(["xdotool", *map(str, words)], check=True, timeout=PATIENCE_S,
                          stdout=subprocess.PIPE, text=True)
    return done.stdout


def scan(text):
    """Presses the digits' keys, in portions that the command line bears."""
    keys = [DIGITS[int(digit)] for digit in text] + [ENTER]
    for at in range(0, len(keys), 500):
        xdotool("key", "--delay", KEY_MS, *keys[at:at + 500])


def empty(data):
    """Takes the records out of a desk's data; keys and tablets stay."""
    database = sqlite3.connect(data / "desk.sqlite")
    for (name,) in database.execute("SELECT name FROM sqlite_master WHERE type = 'trigger'").fetchall():
        database.execute(f"DROP TRIGGER {name}")
    database.execute("DELETE FROM record")
    database.commit()
    database.close()


def noting_player(folder):
    """A program in the place of the sound player, which notes what it was given."""
    noted = folder / "played.txt"
    player = folder / "bin" / "pw-play"
    player.parent.mkdir()
    player.write_text(f'#!/bin/sh\nbasename "$1" >>"{noted}"\n', encoding="ascii")
    player.chmod(0o755)
    os.environ["PATH"] = f"{player.parent}:{os.environ['PATH']}"
    return noted


def one(program, rehearsal, texts, receipts, layout, folder, noted):
    data = folder / layout
    shutil.copytree(rehearsal / "desk", data)
    empty(data)
    noted.write_text("", encoding="ascii")
    subprocess.run(["setxkbmap", layout], check=True)
    window = subprocess.Popen([program, "window", "--data", data, "--lang", "en"],
                              stderr=subprocess.DEVNULL)
    try:
        found = xdotool("search", "--sync", "--onlyvisible", "--name", "Feedside").split()[0]
        xdotool("windowfocus", "--sync", found)
        time.sleep(0.5)
        for text in texts:
            scan(text)
        check(f"{layout}: the record is stored once", until(lambda: stored(data) == 1), stored(data))
        told = run(program, "inbox", data=data)[1]
        check(f"{layout}: the receipt is the rehearsal's", receipts <= receipts_in(told), told)
        played = ["piece.wav"] * (len(texts) - 1) + ["kept.wav"]
        check(f"{layout}: {len(played)} sounds, the last of a record that is safe",
              until(lambda: sorted(noted.read_text().split()) == sorted(played)), noted.read_text())
        check(f"{layout}: the window is still there", window.poll() is None)
    finally:
        window.terminate()
        window.wait()
    return data


def main(program, rehearsal, texts_file):
    rehearsal = pathlib.Path(rehearsal)
    texts = pathlib.Path(texts_file).read_text(encoding="ascii").split()
    receipts = receipts_in((rehearsal / "receipt.txt").read_text(encoding="utf-8"))
    # The display stays as it is while no window is open.
    with display(WIDTH, HEIGHT, "-noreset"), tempfile.TemporaryDirectory() as folder:
        folder = pathlib.Path(folder)
        noted = noting_player(folder)
        for layout in LAYOUTS:
            data = one(program, rehearsal, texts, receipts, layout, folder, noted)
        for sound in ["kept", "piece", "refused"]:
            with wave.open(str(data / "sounds" / f"{sound}.wav")) as read_back:
                seconds = read_back.getnframes() / read_back.getframerate()
                check(f"{sound}.wav: one channel of 16 bits, {seconds:.2f} s",
                      read_back.getnchannels() == 1 and read_back.getsampwidth() == 2
                      and 0.05 < seconds < 1)
    print(f"{len(failed)} failed")
    sys.exit(1 if failed else 0)


if __name__ == "__main__":
    if len(sys.argv) != 4:
        sys.exit(__doc__)
    main(*sys.argv[1:])
