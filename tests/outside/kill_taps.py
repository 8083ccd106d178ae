#!/usr/bin/env python3
"""Kills the app over and over while taps come into its real window, and looks for what was lost.

    python3 tests/outside/kill_taps.py PROGRAM [COUNT=200] [SEED=1]

Needs Xvfb and xdotool. Begins one feed in the real window by clicks, then COUNT times: starts the
program, taps both pads with the mouse and with the keys f and j at random short intervals, ends
the program with SIGKILL at a random moment, and reads a copy of the database, decrypted by
`locked.py`. `--say-safe` makes the program print `safe N` whenever its screen begins to show entry N
as safe; every entry up to the last number that was printed must be there, those of earlier rounds
unchanged, and the next start must show all of them. This is the death of the process, not the loss
of power.

Exit code 1 if an entry is lost, or if the rounds did not happen as described.
"""

import os
import pathlib
import random
import re
import select
import shutil
import signal
import sqlite3
import subprocess
import sys
import tempfile
import time

from display import display
from locked import plain_database

WIDTH, HEIGHT = 1280, 800
# The places that are clicked, in a window of that size and no window manager.
FILL, BACK, FIRST_ROW, BEGIN = (640, 456), (44, 38), (640, 120), (1202, 38)
LEFT, CROSS_CRADLE, BABY_ON = (800, 154), (950, 223), (950, 368)
SUCK_PAD, SWALLOW_PAD = (796, 617), (1114, 617)
# Long enough for a slow machine; a program that needs longer has failed.
PATIENCE_S = 30


class App:
    """The program, with what it printed."""

    def __init__(self, program, data):
        self.process = subprocess.Popen(
            [program, "--data", str(data), "--say-safe"],
            stdout=subprocess.PIPE, stderr=subprocess.DEVNULL,
        )
        self.text = ""

    def said(self):
        """All numbers said so far; only whole lines count."""
        return [int(number) for number in re.findall(r"^safe (\d+)\n", self.text, re.M)]

    def first_safe(self):
        """The first number, waiting for it."""
        until = time.monotonic() + PATIENCE_S
        while not self.said():
            left = until - time.monotonic()
            if left <= 0 or not select.select([self.process.stdout], [], [], left)[0]:
                break
            read = os.read(self.process.stdout.fileno(), 65536)
            if not read:
                break
            self.text += read.decode()
        return self.said()[0] if self.said() else None

    def kill(self):
        """SIGKILL, then whatever had been printed before it."""
        self.process.send_signal(signal.SIGKILL)
        self.text += self.process.stdout.read().decode()
        return self.process.wait()


def xdotool(*words):
    subprocess.run(["xdotool", *map(str, words)], check=True, timeout=PATIENCE_S,
                   stdout=subprocess.DEVNULL)


def click(place):
    return ["mousemove", *map(str, place), "click", "1"]


def to_the_window():
    """Waits for the window, and gives it the keyboard: there is no window manager to do so."""
    return ["search", "--sync", "--onlyvisible", "--name", "^Feedside$", "windowfocus"]


def entries(data, scratch):
    """The journal of the latest visit, from a copy: the program alone repairs its own files."""
    shutil.rmtree(scratch, ignore_errors=True)
    shutil.copytree(data, scratch)
    database = sqlite3.connect(plain_database(scratch, scratch / "plain.sqlite"))
    try:
        return database.execute(
            "SELECT seq, at_ms, kind, body FROM entry"
            " WHERE visit = (SELECT max(number) FROM visit) ORDER BY seq"
        ).fetchall()
    finally:
        database.close()


def begin_a_feed(program, data, scratch):
    """A ward, a visit and a baby put to the breast, all by clicks."""
    app = App(program, data)
    try:
        xdotool(*to_the_window())
        for place in (FILL, BACK, FIRST_ROW, BEGIN, LEFT, CROSS_CRADLE, BABY_ON):
            time.sleep(1)
            xdotool(*click(place))
        begun = app.first_safe()
    finally:
        app.kill()
    kinds = [row[2] for row in entries(data, scratch)]
    if begun is None or kinds[-1:] != ["feed_started"]:
        sys.exit(f"no feed could be begun in the window: it said {begun}, entries {kinds}")


def some_taps(chance):
    """One long line of taps for xdotool, longer than any round."""
    line = []
    for _ in range(100):
        tap = chance.choice([click(SUCK_PAD), click(SWALLOW_PAD), ["key", "f"], ["key", "j"]])
        line += [*tap, "sleep", f"{chance.uniform(0.0, 0.08):.3f}"]
    return line


def what_is_wrong(before, after, safe):
    """What was lost between two looks at the journal; `safe` is the last number printed."""
    wrong = []
    if after[:len(before)] != before:
        wrong.append("entries of earlier rounds are lost or changed")
    missing = set(range(1, safe + 1)) - {row[0] for row in after}
    if missing:
        wrong.append(f"entries shown as safe are lost: {sorted(missing)}")
    return wrong


def rounds(program, count, chance, folder):
    data, scratch = folder / "data", folder / "copy"
    begin_a_feed(program, data, scratch)
    journal = entries(data, scratch)
    safe = len(journal)
    shown = unseen = losses = idle = 0
    for number in range(1, count + 1):
        app = App(program, data)
        taps = None
        try:
            restarted = app.first_safe()
            if restarted is None:
                sys.exit(f"round {number}: the feed was not open again after the kill")
            xdotool(*to_the_window())
            taps = subprocess.Popen(["xdotool", *some_taps(chance)], stdout=subprocess.DEVNULL)
            time.sleep(chance.uniform(0.3, 1.5))
        finally:
            ended = app.kill()
            if taps is not None:
                taps.kill()
                taps.wait()
        if ended != -signal.SIGKILL:
            sys.exit(f"round {number}: the program ended by itself with {ended}")
        after = entries(data, scratch)
        last = app.said()[-1]
        wrong = what_is_wrong(journal, after, max(safe, last))
        if restarted < safe:
            wrong.append(f"the start showed {restarted} entries as safe, not {safe}")
        for it in wrong:
            losses += 1
            print(f"round {number}: {it}", file=sys.stderr)
        shown += last - restarted
        idle += last == restarted
        unseen += len(after) - last
        journal, safe = after, max(safe, last)
    app = App(program, data)
    restarted = app.first_safe()
    app.kill()
    if restarted is None or restarted < safe:
        losses += 1
        print(f"the last start shows {restarted} entries, not {safe}", file=sys.stderr)
    print(f"{count} kills, {shown} taps shown as safe before them, {losses} losses "
          f"({unseen} more taps were kept but not yet shown; {idle} rounds without a safe tap)")
    # Rounds in which nothing was tapped prove nothing.
    return losses == 0 and idle * 2 < count


def main(program, count="200", seed="1"):
    with display(WIDTH, HEIGHT), tempfile.TemporaryDirectory() as folder:
        held = rounds(program, int(count), random.Random(int(seed)), pathlib.Path(folder))
    sys.exit(0 if held else 1)


if __name__ == "__main__":
    if not 2 <= len(sys.argv) <= 4:
        sys.exit(__doc__)
    main(*sys.argv[1:])
