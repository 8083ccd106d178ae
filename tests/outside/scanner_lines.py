"""Plays a scanner on the two lines that the desk listens on: a terminal's keyboard and a serial port.

    python3 tests/outside/scanner_lines.py DESK_PROGRAM REHEARSAL_DIR TEXTS_FILE

Both are pseudo-terminals of the system. Looked at:

- Keyboard: the codes are typed as keys, without Enter behind them. The desk takes each as soon as it
  is whole, shows the rehearsal's receipt, and writes no digit back; Ctrl-C ends it with exit code 0
  and the terminal is as it was.
- Keyboard, one code of a record alone: after some seconds the desk says by itself which are missing.
- Serial port: the same codes with a carriage return behind each; the same receipt. The port was set
  to pass every byte as it is, and to the speed asked for. Unplugged, the desk says so, exit code 1.
- The test code, typed in small portions: speed as it was typed, nothing lost.
"""

import os
import pathlib
import pty
import re
import select
import shutil
import signal
import subprocess
import sys
import tempfile
import termios
import time

from listen_again import receipts_in

PATIENCE_S = 60
failed = []


def check(what, held, told=""):
    print(f"{'yes' if held else 'NO '}  {what}")
    if not held:
        failed.append(what)
        print(f"     {told!r}")


def write(line, text):
    """Types all of it; a pseudo-terminal takes a few thousand characters at once."""
    typed = text.encode()
    while typed:
        typed = typed[os.write(line, typed[:512]):]


class Desk:
    """The program, with what it wrote."""

    def __init__(self, program, *words, **lines):
        self.process = subprocess.Popen([program, *map(str, words), "--lang", "en"],
                                        stdout=subprocess.PIPE, stderr=subprocess.STDOUT, **lines)
        self.text = ""

    def until(self, pattern):
        """Reads until the pattern was written; whether it was."""
        end = time.monotonic() + PATIENCE_S
        while not re.search(pattern, self.text):
            left = end - time.monotonic()
            if left <= 0 or not select.select([self.process.stdout], [], [], left)[0]:
                return False
            read = os.read(self.process.stdout.fileno(), 65536)
            if not read:
                return False
            self.text += read.decode()
        return True

    def ended(self):
        try:
            self.text += self.process.communicate(timeout=PATIENCE_S)[0].decode()
        except subprocess.TimeoutExpired:
            self.process.send_signal(signal.SIGKILL)
            self.process.wait()
        return self.process.returncode


def echoed(line):
    """What a terminal wrote back to whoever types."""
    text = b""
    while select.select([line], [], [], 0.2)[0]:
        text += os.read(line, 65536)
    return text.decode()


def keyboard(program, data, texts, receipts):
    typist, terminal = pty.openpty()
    before = termios.tcgetattr(terminal)
    desk = Desk(program, "listen", "--data", data, stdin=terminal)
    check("keyboard: the desk says that it is ready", desk.until("Ready to scan"), desk.text)
    for text in texts:
        write(typist, text)
    check("keyboard: the receipt is shown without any Enter", desk.until(r"\d{3} \d{3} \d{4}\n")
          and receipts_in(desk.text) == receipts, desk.text[-400:])
    check("keyboard: no digit is written back", echoed(typist) == "")
    write(typist, "\x03")
    check("keyboard: Ctrl-C ends it, exit code 0", desk.ended() == 0, desk.text[-400:])
    check("keyboard: the terminal is as it was", termios.tcgetattr(terminal) == before)
    os.close(typist)
    os.close(terminal)


def silence(program, data, texts):
    typist, terminal = pty.openpty()
    desk = Desk(program, "listen", "--data", data, stdin=terminal)
    desk.until("Ready to scan")
    write(typist, texts[0] + "\r")
    missing = ", ".join(str(index) for index in range(2, len(texts) + 1))
    check(f"silence: the desk says by itself that {missing} are missing",
          desk.until(rf"number {missing}\b.* still missing"), desk.text[-400:])
    write(typist, "\x03")
    check("silence: ended so, exit code 1", desk.ended() == 1, desk.text[-400:])
    os.close(typist)
    os.close(terminal)


