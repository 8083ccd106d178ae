"""Checks HL7 version 2 messages with the PyPI package hl7apy, in its strict mode.

    pip install hl7apy
    python3 tests/outside/check_hl7.py visit.hl7 ...

Exit code 0 if every message is valid, whole. The strict mode knows segments, their order, fields,
how often each may stand, and data types; that it does catch faults is tried on each message with a
field moved and a required one left out. It does not look into the type that OBX-2 names; that is
checked here.
"""

import re
import sys

from hl7apy.consts import VALIDATION_LEVEL
from hl7apy.exceptions import HL7apyException
from hl7apy.parser import parse_message

TYPES = {
    "NM": r"-?\d+(\.\d+)?",
    "TS": r"\d{14}\.\d{3}[+-]\d{4}",
    "CWE": r"[^^]+\^[^^]*\^[^^]+(\^[^^]+\^[^^]*\^[^^]+)?",
    "TX": r".+",
    "ST": r"",
}


def is_valid(text):
    try:
        message = parse_message(text, validation_level=VALIDATION_LEVEL.STRICT)
        return bool(message.validate())
    except HL7apyException as error:
        return error


def main(paths):
    if not paths:
        sys.exit("which message?")
    for path in paths:
        with open(path, encoding="utf-8", newline="") as file:
            whole = file.read()
        for text in re.split(r"(?<=\r)(?=MSH\|)", whole):
            check(path, text)


def check(path, text):
    valid = is_valid(text)
    if valid is not True:
        sys.exit(f"{path}: {valid!r}")
    results = [line.split("|") for line in text.split("\r") if line.startswith("OBX|")]
    for fields in results:
        if not re.fullmatch(TYPES[fields[2]], fields[5]):
            sys.exit(f"{path}: {fields[2]} does not fit {fields[5]!r}")
        if not fields[5] and fields[11] not in ("N", "X", "D"):
            sys.exit(f"{path}: no value, and OBX-11 is {fields[11]}")
    # The validator must be awake: broken copies have to fail.
    broken = [
        re.sub(r"\rPID\|1\|\|[^|]+", "\rPID|1||", text),
        re.sub(r"\rOBR\|(\d+)\|\|", r"\rOBR|\1|||x|y|||||||||||||||||||||||||||||||||||||||||||", text),
        text.replace("\rOBR|", "\rPV2|", 1),
    ]
    for copy in broken:
        if copy == text or is_valid(copy) is True:
            sys.exit(f"{path}: the validator takes a broken copy")
    print(f"{path}: hl7apy, strict, takes all {len(results)} results")


main(sys.argv[1:])
