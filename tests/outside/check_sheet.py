#!/usr/bin/env python3
"""Reads the mother's sheets with poppler: words in reading order, every font embedded, tagged.

    check_sheet.py REHEARSAL RIGHT_TO_LEFT.pdf

Source: poppler's `pdftotext`, `pdffonts` and `pdfinfo`, which know nothing of the writer; what is
expected is the order of the sheet's own headings.
"""

import re
import subprocess
import sys
from pathlib import Path

ORDER = {
    "en": [
        "You and your baby",
        "What went well",
        "What to try",
        "How to tell that your baby is getting milk",
        "What comes next",
        "Your baby weighed",
        "Get help now",
        "Ring the bell on the ward.",
        "Your next visit",
        "We will look again on",
    ],
    "de": [
        "Sie und Ihr Kind",
        "Was gut ging",
        "Was Sie tun können",
        "So sehen Sie, dass Milch ankommt",
        "Was jetzt kommt",
        "Bei der Geburt wog Ihr Kind",
        "Holen Sie sofort Hilfe",
        "Klingeln Sie auf der Station.",
        "Ihr nächster Termin",
        "Wir kommen wieder:",
    ],
}


def run(*command: str) -> str:
    return subprocess.run(command, check=True, capture_output=True, text=True).stdout


def plain(text: str) -> str:
    """Without marks of direction, breaks and hard spaces."""
    text = re.sub("[\u200e\u200f\u202a-\u202e\u2066-\u2069]", "", text)
    return " ".join(text.replace("\u00a0", " ").split())


def check_file(file: Path) -> None:
    rows = run("pdffonts", str(file)).splitlines()[2:]
    assert rows, f"{file}: no fonts"
    for row in rows:
        # emb, sub, uni stand before the two numbers of the object.
        emb, sub, uni = row.split()[-5:-2]
        assert (emb, sub, uni) == ("yes", "yes", "yes"), f"{file}: {row}"
    info = run("pdfinfo", str(file))
    assert re.search(r"^Tagged:\s+yes$", info, re.M), f"{file} is not tagged"
    pages = int(re.search(r"^Pages:\s+(\d+)$", info, re.M).group(1))
    assert 1 <= pages <= 2, f"{file} has {pages} pages"
    print(f"{file.name}: {pages} pages, {len(rows)} fonts embedded, tagged")


def main() -> None:
    rehearsal, right_to_left = Path(sys.argv[1]), Path(sys.argv[2])
    for lang, order in ORDER.items():
        file = rehearsal / "exports" / f"mother-sheet-{lang}.pdf"
        check_file(file)
        text = plain(run("pdftotext", str(file), "-"))
        at = 0
        for part in order:
            found = text.find(part, at)
            assert found >= 0, f"{file}: {part!r} is not there in order"
            at = found + len(part)
        # A number stays with its unit.
        assert re.search(r"\d{4} g", text), f"{file}: no weight"
    check_file(right_to_left)
    text = plain(run("pdftotext", "-raw", str(right_to_left), "-"))
    for word in ["\u0645\u0631\u062d\u0628\u0627", "\u0633\u0627\u0631\u0629", "3049 g"]:
        assert word in text, f"{right_to_left}: {word!r} is not in {text!r}"


if __name__ == "__main__":
    main()
