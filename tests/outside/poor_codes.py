"""Draws every code small, turned, pale and with a glare on it, and reads each with two readers.

    python3 tests/outside/poor_codes.py FOLDER

FOLDER holds pictures of codes as the program draws them.

Each code is drawn anew at 3, 4 and 6 pixels a module, and each drawing is read as it is, turned by
15 degrees, with black and white drawn near to each other, and with a white glare over part of it, as
a lamp leaves on glass. The readers are those of `read_codes.py`; what either reads must be what
it read from the program's own picture. A picture that a reader cannot read is a failure.
"""

import argparse
import pathlib
import sys
import tempfile

from PIL import Image, ImageChops, ImageDraw, ImageFilter

from read_codes import by_zbar, by_zxing, in_order

PIXELS = (3, 4, 6)
# Modules of a finder pattern along its side, and of the quiet zone around a code (ISO/IEC 18004).
FINDER, QUIET = 7, 4
DARK = 128
# Grey levels that stand for black and white in a pale picture.
PALE = (105, 165)
TURN_DEGREES = 15
# The glare's middle and half its width, as shares of the code's side; away from the three finders.
GLARE_AT, GLARE_HALF = (0.62, 0.55), 0.1


def modules(path):
    """The code as a picture of one pixel a module, without a quiet zone."""
    with Image.open(path) as image:
        grey = image.convert("L")
    dark = grey.point(lambda it: 255 if it < DARK else 0)
    left, top, right, bottom = dark.getbbox()
    row = [dark.getpixel((x, top)) for x in range(left, right)]
    pixels = row.index(0) / FINDER
    side = round((right - left) / pixels)
    if side % 4 != 1 or abs(side * pixels - (bottom - top)) > pixels / 2:
        sys.exit(f"{path.name}: no whole code in it")
    code = Image.new("L", (side, side))
    for x in range(side):
        for y in range(side):
            at = (int(left + (x + 0.5) * pixels), int(top + (y + 0.5) * pixels))
            code.putpixel((x, y), 255 - dark.getpixel(at))
    return code


def drawn(code, pixels):
    side = code.width + 2 * QUIET
    whole = Image.new("L", (side, side), 255)
    whole.paste(code, (QUIET, QUIET))
    return whole.resize((side * pixels, side * pixels), Image.Resampling.NEAREST)


def turned(image):
    return image.rotate(TURN_DEGREES, Image.Resampling.BICUBIC, expand=True, fillcolor=255)


def pale(image):
    low, high = PALE
    return image.point(lambda it: low + (high - low) * it // 255)


def glared(image):
    side = image.width
    (x, y), half = [share * side for share in GLARE_AT], GLARE_HALF * side
    spot = Image.new("L", image.size)
    ImageDraw.Draw(spot).ellipse((x - half, y - half, x + half, y + half), fill=255)
    return ImageChops.lighter(image, spot.filter(ImageFilter.GaussianBlur(half / 4)))


WAYS = {"as it is": lambda it: it, "turned": turned, "pale": pale, "with a glare": glared}
READERS = {"zbarimg": by_zbar, "zxing-cpp": by_zxing}


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("folder", type=pathlib.Path)
    paths = sorted(parser.parse_args().folder.glob("*.png"), key=in_order)
    if not paths:
        sys.exit("no code there")
    read = {(pixels, way, reader): 0 for pixels in PIXELS for way in WAYS for reader in READERS}
    with tempfile.TemporaryDirectory() as folder:
        place = pathlib.Path(folder) / "poor.png"
        for path in paths:
            text, code = by_zxing(path), modules(path)
            for pixels in PIXELS:
                for way, change in WAYS.items():
                    change(drawn(code, pixels)).save(place)
                    for reader, reads in READERS.items():
                        read[pixels, way, reader] += bool(text) and reads(place) == text
    failed = 0
    for (pixels, way, reader), count in read.items():
        failed += count != len(paths)
        print(f"{pixels} pixels a module, {way}, {reader}: {count} of {len(paths)}")
    sys.exit(1 if failed else 0)


if __name__ == "__main__":
    main()
