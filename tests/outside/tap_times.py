#!/usr/bin/env python3
"""Measures taps in the app's real window, from outside.

    python3 tests/outside/tap_times.py PROGRAM [TAPS=10000] [STRIP=100] [MINUTES=10] [PACE_MS=30]

Needs Xvfb and xdotool. Begins one feed in the real window by clicks, then:

1. drives TAPS taps into it by the key f, PACE_MS apart (a program that draws slower than that
   piles them up), and prints how long each took from the moment when the
   window heard it until the screen showed it as safe, which is after it was durable;
2. taps STRIP times, a second apart, and watches the strip's last pixels in the display's memory
   until the tap's mark is there;
3. taps four times a second for MINUTES, and prints the share of one core that the program used and
   its memory over time;
4. ends the feed's screen, stays on the Ward screen for ten seconds, and prints what that used.

Prints figures; fails only if something did not happen as described. Speed depends on the machine.
"""

import json
import mmap
import os
import pathlib
import re
import subprocess
import sys
import tempfile
import threading
import time

from display import display
from kill_taps import (BABY_ON, BACK, BEGIN, CROSS_CRADLE, FILL, FIRST_ROW, HEIGHT, LEFT, WIDTH,
                       click, to_the_window, xdotool)

# The right edge of the strip, and a row that a suck's mark crosses, in a window of that size.
STRIP_RIGHT, STRIP_ROW = 1265, 325
# Taps of one xdotool line.
LINE = 200
TICKS = os.sysconf("SC_CLK_TCK")


class App:
    """The program, with the times that it told, in microseconds."""

    def __init__(self, program, data):
        self.process = subprocess.Popen([program, "--data", str(data), "--say-safe"],
                                        stdout=subprocess.PIPE, stderr=subprocess.DEVNULL)
        self.made, self.shown = {}, []
        self.reader = threading.Thread(target=self.read, daemon=True)
        self.reader.start()

    def read(self):
        for line in self.process.stdout:
            told = re.match(rb"(made|shown) (\d+) (\d+)$", line.strip())
            if told and told[1] == b"made":
                self.made[int(told[2])] = int(told[3])
            elif told:
                self.shown.append((int(told[2]), int(told[3])))

    def safe(self):
        return self.shown[-1][0] if self.shown else 0

    def wait_for(self, count, patience=60):
        until, last = time.monotonic() + patience, self.safe()
        while self.safe() < count:
            if last < self.safe():
                until, last = time.monotonic() + patience, self.safe()
            if until < time.monotonic():
                sys.exit(f"only {self.safe()} of {count} entries were shown as safe")
            time.sleep(0.05)

    def ticks(self):
        fields = pathlib.Path(f"/proc/{self.process.pid}/stat").read_text().rsplit(")", 1)[1].split()
        return int(fields[11]) + int(fields[12])

    def kilobytes(self):
        status = pathlib.Path(f"/proc/{self.process.pid}/status").read_text()
        return int(re.search(r"VmRSS:\s+(\d+)", status)[1])


class Picture:
    """The display's own memory."""

    def __init__(self, folder):
        file = open(next(pathlib.Path(folder).glob("Xvfb_screen*")), "rb")
        self.memory = mmap.mmap(file.fileno(), 0, access=mmap.ACCESS_READ)
        size = int.from_bytes(self.memory[0:4], "big")
        colours = int.from_bytes(self.memory[76:80], "big")
        self.line = int.from_bytes(self.memory[48:52], "big")
        self.start = size + colours * 12

    def light(self, x, y):
        place = self.start + y * self.line + x * 4
        return sum(self.memory[place:place + 3])


def spread(values):
    values = sorted(values)
    at = lambda share: values[min(len(values) - 1, int(share * len(values)))]
    return {"count": len(values), "median": round(at(0.5), 2), "p95": round(at(0.95), 2),
            "p99": round(at(0.99), 2), "most": round(values[-1], 2)}


def durable(app, taps, pace):
    before = app.safe()
    for _ in range(taps // LINE):
        subprocess.run(["xdotool", "key", "--delay", str(pace), *["f"] * LINE], check=True)
    app.wait_for(before + taps // LINE * LINE)
    times, place = [], 0
    for seq in sorted(seq for seq in app.made if before < seq):
        while app.shown[place][0] < seq:
            place += 1
        times.append((app.shown[place][1] - app.made[seq]) / 1000)
    return spread(times)


def on_the_strip(app, picture, count):
    times = []
    for _ in range(count):
        until = time.monotonic() + 3
        while picture.light(STRIP_RIGHT, STRIP_ROW) < 600:
            if until < time.monotonic():
                sys.exit("the strip's edge never became clear")
            time.sleep(0.02)
        last = max(app.made)
        tap = subprocess.Popen(["xdotool", "key", "f"])
        until = time.monotonic() + 3
        while 600 <= picture.light(STRIP_RIGHT, STRIP_ROW):
            if until < time.monotonic():
                sys.exit("the tap never came to the strip")
        seen = time.clock_gettime_ns(time.CLOCK_MONOTONIC) / 1000
        tap.wait()
        while max(app.made) == last:
            time.sleep(0.001)
        times.append((seen - app.made[last + 1]) / 1000)
        time.sleep(1)
    return spread(times)


def long_tapping(app, minutes):
    ticks, began = app.ticks(), time.monotonic()
    memory = [app.kilobytes()]
    for _ in range(minutes):
        xdotool_long = subprocess.Popen(["xdotool", "key", "--delay", "250", *["f", "j"] * 120])
        xdotool_long.wait()
        memory.append(app.kilobytes())
    seconds = time.monotonic() - began
    return {"seconds": round(seconds), "share of one core, per cent":
            round(100 * (app.ticks() - ticks) / TICKS / seconds, 1),
            "memory by the minute, MB": [round(it / 1024, 1) for it in memory]}


def idle(app):
    xdotool(*click(BACK))
    time.sleep(3)
    ticks = app.ticks()
    time.sleep(10)
    return {"clock ticks of 1,000 in ten seconds": app.ticks() - ticks}


def main(program, taps="10000", strip="100", minutes="10", pace="30"):
    with tempfile.TemporaryDirectory() as folder:
        frames = pathlib.Path(folder) / "display"
        frames.mkdir()
        with display(WIDTH, HEIGHT, "-fbdir", str(frames)):
            app = App(program, pathlib.Path(folder) / "data")
            try:
                xdotool(*to_the_window())
                for place in (FILL, BACK, FIRST_ROW, BEGIN, LEFT, CROSS_CRADLE, BABY_ON):
                    time.sleep(1.5)
                    xdotool(*click(place))
                app.wait_for(1)
                time.sleep(1)
                figures = {"tap to safe on the screen, ms": durable(app, int(taps), int(pace))}
                print(json.dumps(figures), flush=True)
                time.sleep(2)
                if int(strip):
                    figures = {"tap to its mark on the strip, ms":
                               on_the_strip(app, Picture(frames), int(strip))}
                    print(json.dumps(figures), flush=True)
                if int(minutes):
                    print(json.dumps({"four taps a second": long_tapping(app, int(minutes))}),
                          flush=True)
                print(json.dumps({"ward screen, idle": idle(app)}), flush=True)
            finally:
                app.process.kill()
                app.process.wait()


if __name__ == "__main__":
    if not 2 <= len(sys.argv) <= 6:
        sys.exit(__doc__)
    main(*sys.argv[1:])
