"""Runs a command in a pseudo-terminal and types at it: a JSON task on standard input, a JSON outcome on standard output.

Task: {"command": [...], "cwd": ..., "env": {...}, "columns": 80, "steps": [{"wait": text, "send": text, "resize": columns}]}.
A step waits until the text has come since the step before, then resizes or types. Outcome: {"status": int, "output": text}.
"""

import fcntl
import json
import os
import pty
import select
import signal
import struct
import sys
import termios
import time

PATIENCE = 60.0


def resize(fd, columns):
    fcntl.ioctl(fd, termios.TIOCSWINSZ, struct.pack("HHHH", 30, columns, 0, 0))


def main():
    task = json.load(sys.stdin)
    pid, fd = pty.fork()
    if pid == 0:
        os.chdir(task["cwd"])
        # The size is set before the command starts, through the terminal that it has by now.
        resize(0, task["columns"])
        os.execvpe(task["command"][0], task["command"], task["env"])
    output = bytearray()
    seen = 0
    steps = list(task["steps"])
    end = time.monotonic() + PATIENCE
    while time.monotonic() < end:
        if steps:
            at = output.decode("utf-8", "replace").find(steps[0].get("wait", ""), seen)
            if at >= 0:
                step = steps.pop(0)
                seen = at + len(step.get("wait", ""))
                # A program that draws its prompt is ready a moment later.
                time.sleep(0.02)
                if "resize" in step:
                    resize(fd, step["resize"])
                    os.kill(pid, signal.SIGWINCH)
                if "send" in step:
                    os.write(fd, step["send"].encode())
                continue
        ready, _, _ = select.select([fd], [], [], 0.1)
        if not ready:
            continue
        try:
            data = os.read(fd, 65536)
        except OSError:
            break
        if not data:
            break
        output += data
    else:
        os.kill(pid, signal.SIGKILL)
        output += ("\n[no end within %d s; waited for %r]" % (PATIENCE, steps[:1])).encode()
    _, state = os.waitpid(pid, 0)
    json.dump({"status": os.waitstatus_to_exitcode(state), "output": output.decode("utf-8", "replace")}, sys.stdout)


main()
