"""Unpacks coding 2 of a record: a second reading of the format, sharing no code with the first.

    python3 tests/outside/unsqueeze.py src/handover/squeeze/prior.bin

reads the frozen records, from which the model learns, and says how many there are. All arithmetic
is on whole numbers; `M` keeps it to 32 bits where the format says so.
"""

import pathlib
import sys

M = 0xFFFFFFFF
INPUTS, SLOT_BITS, TRUST, KINDS, PLACES, KNOWN = 10, 18, 6, 64, 256, None
START, ONE, RATE, SHIFT = 65536 * 3 // 20, 65536, 4, 18
LIMIT = 8 * ONE
CURVE = [1, 2, 3, 5, 8, 13, 22, 36, 60, 98, 162, 267, 439, 720, 1179, 1921, 3108, 4971, 7812, 11955,
         17625, 24743, 32768, 40793, 47911, 53581, 57724, 60565, 62428, 63615, 64357, 64816, 65097,
         65269, 65374, 65438, 65476, 65500, 65514, 65523, 65528, 65531, 65533, 65534, 65535]
LOGIT = 2815


class Refused(Exception):
    """What is no content of ours."""


def squash(logit):
    at = max(-LOGIT, min(LOGIT, logit)) + 2816
    place, part = at >> 7, at & 127
    value = (CURVE[place] * (128 - part) + CURVE[place + 1] * part + 64) >> 7
    return max(1, min(65535, value))


STRETCH = []
for _logit in range(-LOGIT, LOGIT + 1):
    while len(STRETCH) <= squash(_logit) >> 4:
        STRETCH.append(_logit)
