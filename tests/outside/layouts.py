"""Types the rehearsal's codes through every keyboard layout of xkb, as a US keyboard scanner would.

    python3 tests/outside/layouts.py DESK_PROGRAM REHEARSAL_DIR TEXTS_FILE

Needs libxkbcommon and xkb-data. For each layout that the rules `evdev` list, with Caps Lock off and
on, and with and without the prefix `]Q1` (ISO/IEC 15424; from memory), the keys that a scanner set
to a US keyboard would press are turned into text by libxkbcommon. That text goes into `listen` of a
copy of the rehearsal's desk with an empty inbox; the record must be stored with the rehearsal's
receipt. Then the same with the keypad's keys and Num Lock on. Equal texts are fed once.

A layout whose digit keys give fewer than ten different characters cannot carry digits by any means;
those are named and counted apart, and must then be refused, not misread.
"""

import ctypes
import ctypes.util
import pathlib
import shutil
import sqlite3
import subprocess
import sys
import tempfile

from listen_again import receipts_in

RULES = pathlib.Path("/usr/share/X11/xkb/rules/evdev.lst")
# A stand-in for a layout that the site writes itself.
NO_LAYOUT = {"custom"}
PREFIX = "]Q1"
# Key codes of the evdev keyboard, which are the kernel's plus 8 (linux/input-event-codes.h).
SHIFT, ENTER = 42 + 8, 28 + 8
KEYS = {**{digit: 2 + at + 8 for at, digit in enumerate("1234567890")}, "]": 27 + 8, "q": 16 + 8}
KEYPAD = dict(zip("7894561230", (code + 8 for code in (71, 72, 73, 75, 76, 77, 79, 80, 81, 82))))
DOWN, UP = 1, 0


class Names(ctypes.Structure):
    _fields_ = [(name, ctypes.c_char_p) for name in
                ("rules", "model", "layout", "variant", "options")]


def library():
    name = ctypes.util.find_library("xkbcommon") or "libxkbcommon.so.0"
    xkb = ctypes.CDLL(name)
    pointer, number = ctypes.c_void_p, ctypes.c_uint32
    for function, result, arguments in [
        ("xkb_context_new", pointer, [ctypes.c_int]),
        ("xkb_keymap_new_from_names", pointer,
         [pointer, ctypes.POINTER(Names), ctypes.c_int]),
        ("xkb_keymap_unref", None, [pointer]),
        ("xkb_keymap_mod_get_index", number, [pointer, ctypes.c_char_p]),
        ("xkb_state_new", pointer, [pointer]),
        ("xkb_state_unref", None, [pointer]),
        ("xkb_state_update_mask", ctypes.c_int, [pointer] + [number] * 6),
        ("xkb_state_update_key", ctypes.c_int, [pointer, number, ctypes.c_int]),
        ("xkb_state_key_get_utf8", ctypes.c_int,
         [pointer, number, ctypes.c_char_p, ctypes.c_size_t]),
        ("xkb_context_set_log_level", None, [pointer, ctypes.c_int]),
    ]:
        it = getattr(xkb, function)
        it.restype, it.argtypes = result, arguments
    return xkb


class Keyboard:
    """A keyboard of one layout, without compose sequences: a dead key alone types nothing."""

    def __init__(self, xkb, context, layout):
        self.xkb = xkb
        names = Names(b"evdev", b"pc105", layout.encode(), b"", b"")
        self.keymap = xkb.xkb_keymap_new_from_names(context, ctypes.byref(names), 0)
        if not self.keymap:
            sys.exit(f"the layout {layout} cannot be read")

    def close(self):
        self.xkb.xkb_keymap_unref(self.keymap)

    def types(self, text, locked=(), keypad=False):
        """What the computer makes of the keys for this text, Enter behind it."""
        state = self.xkb.xkb_state_new(self.keymap)
        mask = 0
        for modifier in locked:
            index = self.xkb.xkb_keymap_mod_get_index(self.keymap, modifier)
            if index == 0xFFFFFFFF:
                sys.exit(f"no modifier {modifier}")
            mask |= 1 << index
        self.xkb.xkb_state_update_mask(state, 0, 0, mask, 0, 0, 0)
        typed = []
        for letter in text:
            shifted = letter.isupper()
            code = KEYPAD[letter] if keypad else KEYS[letter.lower()]
            if shifted:
                self.xkb.xkb_state_update_key(state, SHIFT, DOWN)
            typed.append(self.press(state, code))
            if shifted:
                self.xkb.xkb_state_update_key(state, SHIFT, UP)
        typed.append(self.press(state, ENTER))
        self.xkb.xkb_state_unref(state)
        return "".join(typed)

    def press(self, state, code):
        buffer = ctypes.create_string_buffer(64)
        self.xkb.xkb_state_key_get_utf8(state, code, buffer, len(buffer))
        self.xkb.xkb_state_update_key(state, code, DOWN)
        self.xkb.xkb_state_update_key(state, code, UP)
        return buffer.value.decode()


