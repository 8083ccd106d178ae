"""Feeds the rehearsal's codes to the desk once more, as an ordinary scanner would type them.

    python3 tests/outside/listen_again.py DESK_PROGRAM REHEARSAL_DIR TEXTS_FILE

- The rehearsal's own desk shows the receipt that it gave before, and stores nothing twice.
- One digit altered, in each piece in turn: no receipt, the piece is named, nothing is stored.
- A new desk, a new desk with a key of its own, and the rehearsal's desk without the tablet: no
  record, no receipt, exit code 1, and each says why.
"""

import pathlib
import re
import shutil
import sqlite3
import subprocess
import sys
import tempfile


def receipts_in(text):
    """Numbers of nine digits or more, however they are grouped."""
    found = re.findall(r"(?<!\d)\d(?:[  -]?\d){8,11}(?!\d)", text)
    return {re.sub(r"\D", "", number) for number in found}


def run(desk, *words, data, typed=""):
    """Exit code, and all that was said."""
    done = subprocess.run(
        [desk, *words, "--data", str(data)],
        input=typed, capture_output=True, text=True, timeout=120, check=False,
    )
    return done.returncode, done.stdout + done.stderr


def altered(text, place):
    """The text with one digit changed."""
    digit = str((int(text[place]) + 1) % 10)
    return text[:place] + digit + text[place + 1:]


def without_tablets(data):
    """Takes records and tablets out of a desk's data; the desk's key stays."""
    database = sqlite3.connect(data / "desk.sqlite")
    triggers = database.execute("SELECT name FROM sqlite_master WHERE type = 'trigger'").fetchall()
    for (name,) in triggers:
        database.execute(f"DROP TRIGGER {name}")
    database.execute("DELETE FROM record")
    database.execute("DELETE FROM tablet")
    database.commit()
    database.close()


def stored(data):
    """How many records lie in the desk's data."""
    database = sqlite3.connect(data / "desk.sqlite")
    count = database.execute("SELECT count(*) FROM record").fetchone()[0]
    database.close()
    return count


def main(desk, rehearsal, texts_file):
    rehearsal = pathlib.Path(rehearsal)
    texts = pathlib.Path(texts_file).read_text(encoding="ascii").splitlines()
    given = receipts_in((rehearsal / "receipt.txt").read_text(encoding="utf-8"))
    if len(given) != 1:
        sys.exit(f"receipt.txt holds {len(given)} receipts, not one")
    receipt = given.pop()
    typed = "".join(text + "\n" for text in texts)
    failed = []

    def check(what, held, told=""):
        print(f"{'yes' if held else 'NO '}  {what}")
        if not held:
            failed.append(what)
            print(told)

    with tempfile.TemporaryDirectory() as folder:
        folder = pathlib.Path(folder)
        # A copy: the rehearsal's own folder stays as it was.
        own = folder / "own"
        shutil.copytree(rehearsal / "desk", own)
        before = run(desk, "inbox", data=own)
        code, said = run(desk, "listen", data=own, typed=typed)
        check(f"the same desk shows the same receipt {receipt}",
              code == 0 and receipts_in(said) == {receipt}, said)
        check("and stores nothing twice: one record, the inbox as before",
              stored(own) == 1 and run(desk, "inbox", data=own) == before)

        # The inbox holds the record already; what an altered one would add shows in an empty one.
        empty = folder / "empty"
        for index, text in enumerate(texts):
            shutil.copytree(rehearsal / "desk", empty, dirs_exist_ok=True)
            database = sqlite3.connect(empty / "desk.sqlite")
            database.execute("DROP TRIGGER IF EXISTS record_is_never_deleted")
            database.execute("DELETE FROM record")
            database.commit()
            database.close()
            # In the payload: behind the preamble of 20 digits, the name of 2, and the header.
            for place in (len(text) // 2, len(text) - 1):
                others = texts[:index] + [altered(text, place)] + texts[index + 1:]
                code, said = run(desk, "listen", data=empty,
                                 typed="".join(other + "\n" for other in others))
                named = re.search(rf"\bCode {index + 1} was read with a mistake", said)
                check(f"piece {index + 1}, digit {place + 1} altered: refused, the piece named, "
                      "nothing stored",
                      code == 1 and named and not receipts_in(said) and stored(empty) == 0, said)
        code, said = run(desk, "listen", data=empty, typed=typed)
        check("and unaltered, that empty inbox takes it",
              code == 0 and receipt in receipts_in(said) and stored(empty) == 1, said)

        new, keyed, stranger = folder / "new", folder / "keyed", folder / "stranger"
        run(desk, "keys", "new", data=keyed)
        shutil.copytree(rehearsal / "desk", stranger)
        without_tablets(stranger)
        for what, data, why in [
            ("a new desk", new, "not enrolled"),
            ("a new desk with a key", keyed, "another desk"),
            ("a desk that does not know the tablet", stranger, "not enrolled"),
        ]:
            code, said = run(desk, "listen", data=data, typed=typed)
            check(f"{what} shows no record and says why: {why}",
                  code == 1 and why in said and not receipts_in(said) and stored(data) == 0, said)
    sys.exit(1 if failed else 0)


if __name__ == "__main__":
    if len(sys.argv) != 4:
        sys.exit(__doc__)
    main(*sys.argv[1:])
