"""Gives good and bad files to the commands that read one, and looks at what they say.

    python3 tests/outside/commands.py PROGRAM TAPS_CSV

TAPS_CSV is the rehearsal's. Looked at: exit code, one sentence on standard error that names the
file and the place in it, the time, and the most memory that the program took, which stays below
64 MB even for 200 MB of zeros. The catalogue of the rules is counted and read in each language.
"""

import json
import os
import pathlib
import re
import subprocess
import sys
import tempfile
import time

MEMORY_MOST_KB = 64 * 1024
TIME_MOST_S = 2
ZEROS = 200_000_000
NESTED = 10_000_000
POLICY = pathlib.Path(__file__).parents[2] / "src/findings/policy-built-in.toml"

failed = []


def check(what, held, told=""):
    print(f"{'yes' if held else 'NO '}  {what}")
    if not held:
        failed.append(what)
        print(f"     {told}")


def run(*words, environment=None):
    """Exit code, standard output, standard error, most memory in kB, seconds; of this one process."""
    with tempfile.TemporaryFile() as out, tempfile.TemporaryFile() as err:
        began = time.monotonic()
        process = subprocess.Popen(list(map(str, words)), stdout=out, stderr=err,
                                   stdin=subprocess.DEVNULL, env=environment)
        _, status, usage = os.wait4(process.pid, 0)
        took_s = time.monotonic() - began
        process.returncode = os.waitstatus_to_exitcode(status)
        out.seek(0)
        err.seek(0)
        return process.returncode, out.read().decode(), err.read().decode(), usage.ru_maxrss, took_s


def refused(program, command, file, place, what=None, more=()):
    """The file is bad input: code 2, one line with the file's name and the place, in bounds."""
    code, out, err, memory_kb, took_s = run(program, command, *more, file)
    held = (code == 2 and out == "" and len(err.splitlines()) == 1
            and file.name in err and place in err
            and memory_kb < MEMORY_MOST_KB and took_s < TIME_MOST_S)
    check(f"{command}, {what or file.name}: {memory_kb // 1000} MB, {took_s:.2f} s, {err.strip()[:160]}",
          held, f"code {code}, {memory_kb} kB, {took_s:.2f} s, {err!r} should have: {place!r}")