STRETCH += [LOGIT] * (4096 - len(STRETCH))
STEP = [131072 // (2 * count + 3) for count in range(61)]
TRUSTED = [0, 1, 2, 2] + [3] * 5 + [4] * 22 + [5] * 30


def mix(a, b):
    h = ((a ^ b) * 0x9E3779B1) & M
    return ((h ^ h >> 15) * 0x85EBCA77) & M


FRESH = 1 << 31


class Model:
    """Slots hold chance, count and check in one number: 18, 6 and 8 bits. The weights of all kinds
    stand before those of all places."""

    def __init__(self):
        self.slots = {}
        self.weights = [START] * ((KINDS + PLACES) * INPUTS * TRUST)

    def copy(self):
        other = Model()
        other.slots, other.weights = dict(self.slots), list(self.weights)
        return other


class Reader:
    """Decisions out of bytes."""

    def __init__(self, model, data):
        self.model, self.data, self.at = model, data, 4
        self.low, self.high = 0, M
        self.place = int.from_bytes(data[:4].ljust(4, b"\0"), "big")

    def bit(self, contexts, node, kind, place):
        slots, weights = self.model.slots, self.model.weights
        asked = []
        known = 0
        base = 0
        for context in contexts:
            h = ((context ^ node) * 0x9E3779B1) & M
            h = ((h ^ h >> 15) * 0x85EBCA77) & M
            key, check = base | h >> 14, h & 255
            held = slots.get(key, FRESH)
            if held & 255 != check:
                held = FRESH | check
            if held & 0x3F00:
                known += 1
            asked.append((key, held))
            base += 1 << SLOT_BITS
        place = known if place is KNOWN else 16 + place % (PLACES - 16)
        total = 0
        used = []
        one, two = kind * INPUTS * TRUST, (KINDS + place) * INPUTS * TRUST
        for key, held in asked:
            logit, trust = STRETCH[held >> 20], TRUSTED[held >> 8 & 63]
            total += (weights[one + trust] + weights[two + trust]) * logit
            used.append((key, held, logit, one + trust, two + trust))
            one += TRUST
            two += TRUST
        p = squash(max(-4000, min(4000, total >> 16)))

        middle = self.low + ((self.high - self.low) * p >> 16)
        yes = self.place <= middle
        if yes:
            self.high = middle
        else:
            self.low = middle + 1
        while (self.low ^ self.high) >> 24 == 0:
            self.low = self.low << 8 & M
            self.high = self.high << 8 & M | 255
            byte = self.data[self.at] if self.at < len(self.data) else 0
            self.place = self.place << 8 & M | byte
            self.at += 1
        if len(self.data) + 64 < self.at:
            raise Refused("cut")

        off = ((yes << 16) - p) * RATE
        goal = (1 << 18) - 1 if yes else 0
        for key, held, logit, one, two in used:
            step = logit * off >> SHIFT
            for name in (one, two):
                weight = weights[name] + step
                weights[name] = weight if -LIMIT <= weight <= LIMIT else max(-LIMIT, min(LIMIT, weight))
            chance, count = held >> 14, held >> 8 & 63
            chance += (goal - chance) * STEP[count] >> 16
            slots[key] = chance << 14 | (count + 1 if count < 60 else 60) << 8 | held & 255
        return yes


NONE, NULL, NO, YES, SOME_BYTES = 1, 2, 3, 4, 5


def token(value):
    if -1024 < value < 1024:
        return value + 4096
    size = abs(value).bit_length()
    return 1 << 16 | (value < 0) << 12 | size << 4 | abs(value) >> (size - 4) & 7


class Columns(list):
    def above(self, row):
        near = [column[row] for column in self[::-1][:4] if row < len(column) and column[row] != NONE]
        return (near + [None, None])[:2]


class Walk:
    def __init__(self, reader):
        self.reader = reader
        self.before, self.before_2 = NONE, NONE
        self.last = {}

    def contexts(self, salt, at):
        path, column, head, outer, above, above_2 = at
        last = self.last.get(column >> 20, NONE)
        path, column, b = mix(path, salt), mix(column, salt), self.before
        return [
            mix(path, 0), mix(mix(path, b), 1), mix(mix(mix(path, b), self.before_2), 2),
            mix(mix(path, above), 3), mix(mix(mix(path, above), b), 4), mix(mix(column, last), 5),
            mix(mix(mix(path, head), outer), 6), mix(mix(column, above_2), 7),
            mix(mix(mix(column, outer), b), 8), mix(mix(mix(column, head), last), 9),
        ]

    def symbol(self, contexts, kind, place, bits):
        node = 1
        for bit in range(bits):
            node = node << 1 | self.reader.bit(contexts, node, kind + bit, place)
        return node - (1 << bits)

    def number(self, salt, at):
        contexts = self.contexts(salt, at)
        place = mix(at[0], salt) >> 24
        told = self.symbol(contexts, 4, place, 7)
        if told == 64:
            return -(1 << 63)
        size = told & 63
        if size == 0:
            return 0
        value = 1
        for bit in range(size - 2, -1, -1):
            node = mix(told << 16 | value, 77) if value < 4096 else mix(told << 8 | bit, 78)
            kind = 12 + min(size - 1 - bit, 15)
            value = value << 1 | self.reader.bit(contexts, node, kind, place)
        return -value if told & 64 else value

    def count(self, salt, at):
        count = self.number(salt, at)
        if not 0 <= count <= 400_000:
            raise Refused("too large")
        return count

    def item(self, at, beside, depth=0):
        if 8 < depth:
            raise Refused("too deep")
        kind = self.symbol(self.contexts(101, at), 0, mix(at[0], 101) >> 24, 3)
        if kind == 1:
            return self.list(at, beside, depth), None
        if kind == 2:
            return self.map(at, depth), None
        if kind == 0:
            item = self.number(102, at)
            seen = token(item)
        elif kind == 3:
            item = self.text(at)
            seen = 7
            for byte in item.encode():
                seen = mix(seen, byte)
            seen |= 1 << 31
        elif kind == 4:
            item, seen = self.bytes(at), SOME_BYTES
        else:
            item, seen = [(None, NULL), (False, NO), (True, YES)][kind - 5]
        self.before, self.before_2 = seen, self.before
        self.last[at[1] >> 20] = seen
        return item, seen

    def list(self, at, beside, depth):
        count = None
        if beside:
            place = mix(at[0], 103) >> 24
            if self.reader.bit(self.contexts(103, at), 1, 50, place):
                count = len(beside[-1])
        if count is None:
            count = self.count(104, at)
        items, tokens, columns = [], [], Columns()
        for index in range(count):
            above, above_2 = beside.above(index)
            inner = (
                mix(at[0], 200 + (index if count <= 8 else 99)), mix(at[1], 200),
                tokens[0] if tokens else NONE, at[2],
                at[4] if above is None else above, at[5] if above_2 is None else above_2,
            )
            item, seen = self.item(inner, columns, depth + 1)
            items.append(item)
            tokens.append(NONE if seen is None else seen)
        beside.append(tokens)
        return items

    def map(self, at, depth):
        count = self.count(105, at)
        pairs, key_before, head, columns = {}, NONE, NONE, Columns()
        for _ in range(count):
            path, column, outer, _, above, above_2 = at
            before = self.before, self.before_2
            place = (mix(path, 300), mix(column, 300), key_before, outer, above, key_before)
            key, key_before = self.item(place, Columns(), depth + 1)
            self.before, self.before_2 = before
            if key_before is None or key in pairs:
                raise Refused("a key that is none")
            place = (mix(mix(path, 301), key_before), mix(mix(column, 301), key_before),
                     head, outer, above, above_2)
            pairs[key], seen = self.item(place, columns, depth + 1)
            if head == NONE and seen is not None:
                head = seen
        return pairs

    def bytes(self, at):
        out = bytearray()
        for index in range(self.count(106, at)):
            before = out[-1] if out else 0
            place = (mix(at[0], 400 + min(index, 40)), at[1], at[2], at[3], before + 16, at[5])
            out.append(self.symbol(self.contexts(107, place), 40, 0, 8))
        return bytes(out)

    def text(self, at):
        out = bytearray()
        prefix, word, word_before, orders = mix(at[0], 108), 0, 0, [0] * 7
        column = mix(at[1], 109)
        while True:
            contexts = [mix(prefix, 0)] + [mix(orders[n], n) for n in range(1, 7)] + [
                mix(word, 7), mix(mix(word, word_before), 8), mix(column, 9)]
            byte = self.symbol(contexts, 28, KNOWN, 8)
            if byte == 0xFF:
                return out.decode()
            out.append(byte)
            prefix = mix(prefix, byte)
            for n in range(1, 7):
                orders[n] = n
                for one in out[-n:]:
                    orders[n] = mix(orders[n], one + 1)
            if 128 <= byte or chr(byte).isalpha():
                word = mix(word, byte + 32 if 65 <= byte <= 90 else byte)
            elif word:
                word_before, word = word, 0


def whole(model, data):
    return Walk(Reader(model, data)).item((1, 1, NONE, NONE, NONE, NONE), Columns())[0]


def primed(prior):
    """The model that every record begins with, and the records that it learned from."""
    model, records = Model(), []
    while prior:
        length = int.from_bytes(prior[:2], "big")
        records.append(whole(model, prior[2 : 2 + length]))
        prior = prior[2 + length :]
    return model, records


PRIOR = pathlib.Path(__file__).parents[2] / "src" / "handover" / "squeeze" / "prior.bin"


def unsqueeze(data):
    """The content of a record in coding 2, without the coding's own byte."""
    return whole(primed(PRIOR.read_bytes())[0], data)


if __name__ == "__main__":
    told = primed(pathlib.Path(sys.argv[1]).read_bytes())[1]
    if any(record[0] != 2 for record in told):
        sys.exit("does not hold: records of wire version 2")
    print(f"records that the coding learns from: {len(told)}")
