"""Opens a record sealed by this project with libraries that share no code with it.

    cargo run --example sealed_sample > sample.json
    python3 tests/outside/open_record.py sample.json
    python3 tests/outside/open_record.py REHEARSAL_DIR TEXTS_FILE

Needs cbor2, pyhpke and cryptography. From the codes' digits to the content: joins the pieces,
opens the seal, verifies the signature, unpacks, decodes, and compares with what the sample says;
of a rehearsal, with what the desk kept, with its receipt, and tap for tap with taps.csv. TEXTS_FILE holds the
texts of the record codes as other readers read them, one a line.
Exits with 1 at the first thing that does not hold.
"""

import hashlib
import hmac
import json
import pathlib
import sqlite3
import sys
import zlib

import cbor2
from cryptography.exceptions import InvalidSignature
from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PublicKey
from pyhpke import AEADId, CipherSuite, KDFId, KEMId, KEMKey

from unsqueeze import unsqueeze

PREAMBLE = "01234567899876543210"
DIGITS_FOR = {3: 1, 5: 2, 8: 3, 10: 4, 13: 5, 15: 6, 17: 7}


def must(holds, what):
    if not holds:
        sys.exit(f"does not hold: {what}")


def bytes_of(text):
    """The name of a piece and its bytes."""
    must(text.startswith(PREAMBLE), "preamble")
    name, digits = int(text[20:22]), text[22:]
    out = b""
    while digits:
        block, digits = digits[:17], digits[17:]
        out += int(block).to_bytes(DIGITS_FOR[len(block)], "big")
    return name, out


def join(texts):
    """The transfer's number and the sealed record, from pieces in any order."""
    pieces, transfers, counts = {}, set(), set()
    for text in texts:
        name, piece = bytes_of(text)
        must(piece[0] == 0x11, "kind and version of a piece")
        transfers.add(int.from_bytes(piece[1:5], "big"))
        index, count, length = piece[5], piece[6], int.from_bytes(piece[7:9], "big")
        counts.add(count)
        payload = piece[13:]
        must(index == name and len(payload) == length, "header of a piece")
        check = zlib.crc32(piece[:9] + payload)
        must(check == int.from_bytes(piece[9:13], "big"), "CRC-32 of a piece")
        pieces[index] = payload
    must(len(transfers) == 1 and counts == {len(pieces)}, "pieces of one transfer")
    return transfers.pop(), b"".join(pieces[index] for index in sorted(pieces))


def kid_of(kind, public):
    return hashlib.sha256(f"feedside {kind} key 1".encode() + public).digest()[:8]


def open_seal(sealed, desk_secret, desk_kid):
    """The signature's short form, and the secret that the receipt is made from. The wrappers that
    COSE would have around them are the same in every record and not sent."""
    must(sealed[0] == 2, "format version")
    must(sealed[1:9] == desk_kid, "id of the desk's key")
    encapsulated, ciphertext = sealed[9:41], sealed[41:]
    suite = CipherSuite.new(
        KEMId.DHKEM_X25519_HKDF_SHA256, KDFId.HKDF_SHA256, AEADId.CHACHA20_POLY1305
    )
    key = KEMKey.from_jwk(okp_jwk("X25519", desk_secret))
    context = suite.create_recipient_context(encapsulated, key, info=b"feedside record")
    protected = cbor2.dumps({1: 42, 4: desk_kid})
    aad = cbor2.dumps(["Encrypt0", protected, sealed[:1]])
    return context.open(ciphertext, aad=aad), context.export(b"feedside receipt", 16)


def okp_jwk(curve, secret):
    import base64

    from cryptography.hazmat.primitives.asymmetric.x25519 import X25519PrivateKey

    def text(raw):
        return base64.urlsafe_b64encode(raw).rstrip(b"=").decode()

    public = X25519PrivateKey.from_private_bytes(secret).public_key().public_bytes_raw()
    must(kid_of("desk", public) == DESK_KID, "id of the desk's key")
    return {"kty": "OKP", "crv": curve, "x": text(public), "d": text(secret)}


def verify(short, tablet_public, desk_kid):
    kid, signature, payload = short[:8], short[8:72], short[72:]
    must(kid == kid_of("tablet", tablet_public), "id of the tablet's key")
    protected = cbor2.dumps({1: -19, 4: kid})
    bound = b"feedside record 2" + desk_kid
    key = Ed25519PublicKey.from_public_bytes(tablet_public)
    key.verify(signature, cbor2.dumps(["Signature1", protected, bound, payload]))
    try:
        elsewhere = b"feedside record 2" + bytes(8)
        key.verify(signature, cbor2.dumps(["Signature1", protected, elsewhere, payload]))
        sys.exit("does not hold: the signature is bound to the desk")
    except InvalidSignature:
        return payload


def content_of(packed):
    """The CBOR of a record from either coding."""
    if packed[0] == 1:
        return zlib.decompress(packed[1:], wbits=-15)
    must(packed[0] == 2, "coding")
    return cbor2.dumps(unsqueeze(packed[1:]), canonical=True)


