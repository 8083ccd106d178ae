"""Gives good and bad files to the commands that read one, and looks at what they say.

    python3 tests/outside/commands.py PROGRAM TAPS_CSV

TAPS_CSV is the rehearsal's. Looked at: exit code, one sentence on standard error that names the
file and the place in it, and the most memory that the program took, which stays below 100 MB even
for 200 MB of zeros.
"""

import json
import os
import pathlib
import subprocess
import sys
import tempfile

MEMORY_MOST_KB = 100_000
ZEROS = 200_000_000
POLICY = pathlib.Path(__file__).parents[2] / "src/findings/policy-built-in.toml"

failed = []


def check(what, held, told=""):
    print(f"{'yes' if held else 'NO '}  {what}")
    if not held:
        failed.append(what)
        print(f"     {told}")


def run(*words, environment=None):
    """Exit code, standard output, standard error, most memory in kB; of this one process."""
    with tempfile.TemporaryFile() as out, tempfile.TemporaryFile() as err:
        process = subprocess.Popen(list(map(str, words)), stdout=out, stderr=err,
                                   stdin=subprocess.DEVNULL, env=environment)
        _, status, usage = os.wait4(process.pid, 0)
        process.returncode = os.waitstatus_to_exitcode(status)
        out.seek(0)
        err.seek(0)
        return process.returncode, out.read().decode(), err.read().decode(), usage.ru_maxrss


def refused(program, command, file, place, what=None):
    """The file is bad input: code 2, one line with the file's name and the place, bounded memory."""
    code, out, err, memory_kb = run(program, command, file)
    held = (code == 2 and out == "" and len(err.splitlines()) == 1
            and file.name in err and place in err and memory_kb < MEMORY_MOST_KB)
    check(f"{command}, {what or file.name}: {memory_kb // 1000} MB, {err.strip()[:160]}",
          held, f"code {code}, {err!r} should have: {place!r}")


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
    code, out, err, _ = run(program, "rhythm", taps, "--json")
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
        code, out, err, _ = run(program, "growth", file, "--json")
        change = json.loads(out)["weight"]["change"] if code == 0 else {}
        check(f"growth: {grams} g of 3500 g: {change}",
              abs(change.get("percent", 0) - percent) < 0.051
              and change.get("more_than_ten_percent_lost") is more, out + err)
    for name, place, changes in [
        ("birth is no time", "pair.birth", {"pair": {"birth": "yesterday"}}),
        ("birth in the future", "pair.birth", {"pair": {"birth": "2026-03-04T12:00:00+00:00"}}),
        ("a number for the sex", "pair.sex", {"pair": {"sex": 7}}),
        ("no baby of 90 kg", "pair.birth_weight", {"pair": {"birth_weight": 90_000}}),
        ("grams as text", "weighings[0].grams", {"weighing": {"grams": "heavy"}}),
        ("weighed before birth", "weighings[0].at", {"weighing": {"at": "2026-02-01T12:00:00+00:00"}}),
        ("unknown field", "colour", {"colour": "blue"}),
        ("list needed", "nappies", {"nappies": 6}),
    ]:
        wrote(**changes)
        refused(program, "growth", file, place, name)
    for name, place, content in [
        ("not JSON", "line 2", b'{ "pair":\n nothing }'),
        ("given twice", "pair", b'{ "pair": {}, "pair": {} }'),
        ("empty", "line", b""),
        ("deep", "deep", b"[" * 100_000),
    ]:
        file.write_bytes(content)
        refused(program, "growth", file, place, name)
    with file.open("wb") as zeros:
        zeros.truncate(ZEROS)
    refused(program, "growth", file, "bytes", "200 MB of zeros")
    refused(program, "growth", folder, "directory", "a directory")


def policies(program, folder):
    code, out, err, _ = run(program, "check-policy", POLICY)
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


def no_display(program, folder):
    environment = {name: value for name, value in os.environ.items()
                   if name not in ("DISPLAY", "WAYLAND_DISPLAY", "WAYLAND_SOCKET")}
    code, out, err, _ = run(program, "--data", folder / "none", environment=environment)
    check(f"no display: {err.strip()}",
          code == 1 and out == "" and len(err.splitlines()) == 1 and "rehearse" in err, err)


def main(program, taps):
    with tempfile.TemporaryDirectory() as folder:
        folder = pathlib.Path(folder)
        bad_taps(program, folder)
        good_taps(program, pathlib.Path(taps))
        pairs(program, folder)
        policies(program, folder)
        no_display(program, folder)
    print(f"{len(failed)} failed")
    sys.exit(1 if failed else 0)


if __name__ == "__main__":
    if len(sys.argv) != 3:
        sys.exit(__doc__)
    main(*sys.argv[1:])