def serial(program, data, texts, receipts):
    scanner, port = pty.openpty()
    name = os.ttyname(port)
    desk = Desk(program, "listen", "--data", data, "--serial", name, "--baud", "115200",
                stdin=subprocess.DEVNULL)
    check("serial port: the desk says that it is ready", desk.until(f"Ready to scan on {name}"))
    end = time.monotonic() + PATIENCE_S
    while termios.tcgetattr(port)[4] != termios.B115200 and time.monotonic() < end:
        time.sleep(0.05)
    settings = termios.tcgetattr(port)
    raw = not settings[3] & (termios.ICANON | termios.ECHO | termios.ISIG)
    check("serial port: 115,200 bits a second, every byte as it is",
          raw and settings[4] == settings[5] == termios.B115200, settings)
    for text in texts:
        write(scanner, text + "\r")
    check("serial port: the same receipt", desk.until(r"\d{3} \d{3} \d{4}\n")
          and receipts_in(desk.text) == receipts, desk.text[-400:])
    os.close(port)
    os.close(scanner)
    check("serial port: unplugged, the desk says so, exit code 1",
          desk.ended() == 1 and "broke off" in desk.text, desk.text[-400:])
    for bad in (data / "nowhere", data / "desk.sqlite"):
        desk = Desk(program, "listen", "--data", data, "--serial", bad, stdin=subprocess.DEVNULL)
        check(f"serial port: {bad.name} is refused as none",
              desk.ended() == 1 and "serial port" in desk.text, desk.text)


def test_code(program, data, folder):
    """The picture of the test code, read by ZXing, typed at about 400 characters a second."""
    import zxingcpp
    from PIL import Image
    file = folder / "test-code.png"
    subprocess.run([program, "scanner", "code", "--out", file, "--data", data], check=True,
                   stdout=subprocess.DEVNULL)
    text = zxingcpp.read_barcode(Image.open(file), formats=zxingcpp.BarcodeFormat.QRCode).text
    typist, terminal = pty.openpty()
    desk = Desk(program, "scanner", "test", "--data", data, stdin=terminal)
    desk.until("Scan the test code")
    time.sleep(0.5)
    began = time.monotonic()
    for at in range(0, len(text), 8):
        write(typist, text[at:at + 8])
        time.sleep(0.02)
    true = len(text) / (time.monotonic() - began)
    write(typist, "\t")
    check("test code: exit code 0", desk.ended() == 0, desk.text)
    plain = desk.text.replace(",", "")
    told = re.search(r"(\d+) characters a second", plain)
    check(f"test code: {len(text)} digits, none lost, ended by the tab key",
          f"All {len(text)} digits arrived" in plain and "tab key" in plain, desk.text)
    check(f"test code: {told and told[1]} characters a second, {true:.0f} were typed",
          bool(told) and abs(int(told[1]) - true) < 0.15 * true, desk.text)
    os.close(typist)
    os.close(terminal)


def main(program, rehearsal, texts_file):
    rehearsal = pathlib.Path(rehearsal)
    texts = pathlib.Path(texts_file).read_text(encoding="ascii").split()
    receipts = receipts_in((rehearsal / "receipt.txt").read_text(encoding="utf-8"))
    with tempfile.TemporaryDirectory() as folder:
        folder = pathlib.Path(folder)
        data = folder / "desk"
        shutil.copytree(rehearsal / "desk", data)
        keyboard(program, data, texts, receipts)
        if len(texts) > 1:
            silence(program, data, texts)
        serial(program, data, texts, receipts)
        test_code(program, data, folder)
    print(f"{len(failed)} failed")
    sys.exit(1 if failed else 0)


if __name__ == "__main__":
    if len(sys.argv) != 4:
        sys.exit(__doc__)
    main(*sys.argv[1:])
