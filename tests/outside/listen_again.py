"""Feeds the rehearsal's codes to the desk once more, as an ordinary scanner would type them.

    python3 tests/outside/listen_again.py DESK_PROGRAM REHEARSAL_DIR TEXTS_FILE

- The rehearsal's own desk shows the receipt that it gave before, and stores nothing twice.
- A new desk shows no receipt: the record was not sealed for it, and it says so.
- One digit altered: the rehearsal's desk shows no receipt and names the piece.
"""

import pathlib
import re
import shutil
import subprocess
import sys
import tempfile


def receipts_in(text):
    """Numbers of nine digits or more, however they are grouped."""
    found = re.findall(r"(?<!\d)\d(?:[  -]?\d){8,11}(?!\d)", text)
    return {re.sub(r"\D", "", number) for number in found}


def run(desk, command, data, typed=""):
    done = subprocess.run(
        [desk, command, "--data", str(data)],
        input=typed, capture_output=True, text=True, timeout=120, check=False,
    )
    return done.stdout + done.stderr


def altered(texts):
    """The first text with one digit in its middle changed."""
    first = texts[0]
    place = len(first) // 2
    digit = str((int(first[place]) + 1) % 10)
    return first[:place] + digit + first[place + 1:]


def main(desk, rehearsal, texts_file):
    rehearsal = pathlib.Path(rehearsal)
    texts = pathlib.Path(texts_file).read_text(encoding="ascii").splitlines()
    given = receipts_in((rehearsal / "receipt.txt").read_text(encoding="utf-8"))
    if len(given) != 1:
        sys.exit(f"receipt.txt holds {len(given)} receipts, not one")
    receipt = given.pop()
    typed = "".join(text + "\n" for text in texts)
    failed = []

    def check(what, held):
        print(f"{'yes' if held else 'NO '}  {what}")
        if not held:
            failed.append(what)

    with tempfile.TemporaryDirectory() as folder:
        # A copy: the rehearsal's own folder stays as it was.
        own = pathlib.Path(folder) / "own"
        shutil.copytree(rehearsal / "desk", own)
        before = run(desk, "inbox", own)
        said = run(desk, "listen", own, typed)
        check("the same desk shows the same receipt", receipt in receipts_in(said))
        check("and stores nothing twice", run(desk, "inbox", own) == before)

        said = run(desk, "listen", own, "".join(t + "\n" for t in [altered(texts), *texts[1:]]))
        check("an altered digit gives no receipt", not receipts_in(said) & {receipt})
        check("and the piece is named", re.search(r"\b1\b", said) is not None)

        said = run(desk, "listen", pathlib.Path(folder) / "new", typed)
        check("another desk gives no receipt", receipt not in receipts_in(said))
        check("and says why", bool(said.strip()))
    sys.exit(1 if failed else 0)


if __name__ == "__main__":
    if len(sys.argv) != 4:
        sys.exit(__doc__)
    main(*sys.argv[1:])