def write(file, parts):
    """Writes each part so many times; never all at once, since the most memory of a process that is
    started counts what its starter held."""
    with file.open("wb") as out:
        for part, times in parts:
            at_once = max(1, 65536 // max(1, len(part)))
            for begun in range(0, times, at_once):
                out.write(part * min(at_once, times - begun))


def bad_taps(program, folder):
    files = [
        ("wrong header", b"ms,when\n0,on\n", "line 1"),
        ("unknown word", b"ms,what\n0,on\n10,slurp\n20,end\n", "line 3"),
        ("time going back", b"ms,what\n0,on\n500,suck\n400,suck\n", "line 4"),
        ("no whole number", b"ms,what\n0,on\n1.5,suck\n", "line 3"),
        ("negative time", b"ms,what\n-1,on\n", "line 2"),
        ("time beyond all numbers", b"ms,what\n0,on\n99999999999999999999999,suck\n", "line 3"),
        ("a third column", b"ms,what\n0,on,left\n", "line 2"),
        ("not text", b"ms,what\n0,on\n\xff\xfe,suck\n", "line 3"),
        ("header only", b"ms,what\n", "line 2"),
        ("empty", b"", "line 1"),
    ]
    for name, content, line in files:
        file = folder / "taps.csv"
        file.write_bytes(content)
        refused(program, "rhythm", file, line, name)
    directory = folder / "directory.csv"
    directory.mkdir()
    refused(program, "rhythm", directory, "directory")
    refused(program, "rhythm", folder / "nowhere.csv", "nowhere.csv")
    zeros = folder / "zeros.csv"
    with zeros.open("wb") as file:
        file.truncate(ZEROS)
    refused(program, "rhythm", zeros, "line 1", "200 MB of zeros")
    with zeros.open("wb") as file:
        file.write(b"ms,what\n0,on\n")
        file.truncate(ZEROS)
    refused(program, "rhythm", zeros, "line 3", "two good lines and 200 MB of zeros")


def good_taps(program, taps):
    code, out, err, _, _ = run(program, "rhythm", taps, "--json")
    check("rhythm, the rehearsal's taps: exit code 0", code == 0 and err == "", err)
    rows = [line.split(",") for line in taps.read_text(encoding="ascii").splitlines()[1:]]
    sucks = [int(ms) for ms, what in rows if what in ("suck", "suck_swallow")]
    told = json.loads(out)
    phases = told["phases"]
    check(f"all {len(sucks)} sucks are counted", told["sucks"] == len(sucks), told["sucks"])
    tiled = all(a["to_ms"] == b["from_ms"] for a, b in zip(phases, phases[1:]))
    ends = (phases[0]["from_ms"], phases[-1]["to_ms"]) == (int(rows[0][0]), int(rows[-1][0]))
    check(f"{len(phases)} phases tile the time from the first row to the last", tiled and ends)
    at_work = [(it["from_ms"], it["to_ms"]) for it in phases
               if it["phase"] in ("quick", "flow", "flutter")]
    outside = [ms for ms in sucks if not any(begin <= ms < end for begin, end in at_work)]
    check("every suck lies in a quick, flow or flutter phase", not outside, outside)
    flow = [it["from_ms"] for it in phases if it["phase"] == "flow"]
    check("first flow is the start of the first flow phase",
          told["first_flow_ms"] == min(flow, default=None))
    totals = dict.fromkeys(told["totals_ms"], 0)
    for it in phases:
        totals[it["phase"]] = totals.get(it["phase"], 0) + it["to_ms"] - it["from_ms"]
    check("totals are the sums of the phases", totals == told["totals_ms"], told["totals_ms"])


def pairs(program, folder):
    file = folder / "pair.json"
    birth, later = "2026-03-01T12:00:00+00:00", "2026-03-03T12:00:00+00:00"

    def wrote(**changes):
        pair = {"birth": birth, "sex": "female", "birth_weight": 3500}
        pair.update(changes.pop("pair", {}))
        weighing = {"at": later, "grams": 3150}
        weighing.update(changes.pop("weighing", {}))
        file.write_text(json.dumps({"pair": pair, "weighings": [weighing], "at": later, **changes}))

    # By arithmetic: 350 of 3500 g are ten per cent, which is not more than ten; 351 g are more.
    for grams, percent, more in [(3150, -10.0, False), (3149, -351 / 35, True)]:
        wrote(weighing={"grams": grams})
        code, out, err, _, _ = run(program, "growth", file, "--json")
        change = json.loads(out)["weight"]["change"] if code == 0 else {}
        check(f"growth: {grams} g of 3500 g: {change}",
              abs(change.get("percent", 0) - percent) < 0.051
              and change.get("more_than_ten_percent_lost") is more, out + err)
    for name, place, changes in [
        ("birth is no time", "pair.birth", {"pair": {"birth": "yesterday"}}),
        ("birth in the future", "pair.birth", {"pair": {"birth": "2026-03-04T12:00:00+00:00"}}),
        ("birth in a year to come, by the clock", "pair.birth",
         {"pair": {"birth": "2199-01-01T00:00:00+00:00"}, "weighings": [], "at": None}),
        ("a number for the sex", "pair.sex", {"pair": {"sex": 7}}),
        ("an unknown word for the sex", "pair.sex", {"pair": {"sex": "boy"}}),
        ("negative weight", "weighings[0].grams", {"weighing": {"grams": -3150}}),
        ("negative birth weight", "pair.birth_weight", {"pair": {"birth_weight": -3500}}),
        ("no baby of 90 kg", "pair.birth_weight", {"pair": {"birth_weight": 90_000}}),
        ("grams as text", "weighings[0].grams", {"weighing": {"grams": "heavy"}}),
        ("weighed before birth", "weighings[0].at", {"weighing": {"at": "2026-02-01T12:00:00+00:00"}}),
        ("unknown field", "colour", {"colour": "blue"}),
        ("list needed", "nappies", {"nappies": 6}),
    ]:
        wrote(**changes)
        refused(program, "growth", file, place, name, ["--json"])
    deep, begun = "[0][0][0]", b'{"pair": {"birth": "%s", "sex": "male"}, ' % birth.encode()
    for name, place, *parts in [
        ("two birth weights", "pair.birth_weight: ",
         (b'{"pair": {"birth_weight": 3500, "sex": "male", "birth_weight": 3400}}', 1)),
        ("two weights of one weighing", "weighings[1].grams: ",
         (b'{"weighings": [{"grams": 3500}, {"grams": 3500, "grams": 3400}]}', 1)),
        ("10 MB of lists", deep, (b"[", NESTED)),
        ("10 MB of lists that end", f"weighings{deep}", (begun + b'"weighings": ', 1),
         (b"[", NESTED // 2), (b"]", NESTED // 2), (b"}", 1)),
        ("10 MB of objects", "pair.bed.bed", (b'{"pair":', 1), (b'{"bed":', NESTED // 7)),
        ("10 MB of lists in a danger sign", f"last_day.baby_danger{deep}",
         (begun + b'"last_day": {"baby_danger":', 1), (b"[", NESTED)),
        ("10 MB of spaces", "bytes", (b" ", NESTED)),
        ("1 MB of empty objects", "weighings[", (b'{"weighings":[', 1), (b"{},", 340_000), (b"{}]}", 1)),
        ("1 MB of small objects", "nappies[", (b'{"nappies":[', 1), (b'{"":0},', 149_000), (b"{}]}", 1)),
        ("not JSON", "line 2", (b'{ "pair":\n nothing }', 1)),
        ("given twice", "pair: ", (b'{ "pair": {}, "pair": {} }', 1)),
        ("empty", "line", (b"", 1)),
    ]:
        write(file, parts)
        refused(program, "growth", file, place, name, ["--json"])
    with file.open("wb") as zeros:
        zeros.truncate(ZEROS)
    refused(program, "growth", file, "bytes", "200 MB of zeros")
    refused(program, "growth", folder, "directory", "a directory")


def policies(program, folder):
    code, out, err, _, _ = run(program, "check-policy", POLICY)
    check("check-policy: the built-in policy is good", code == 0 and "sha256" in out, err)
    good = POLICY.read_text(encoding="utf-8")
    file = folder / "policy.toml"
    lines = good.splitlines()
    limit = next(n for n, line in enumerate(lines, 1) if line.startswith("feeds_least"))
    for name, old, new in [
        ("a word for a number", "feeds_least = 8", 'feeds_least = "eight"'),
        ("not TOML", "feeds_least = 8", "feeds_least = = 8"),
        ("an unknown limit", "feeds_least = 8", "feeds_lest = 8"),
        ("no sensible number", "feeds_least = 8", "feeds_least = -3"),
    ]:
        assert old in good
        file.write_text(good.replace(old, new), encoding="utf-8")
        refused(program, "check-policy", file, f"line {limit}, column ", name)


# A rule's block begins with its name and its id, a threshold's with its name alone.
BLOCK = re.compile(r"^\S.* \(([a-z][a-z0-9-]*)\)$")
RULES_IN = [
    ("en", r"^(\d+) rules in (\d+) families", "Level: ", "Holds when: ", "Source: ", "Last change: "),
    ("de", r"^(\d+) Regeln in (\d+) Gruppen", "Stufe: ", "Gilt, wenn: ", "Quelle: ",
     "Letzte Änderung: "),
]


def blocks(page):
    """The lines of each rule's block, by the rule's id; an id given twice is lost."""
    found = {}
    for block in page.split("\n\n"):
        lines = block.strip().splitlines()
        named = lines and BLOCK.match(lines[0])
        if named and len(lines) > 1:
            assert named[1] not in found, named[1]
            found[named[1]] = lines
    return found


def rules(program, folder):
    ids = {}
    for tag, counted, *fields in RULES_IN:
        code, out, err, _, _ = run(program, "rules", "--lang", tag)
        told = re.search(counted, out, re.MULTILINE)
        found = blocks(out)
        ids[tag] = list(found)
        check(f"rules, {tag}: {len(found)} are there, and so many are told",
              code == 0 and err == "" and told and int(told[1]) == len(found) > 50, out[:200] + err)
        for field in fields:
            lacking = [rule for rule, lines in found.items()
                       if sum(line.strip().startswith(field) and len(line.strip()) > len(field)
                              for line in lines) != 1]
            check(f"rules, {tag}: each has one {field.strip()}", not lacking, lacking)
        undated = [rule for rule, lines in found.items()
                   if not re.search(r"findings-\d+, 20\d\d-\d\d-\d\d$", "\n".join(lines))]
        check(f"rules, {tag}: each last change has a version and a date", not undated, undated)
    check("rules: the same rules in the same order in each language", ids["en"] == ids["de"])
    _, plain, _, _, _ = run(program, "rules")
    _, english, _, _, _ = run(program, "rules", "--lang", "en")
    check("rules: English without a language", plain == english)

    file = folder / "ward.toml"
    own = POLICY.read_text(encoding="utf-8").replace("feeds_least = 8", "feeds_least = 10")
    file.write_text(own.replace('name = "Built-in"', 'name = "Ward seven"'), encoding="utf-8")
    for tag, value in [("en", "Least feeds in 24 hours: 10; published bounds 8 to 12"),
                       ("de", "Mindestzahl der Mahlzeiten in 24 Stunden: 10; veröffentlichte Spanne 8 bis 12")]:
        code, out, err, _, _ = run(program, "rules", "--lang", tag, "--policy", file)
        few = "\n".join(blocks(out).get("feeds-few", []))
        check(f"rules, {tag}: with a ward's policy, its name and its threshold",
              code == 0 and "Ward seven" in out and value in few, few + err)
    file.write_text(own.replace("feeds_least = 10", "feeds_least = 7"), encoding="utf-8")
    refused(program, "rules", file, "line ", "a policy beyond its bounds", ["--policy"])
    code, out, err, _, _ = run(program, "rules", "--lang", "xx")
    check(f"rules, a language that is not there: {err.strip()}",
          code == 2 and out == "" and "xx" in err and "de" in err, err)


def no_display(program, folder):
    environment = {name: value for name, value in os.environ.items()
                   if name not in ("DISPLAY", "WAYLAND_DISPLAY", "WAYLAND_SOCKET")}
    code, out, err, _, _ = run(program, "--data", folder / "none", environment=environment)
    check(f"no display: {err.strip()}",
          code == 1 and out == "" and len(err.splitlines()) == 1 and "rehearse" in err, err)


def main(program, taps):
    with tempfile.TemporaryDirectory() as folder:
        folder = pathlib.Path(folder)
        bad_taps(program, folder)
        good_taps(program, pathlib.Path(taps))
        pairs(program, folder)
        policies(program, folder)
        rules(program, folder)
        no_display(program, folder)
    print(f"{len(failed)} failed")
    sys.exit(1 if failed else 0)


if __name__ == "__main__":
    if len(sys.argv) != 3:
        sys.exit(__doc__)
    main(*sys.argv[1:])
