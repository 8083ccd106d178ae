"""Reads every code picture with two readers of different lines, and compares the texts.

    python3 tests/outside/read_codes.py DIR/codes [--texts FILE]

The readers are `zbarimg` (the zbar package of Debian) and `zxing-cpp` (PyPI). A picture that one
of them cannot read, or that they read differently, is a failure. With --texts the texts of the
record codes are written to FILE in order, one a line, as an ordinary scanner would type them.
"""

import argparse
import pathlib
import re
import subprocess
import sys

import zxingcpp
from PIL import Image


def by_zbar(path):
    """What zbarimg prints; one symbol, its text and a line end."""
    run = subprocess.run(
        ["zbarimg", "--quiet", "--raw", "-Sdisable", "-Sqrcode.enable", str(path)],
        capture_output=True,
        check=False,
    )
    return run.stdout.decode("utf-8").removesuffix("\n") if run.returncode == 0 else None


def by_zxing(path):
    """The text of the one QR code that zxing-cpp finds. Looking for all kinds of code, it now and then
    takes a row of modules for a Codabar line, as any reader of such lines may.
    """
    with Image.open(path) as image:
        found = zxingcpp.read_barcodes(image.convert("L"), formats=zxingcpp.BarcodeFormat.QRCode)
    return found[0].text if len(found) == 1 else None


def in_order(path):
    """`record-2-of-10` before `record-10-of-10`."""
    return [int(part) if part.isdigit() else part for part in re.split(r"(\d+)", path.name)]


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("folder", type=pathlib.Path)
    parser.add_argument("--texts", type=pathlib.Path)
    args = parser.parse_args()

    paths = sorted(args.folder.glob("*.png"), key=in_order)
    if not paths:
        sys.exit(f"{args.folder}: no code there")
    failed = 0
    records = []
    for path in paths:
        zbar, zxing = by_zbar(path), by_zxing(path)
        if not zbar or zbar != zxing:
            failed += 1
            told = {name: "nothing" if text is None else f"{len(text)} characters"
                    for name, text in (("zbarimg", zbar), ("zxing-cpp", zxing))}
            print(f"{path.name}: {told}", file=sys.stderr)
        elif path.name.startswith("record"):
            records.append(zbar)
    if args.texts and not failed:
        args.texts.write_text("".join(text + "\n" for text in records), encoding="ascii")
    print(f"codes read alike by zbarimg and zxing-cpp: {len(paths) - failed} of {len(paths)}")
    sys.exit(1 if failed else 0)


if __name__ == "__main__":
    main()