def layouts():
    """Names of all layouts, in the order of the list."""
    names, within = [], False
    for line in RULES.read_text(encoding="utf-8").splitlines():
        if line.startswith("!"):
            within = line.split()[1:2] == ["layout"]
        elif within and line.strip():
            names.append(line.split()[0])
    return [name for name in names if name not in NO_LAYOUT]


class Desk:
    """The rehearsal's desk with its record taken out, anew for each text."""

    def __init__(self, program, rehearsal, folder):
        self.program, self.folder = program, folder
        self.empty = folder / "empty"
        shutil.copytree(rehearsal / "desk", self.empty)
        database = sqlite3.connect(self.empty / "desk.sqlite")
        database.execute("DROP TRIGGER record_is_never_deleted")
        database.execute("DELETE FROM record")
        database.commit()
        database.close()
        self.known = {}

    def listens(self, typed):
        """Receipts shown, records stored, exit code."""
        if typed not in self.known:
            data = self.folder / "data"
            shutil.rmtree(data, ignore_errors=True)
            shutil.copytree(self.empty, data)
            done = subprocess.run([self.program, "listen", "--data", str(data)],
                                  input=typed.encode(), capture_output=True, timeout=120,
                                  check=False)
            database = sqlite3.connect(data / "desk.sqlite")
            stored = database.execute("SELECT count(*) FROM record").fetchone()[0]
            database.close()
            receipts = receipts_in(done.stdout.decode())
            self.known[typed] = (receipts, stored, done.returncode)
        return self.known[typed]


def main(program, rehearsal, texts_file):
    rehearsal = pathlib.Path(rehearsal)
    texts = pathlib.Path(texts_file).read_text(encoding="ascii").split()
    receipts = receipts_in((rehearsal / "receipt.txt").read_text(encoding="utf-8"))
    xkb = library()
    context = xkb.xkb_context_new(0)
    names = layouts()
    print(f"{len(names)} layouts: {' '.join(names)}")
    taken, lost, unable, changed = 0, [], [], []
    pad_taken, pad_lost = 0, []
    with tempfile.TemporaryDirectory() as folder:
        desk = Desk(program, rehearsal, pathlib.Path(folder))
        for name in names:
            keyboard = Keyboard(xkb, context, name)
            for caps in (False, True):
                locked = [b"Lock"] if caps else []
                row = keyboard.types("0123456789", locked).rstrip("\r\n")
                able = len(row) == 10 and len(set(row)) == 10
                what = f"{name}{' with Caps Lock' if caps else ''}"
                if able and row != "0123456789":
                    changed.append(f"{what} {row}")
                for prefix in ("", PREFIX):
                    typed = "".join(keyboard.types(prefix + text, locked) for text in texts)
                    found = desk.listens(typed)
                    if not able:
                        unable.append(f"{what} {prefix} {row!r}")
                        if found[0] or found[1]:
                            lost.append(f"{what} {prefix}: misread {found}")
                    elif found == (receipts, 1, 0):
                        taken += 1
                    else:
                        lost.append(f"{what} {prefix}: {found}")
            typed = "".join(keyboard.types(text, [b"NumLock"], keypad=True) for text in texts)
            if desk.listens(typed) == (receipts, 1, 0):
                pad_taken += 1
            else:
                pad_lost.append(name)
            keyboard.close()
        fed = len(desk.known)
    print(f"digits arrive as others on {len(changed)} of them: {'; '.join(changed)}")
    for it in unable:
        print(f"cannot carry digits: {it}")
    for it in lost:
        print(f"LOST: {it}", file=sys.stderr)
    if pad_lost:
        print(f"LOST by the keypad: {' '.join(pad_lost)}", file=sys.stderr)
    able = taken + sum("misread" not in it for it in lost)
    print(f"{taken} of {able} records recovered: {len(names)} layouts, Caps Lock off and on, with and "
          f"without {PREFIX}; {len(unable)} more cannot carry digits")
    print(f"{pad_taken} of {len(names)} recovered by the keypad with Num Lock "
          f"({fed} different texts were fed to the desk)")
    sys.exit(1 if lost or pad_lost or not taken else 0)


if __name__ == "__main__":
    if len(sys.argv) != 4:
        sys.exit(__doc__)
    main(*sys.argv[1:])
