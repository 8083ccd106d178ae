"""Opens the tablet's data folder from the standards and SQLCipher's published design alone.

    python3 tests/outside/locked.py FOLDER PLAIN [PIN]

Writes the database as a plain SQLite file. The file's key comes from `feedside.keys`: Argon2id
(RFC 9106) and ChaCha20-Poly1305 (RFC 8439) by the library `cryptography`. Each page is AES-256-CBC
with its own initial vector and an HMAC-SHA512 over ciphertext, vector and page number, as SQLCipher 4
documents it (zetetic.net/sqlcipher/design); the log's frames are checked as SQLite documents them
(sqlite.org/fileformat2.html 4). No code of the program or of SQLCipher has a part in it.
"""

import hashlib
import hmac
import json
import pathlib
import struct
import sys

from cryptography.exceptions import InvalidTag
from cryptography.hazmat.primitives.ciphers import Cipher, algorithms, modes
from cryptography.hazmat.primitives.ciphers.aead import ChaCha20Poly1305
from cryptography.hazmat.primitives.kdf.argon2 import Argon2id

PAGE, RESERVED, SALT = 4096, 80, 16
WAL_HEADER, FRAME_HEADER = 32, 24


class Locked(Exception):
    """What was given does not open it."""


def summed(path):
    """A small file without the SHA-256 at its end."""
    whole = path.read_bytes()
    if hashlib.sha256(whole[:-32]).digest() != whole[-32:]:
        raise ValueError(f"{path.name} is damaged")
    return whole[:-32]


def file_key(folder, pin=None):
    """The key of the database, and its salt."""
    keys = json.loads(summed(folder / "feedside.keys"))
    device = summed(folder / "feedside.device")
    kind = "pin" if pin else "device"
    slot = keys[kind]
    if slot is None:
        raise Locked(f"there is nothing that a {kind} opens")
    argon = Argon2id(
        salt=bytes(slot["salt"]), length=32, iterations=slot["cost"]["passes"],
        lanes=slot["cost"]["lanes"], memory_cost=slot["cost"]["memory_kib"],
        secret=device if pin else None,
    )
    wrapping = argon.derive(pin.encode() if pin else device)
    salt = bytes(keys["salt"])
    bound = b"feedside keys 1: " + kind.encode() + salt
    sealed = bytes(slot["wrapped"]) + bytes(slot["tag"])
    try:
        return ChaCha20Poly1305(wrapping).decrypt(bytes(slot["nonce"]), sealed, bound), salt
    except InvalidTag as error:
        raise Locked("it does not open") from error


def opened(page, number, key, mac_key):
    """One page in plain."""
    begin = SALT if number == 1 else 0
    sealed, vector, mac = page[begin:-RESERVED], page[-RESERVED:-64], page[-64:]
    told = hmac.digest(mac_key, sealed + vector + struct.pack("<I", number), "sha512")
    if not hmac.compare_digest(told, mac):
        raise ValueError(f"page {number} is damaged, or under another key")
    plain = Cipher(algorithms.AES(key), modes.CBC(vector)).decryptor().update(sealed)
    return (b"SQLite format 3\0" if begin else b"") + plain + bytes(RESERVED)


def log(path):
    """The pages of the log up to its last commit, and how many pages the database then has."""
    whole = path.read_bytes() if path.exists() else b""
    if len(whole) < WAL_HEADER:
        return {}, None
    order = ">" if struct.unpack(">I", whole[:4])[0] & 1 else "<"
    salts = whole[16:24]
    one, two = checksum(whole[:24], order, 0, 0)
    if struct.pack(">II", one, two) != whole[24:32]:
        return {}, None
    pages, waiting, size = {}, {}, None
    for at in range(WAL_HEADER, len(whole) - FRAME_HEADER - PAGE + 1, FRAME_HEADER + PAGE):
        head, page = whole[at:at + FRAME_HEADER], whole[at + FRAME_HEADER:at + FRAME_HEADER + PAGE]
        one, two = checksum(head[:8] + page, order, one, two)
        if head[8:16] != salts or struct.pack(">II", one, two) != head[16:24]:
            break
        number, after = struct.unpack(">II", head[:8])
        waiting[number] = page
        if after:
            pages.update(waiting)
            waiting, size = {}, after
    return pages, size


def checksum(data, order, one, two):
    words = struct.unpack(f"{order}{len(data) // 4}I", data)
    for first, second in zip(words[::2], words[1::2]):
        one = (one + first + two) & 0xFFFFFFFF
        two = (two + second + one) & 0xFFFFFFFF
    return one, two


def plain_database(folder, plain, pin=None):
    """Writes the folder's database, with its log, as a plain file."""
    key, salt = file_key(folder, pin)
    mac_key = hashlib.pbkdf2_hmac("sha512", key, bytes(it ^ 0x3A for it in salt), 2, 32)
    whole = (folder / "feedside.db").read_bytes()
    if whole and whole[:SALT] != salt:
        raise ValueError("the database is not that of the keys")
    pages = {1 + at // PAGE: whole[at:at + PAGE] for at in range(0, len(whole), PAGE)}
    newer, size = log(folder / "feedside.db-wal")
    pages.update(newer)
    text = b"".join(opened(pages[number], number, key, mac_key)
                    for number in range(1, (size or len(pages)) + 1))
    # It needs no log any more.
    plain.write_bytes(text[:18] + b"\x01\x01" + text[20:])
    return plain


def main(folder, plain, pin=None):
    plain_database(pathlib.Path(folder), pathlib.Path(plain), pin)


if __name__ == "__main__":
    if not 3 <= len(sys.argv) <= 4:
        sys.exit(__doc__)
    main(*sys.argv[1:])
