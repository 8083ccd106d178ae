"""Kills the desk over and over while a scanner types into it, and looks for what was lost or doubled.

    python3 tests/outside/kill_desk.py DESK_PROGRAM SEALED_MANY [SCANS=500] [SEED=1]

SEALED_MANY is the example of that name: it makes SCANS records for a desk that this script sets up.
Then, until each record has its receipt: starts `listen`, types the codes of the records that have
none yet, in chunks of any size, and ends the program with SIGKILL at a random moment. As people do,
a record whose receipt was not seen is scanned again from its first code.

Looked at after each kill, in a copy of the inbox: every receipt that was ever shown stands for a
stored record; no record that was there before is gone; none is there twice; SQLite finds the file
sound. At the end each record is stored once, under the receipt that its tablet waits for. This is
the death of the process, not the loss of power.
"""

import json
import os
import pathlib
import random
import shutil
import signal
import sqlite3
import subprocess
import sys
import tempfile
import threading
import time

from listen_again import receipts_in


def records_made(desk, sealed_many, data, count):
    """A desk with a key and the tablet, and the records for it."""
    def run(*words, typed=""):
        return subprocess.run([desk, *words, "--data", str(data), "--lang", "en"], input=typed,
                              capture_output=True, text=True, check=True, timeout=120).stdout

    key = run("keys", "new").splitlines()[2].strip()
    made = subprocess.run([sealed_many, key, str(count)], capture_output=True, text=True,
                          check=True, timeout=1800).stdout.splitlines()
    tablet, *records = map(json.loads, made)
    run("keys", "enrol", "--name", "Tablet", "--words", tablet["words"],
        typed=tablet["code"] + "\n")
    return records


def inbox(data, scratch):
    """Receipts and digests of all records, from a copy: the program alone repairs its own file."""
    shutil.rmtree(scratch, ignore_errors=True)
    shutil.copytree(data, scratch)
    database = sqlite3.connect(scratch / "desk.sqlite")
    try:
        sound = database.execute("PRAGMA integrity_check").fetchone()[0] == "ok"
        rows = database.execute("SELECT receipt, sealed_sha256 FROM record").fetchall()
    finally:
        database.close()
    return rows, sound


class Listening:
    """`listen`, a scanner that types into it, and what it showed."""

    def __init__(self, desk, data):
        self.shown = b""
        self.typed = 0
        self.process = subprocess.Popen(
            [desk, "listen", "--data", str(data), "--lang", "en"],
            stdin=subprocess.PIPE, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL, bufsize=0)
        self.reader = threading.Thread(target=self.read)
        self.reader.start()

    def read(self):
        while chunk := self.process.stdout.read(65536):
            self.shown += chunk

    def type(self, text, chance):
        try:
            while text:
                size = chance.choice([1, 7, 64, 512, 4096])
                self.process.stdin.write(text[:size])
                self.typed += len(text[:size])
                text = text[size:]
                if chance.random() < 0.2:
                    time.sleep(chance.uniform(0, 0.003))
        except BrokenPipeError:
            pass

    def killed(self, scanner):
        self.process.send_signal(signal.SIGKILL)
        code = self.process.wait()
        scanner.join()
        self.reader.join()
        self.process.stdin.close()
        return code


def rounds(desk, sealed_many, count, chance, folder):
    data, scratch = folder / "data", folder / "copy"
    records = records_made(desk, sealed_many, data, count)
    texts = {it["receipt"]: "".join(piece + "\n" for piece in it["pieces"]).encode()
             for it in records}
    if len(texts) != count:
        sys.exit("two records have the same receipt")
    print(f"{count} records in {sum(len(it['pieces']) for it in records)} codes")
    seen, before, wrong = set(), [], []
    kills = idle = unseen = scans = 0
    while len(seen) < count:
        waiting = [receipt for receipt in texts if receipt not in seen]
        listening = Listening(desk, data)
        scanner = threading.Thread(
            target=listening.type,
            args=(b"".join(texts[receipt] for receipt in waiting), random.Random(chance.random())))
        scanner.start()
        # From before it is ready to well into the work; more patience where nothing came of it.
        time.sleep(chance.uniform(0.02, 0.5 + 0.5 * min(idle, 10)))
        code = listening.killed(scanner)
        if code != -signal.SIGKILL:
            sys.exit(f"the desk ended by itself with {code}")
        kills += 1
        now = receipts_in(listening.shown.decode(errors="replace"))
        rows, sound = inbox(data, scratch)
        stored = [receipt for receipt, _ in rows]
        fresh = now - seen
        idle = 0 if fresh else idle + 1
        if idle > 60:
            sys.exit("the desk shows no receipt any more")
        seen |= now
        length = 0
        for receipt in waiting:
            length += len(texts[receipt])
            scans += length <= listening.typed
        unseen += len(set(stored) - seen)
        if not sound:
            wrong.append(f"kill {kills}: the inbox is damaged")
        if now - set(texts):
            wrong.append(f"kill {kills}: a receipt that no tablet waits for")
        if seen - set(stored):
            wrong.append(f"kill {kills}: receipts shown, no record stored: {len(seen - set(stored))}")
        if rows[:len(before)] != before:
            wrong.append(f"kill {kills}: records of earlier rounds are gone or changed")
        if len(set(stored)) != len(rows) or len({digest for _, digest in rows}) != len(rows):
            wrong.append(f"kill {kills}: a record is stored twice")
        before = rows
    rows, _ = inbox(data, scratch)
    if sorted(receipt for receipt, _ in rows) != sorted(texts):
        wrong.append(f"at the end {len(rows)} records are stored, not each of {count} once")
    for it in wrong:
        print(it, file=sys.stderr)
    print(f"{kills} kills while {scans} scans of {count} records were typed: {len(seen)} receipts shown, "
          f"{len(rows)} records stored, {len(set(texts) - {it for it, _ in rows})} lost, "
          f"{len(rows) - len(set(rows))} doubled, {len(wrong)} faults "
          f"({unseen} times a record was stored and the kill came before its receipt)")
    return not wrong and kills * 20 >= count


def main(desk, sealed_many, count="500", seed="1"):
    with tempfile.TemporaryDirectory() as folder:
        held = rounds(desk, sealed_many, int(count), random.Random(int(seed)),
                      pathlib.Path(folder))
    sys.exit(0 if held else 1)


if __name__ == "__main__":
    if not 3 <= len(sys.argv) <= 5:
        sys.exit(__doc__)
    os.environ.pop("LANG", None)
    main(*sys.argv[1:])
