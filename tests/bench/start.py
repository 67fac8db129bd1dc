#!/usr/bin/env python3
"""How long the window takes to show a batch, what it uses while nothing is done, and how much memory is its own.

    cargo build --release && python3 tests/bench/start.py

Needs Xvfb, xdotool and Mesa's software drivers. A window is shown when its first frame is painted, with the batch on it. The figures to hold:
shown within 400 ms, no processor time while idle, 80 MB of anonymous memory at most. Exit code 1 where one of them does not hold.
"""

import os
import statistics
import subprocess
import sys
import tempfile
import time
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
ROUNDS = 7


def shown_after(process, begin, environment):
    """Seconds until the process has a visible window; None where it has none within ten seconds."""
    while time.monotonic() - begin < 10:
        search = ["xdotool", "search", "--onlyvisible", "--pid", str(process.pid)]
        found = subprocess.run(search, env=environment, capture_output=True, text=True)
        if found.stdout.strip():
            return time.monotonic() - begin
        time.sleep(0.004)
    return None


def ticks(process):
    """Processor time used so far, in hundredths of a second."""
    fields = Path(f"/proc/{process.pid}/stat").read_text().rsplit(")", 1)[1].split()
    return int(fields[11]) + int(fields[12])


def anonymous_mb(process):
    lines = Path(f"/proc/{process.pid}/status").read_text().splitlines()
    return next(int(line.split()[1]) for line in lines if line.startswith("RssAnon")) / 1024


def main():
    display = ":87"
    server = subprocess.Popen(["Xvfb", display, "-screen", "0", "1300x820x24"], stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    time.sleep(2)
    times, idle, memory = [], [], []
    try:
        for _ in range(ROUNDS):
            with tempfile.TemporaryDirectory() as home:
                folders = {name: home for name in ("XDG_CONFIG_HOME", "XDG_DATA_HOME", "XDG_RUNTIME_DIR")}
                environment = {**os.environ, **folders, "DISPLAY": display, "LIBGL_ALWAYS_SOFTWARE": "1"}
                begin = time.monotonic()
                process = subprocess.Popen(
                    [ROOT / "target/release/pourbook", ROOT / "sample-jobs/mixed-kiln.ron"],
                    env=environment,
                    stdout=subprocess.DEVNULL,
                    stderr=subprocess.DEVNULL,
                )
                shown = shown_after(process, begin, environment)
                time.sleep(3)
                before = ticks(process)
                time.sleep(3)
                if shown is not None:
                    times.append(1000 * shown)
                    idle.append(ticks(process) - before)
                    memory.append(anonymous_mb(process))
                process.kill()
                process.wait()
    finally:
        server.kill()
    if len(times) < ROUNDS // 2 + 1:
        print(f"only {len(times)} of {ROUNDS} windows were shown")
        return 1
    print(f"shown after {statistics.median(times):.0f} ms (from {min(times):.0f} to {max(times):.0f})")
    print(f"idle: {statistics.median(idle):.0f} hundredths of a second in 3 s")
    print(f"anonymous memory: {statistics.median(memory):.1f} MB")
    return 0 if statistics.median(times) <= 400 and statistics.median(idle) <= 1 and statistics.median(memory) <= 80 else 1


if __name__ == "__main__":
    sys.exit(main())
