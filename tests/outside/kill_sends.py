"""Kills `feedside-desk send` at random moments and counts what is lost or doubled.

    python3 tests/outside/kill_sends.py FEEDSIDE_DESK MANY_RECORDS [KILLS [RECORDS]]

A desk of its own gets RECORDS invented visits (100). They are sent to a FHIR server and to an HL7
listener that live in this script; both now and then close without an answer, before or after they
took a record, or are busy. `send` is killed with SIGKILL until KILLS times (100) it was hit while it
ran. Instead of waiting for the next try, the script moves the due times in the inbox.

At the end every visit must be at both places exactly once, nothing may wait, and no output may hold
a person's data. Conditional creates and control ids are what the far ends tell repetitions by.
"""

import http.server
import json
import random
import re
import socketserver
import sqlite3
import subprocess
import sys
import tempfile
import threading
import time
from pathlib import Path

dice = random.Random(20260304)
lock = threading.Lock()
fhir = {}
hl7 = {}
seen = {"requests": 0, "messages": 0}


def mood():
    """What a far end does next: mostly it works."""
    with lock:
        return dice.choices(["well", "busy", "deaf", "mute"], [70, 10, 10, 10])[0]


class Fhir(http.server.BaseHTTPRequestHandler):
    protocol_version = "HTTP/1.1"

    def log_message(self, *_):
        pass

    def do_POST(self):
        bundle = json.loads(self.rfile.read(int(self.headers["Content-Length"])))
        how = mood()
        self.close_connection = True
        time.sleep(dice.random() * 0.02)
        if how == "deaf":
            return
        if how == "busy":
            self.send_response(503)
            self.send_header("Content-Length", "0")
            self.end_headers()
            return
        done = []
        with lock:
            seen["requests"] += 1
            for entry in bundle["entry"]:
                kind, request = entry["resource"]["resourceType"], entry["request"]
                assert request["method"] == "POST", request
                key = kind + "?" + request["ifNoneExist"]
                status = "200 OK" if key in fhir else "201 Created"
                fhir[key] = fhir.get(key, 0) + (key not in fhir)
                done.append({"response": {"status": status}})
        if how == "mute":
            return
        body = {"resourceType": "Bundle", "type": "transaction-response", "entry": done}
        body = json.dumps(body).encode()
        self.send_response(200)
        self.send_header("Content-Length", str(len(body)))
        self.end_headers()
        self.wfile.write(body)


class Mllp(socketserver.BaseRequestHandler):
    def handle(self):
        data = b""
        while not data.endswith(b"\x1c\r"):
            part = self.request.recv(65536)
            if not part:
                return
            data += part
        how = mood()
        if how == "deaf":
            return
        time.sleep(dice.random() * 0.02)
        text = data[1:-2].decode()
        control = text.split("|")[9]
        code, error = "AA", ""
        with lock:
            seen["messages"] += 1
            if how == "busy":
                code, error = "AR", "ERR|||207^x^HL70357|E\r"
            else:
                assert hl7.setdefault(control, text) == text, "other text under the same id"
        if how != "mute":
            answer = f"MSH|^~\\&|FAR||||1||ACK|1|P|2.5.1\rMSA|{code}|{control}\r{error}"
            self.request.sendall(b"\x0b" + answer.encode() + b"\x1c\r")


def serve(server):
    server.daemon_threads = True
    threading.Thread(target=server.serve_forever, daemon=True).start()
    return server.server_address[1]


def main(desk, many, kills=100, records=100):
    data = Path(tempfile.mkdtemp(prefix="feedside-sends-"))

    def run(*arguments, given=""):
        it = subprocess.run(
            [desk, "--lang", "en", "--data", data, *arguments],
            input=given, capture_output=True, text=True, check=False,
        )
        return it.returncode, it.stdout + it.stderr

    def due():
        with sqlite3.connect(data / "desk.sqlite", timeout=30) as file:
            file.execute("UPDATE delivery SET due_utc_ms = 0 WHERE state = 'waiting'")

    key = run("keys", "new")[1].splitlines()[2].strip()
    lines = subprocess.run([many, key, str(records)], capture_output=True, text=True, check=True)
    code, words, *scans = lines.stdout.splitlines()
    told = run("keys", "enrol", "--name", "Tablet 1", "--words", words, given=code + "\n")
    assert told[0] == 0, told
    told = run("listen", given="\n".join(scans) + "\n")
    assert told[0] == 0 and told[1].count("Receipt") >= records, told[1][-400:]

    ports = [
        serve(http.server.ThreadingHTTPServer(("127.0.0.1", 0), Fhir)),
        serve(socketserver.ThreadingTCPServer(("127.0.0.1", 0), Mllp)),
    ]
    ways = [["--fhir", f"http://127.0.0.1:{ports[0]}/fhir"], ["--mllp", f"127.0.0.1:{ports[1]}"]]
    hit, output = 0, ""
    for round in range(20 * kills):
        if hit == kills:
            break
        way = ways[round % 2]
        program = subprocess.Popen(
            [desk, "--lang", "en", "--data", data, "send", *way],
            stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True,
        )
        time.sleep(0.02 + dice.random() * 0.3)
        hit += program.poll() is None
        program.kill()
        output += program.communicate()[0]
        due()
    for way in ways:
        for _ in range(100):
            ended, told = run("send", *way)
            output += told
            due()
            if ended == 0:
                break
        else:
            sys.exit(f"it never ends: {told}{run('queue')[1]}")
    listed = run("queue")[1]

    visits = [key for key in fhir if key.startswith("Encounter?")]
    babies = [text for text in hl7.values() if "|MTH^" in text]
    mothers = [text for text in hl7.values() if "|CHD^" in text]
    names = {re.search(r"visit-id\^[^|]*\|\d+\|([^|]*)", text).group(1) for text in babies}
    doubled = sum(1 for times in fhir.values() if times != 1)
    print(
        f"killed {hit} times while sending {records} records: FHIR {seen['requests']} requests, "
        f"{len(visits)} visits, {doubled} doubled; HL7 {seen['messages']} messages, "
        f"{len(babies)} and {len(mothers)} taken, {len(names)} visits; left: {listed.strip()}"
    )
    failed = [
        hit != kills, len(visits) != records, doubled != 0, len(names) != records,
        len(babies) != records, len(mothers) != records, "Nothing waits" not in listed,
        re.search(r"Bay 2|M\. K\.|90011", output) is not None,
    ]
    sys.exit(1 if any(failed) else 0)


main(sys.argv[1], sys.argv[2], *map(int, sys.argv[3:]))
