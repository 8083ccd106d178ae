"""A display of its own for a program that opens a window: Xvfb, gone again at the end."""

import contextlib
import os
import subprocess


@contextlib.contextmanager
def display(width, height, *more):
    """Opens a display of that size, named to all programs started within; `more` goes to Xvfb."""
    read, write = os.pipe()
    server = subprocess.Popen(
        ["Xvfb", "-displayfd", str(write), "-screen", "0", f"{width}x{height}x24",
         "-nolisten", "tcp", *more],
        pass_fds=[write], stderr=subprocess.DEVNULL,
    )
    os.close(write)
    try:
        with os.fdopen(read) as told:
            os.environ["DISPLAY"] = ":" + told.readline().strip()
        os.environ.pop("WAYLAND_DISPLAY", None)
        yield
    finally:
        server.terminate()
        server.wait()