def receipt_of(secret, sealed):
    mac = hmac.new(secret, b"stored" + hashlib.sha256(sealed).digest(), "sha256").digest()
    digits = f"{int.from_bytes(mac, 'big') % 10**9:09d}"
    product = 10
    for digit in digits:
        product = ((product + int(digit)) % 10 or 10) * 2 % 11
    return digits + str((11 - product) % 10)


def sample_of(path):
    """What the example program wrote."""
    with open(path, encoding="utf-8") as file:
        sample = json.load(file)
    for key in ("desk_secret", "desk_kid", "tablet_public", "sealed", "content", "deflated"):
        sample[key] = bytes.fromhex(sample[key])
    return sample


def rehearsal_of(folder, texts_file):
    """The same from a rehearsal: keys and sealed record as the desk keeps them."""
    folder = pathlib.Path(folder)
    database = sqlite3.connect(f"file:{folder / 'desk' / 'desk.sqlite'}?mode=ro", uri=True)
    desk_secret, desk_kid, tablet_public, transfer, sealed = database.execute(
        "SELECT desk_key.secret, desk_key.kid, tablet.public, transfer, sealed FROM record"
        " JOIN desk_key ON desk_key.kid = desk JOIN tablet ON tablet.kid = tablet"
    ).fetchone()
    database.close()
    visit = json.loads((folder / "visit.json").read_text(encoding="utf-8"))
    rows = (folder / "taps.csv").read_text(encoding="ascii").splitlines()[1:]
    taps = [row.split(",") for row in rows if "suck" in row or "swallow" in row]
    receipt = (folder / "receipt.txt").read_text(encoding="utf-8").splitlines()[0]
    return {
        "desk_secret": desk_secret, "desk_kid": desk_kid, "tablet_public": tablet_public,
        "transfer": transfer, "sealed": sealed, "receipt": receipt,
        "pieces": pathlib.Path(texts_file).read_text(encoding="ascii").splitlines(),
        "specialist": visit["visit"]["specialist"],
        "taps": len(taps),
        "jaw": [(int(ms), what == "suck_swallow") for ms, what in taps if what != "swallow"],
    }


def taps_in(taps, unit_ms, sample):
    """How many single taps came along, each one as it was; 0 if they stayed on the tablet."""
    if taps is None:
        must("jaw" in sample, "single taps in the sample")
        return 0
    coding, steps, swallows, alone = taps
    must(coding == 1, "coding of the taps")
    must(len(steps) == len(swallows), "columns of the taps")
    if "jaw" in sample:
        jaw = sample["jaw"]
        must(len(jaw) == len(steps), "number of jaw movements")
        at = [sum(steps[: place + 1]) * unit_ms for place in range(len(steps))]
        # Times are rounded to hundredths of a second in the codes.
        near = [abs((one - at[0]) - (ms - jaw[0][0])) <= 10 for one, (ms, _) in zip(at, jaw)]
        must(all(near), "time of each jaw movement")
        must([bool(it) for it in swallows] == [it for _, it in jaw], "which have a swallow")
    tapped = len(steps) + len(alone)
    must(tapped == sample["taps"], f"number of taps: {tapped}, {sample['taps']}")
    return tapped


def main(*paths):
    global DESK_KID
    sample = sample_of(*paths) if len(paths) == 1 else rehearsal_of(*paths)
    DESK_KID = sample["desk_kid"]

    transfer, sealed = join(reversed(sample["pieces"]))
    must(transfer == sample["transfer"] and sealed == sample["sealed"], "joined pieces")
    short, secret = open_seal(sealed, sample["desk_secret"], DESK_KID)
    packed = verify(short, sample["tablet_public"], DESK_KID)
    content = content_of(packed)
    must(content == sample.get("content", content), "content to the byte")
    if "deflated" in sample:
        must(content_of(sample["deflated"]) == content, "the same content in the plain coding")

    record = cbor2.loads(content)
    must(cbor2.dumps(record, canonical=True) == content, "deterministic CBOR")
    must(record[0] == 2 and next(iter(record)) == 0, "version first")
    must(record[3][3] == sample["specialist"], "specialist")
    unit_ms, kinds, bodies, times, seqs, _walls, taps = record[4]
    tapped = taps_in(taps, unit_ms, sample)
    must(tapped or record[6], "a table of runs and phases in place of the taps")
    must(len(bodies) == len(kinds) == len(times) == len(seqs), "columns")
    entries = tapped + len(bodies)
    must(entries == sample.get("entries", entries), "number of entries")
    must(receipt_of(secret, sealed) == sample["receipt"], "receipt")
    print(f"opened: {len(sample['pieces'])} codes, {len(sealed)} bytes sealed, "
          f"{len(content)} unpacked, {entries} entries, {tapped or 'none'} of them single taps, "
          f"receipt {sample['receipt']}")


if __name__ == "__main__":
    if len(sys.argv) not in (2, 3):
        sys.exit(__doc__)
    main(*sys.argv[1:])
