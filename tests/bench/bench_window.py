#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""What does the real window cost: to the first frame, and for one step of a drag? Never passes or fails.

    tests/gui/display.sh -- /usr/bin/python3 tests/bench/bench_window.py PROGRAM DOCUMENT...

Prints for each document: wall time from the start of the process until its window is on the display and painted, processor time and
peak memory by then; processor time of one step of a drag (real pointer, 60 steps of one pixel row, 40 ms apart, so that each
becomes a frame), less what the window takes in the same time when nothing moves."""
import os, re, shutil, subprocess, sys, tempfile, time

sys.path.insert(0, os.path.join(os.path.dirname(os.path.abspath(__file__)), '..', 'gui'))
from drive import App, sh

STEPS, PAUSE_s = 60, 0.04
TICK_s = 1.0 / os.sysconf('SC_CLK_TCK')


def spent_s(pid):
    """User and system time of all threads: nanoseconds where the kernel tells them."""
    total = 0.0
    for task in os.listdir('/proc/%d/task' % pid):
        with open('/proc/%d/task/%s/schedstat' % (pid, task)) as f:
            total += int(f.read().split()[0]) * 1e-9
    return total


def main_s(pid):
    with open('/proc/%d/task/%d/schedstat' % (pid, pid)) as f:
        return int(f.read().split()[0]) * 1e-9


def first_frame(argv):
    """A window that is mapped and not of one colour has been painted."""
    began = time.monotonic()
    p = subprocess.Popen(argv, stderr=subprocess.DEVNULL)
    while True:
        found = subprocess.run(['xdotool', 'search', '--onlyvisible', '--pid', str(p.pid)], capture_output=True, text=True).stdout.split()
        if found:
            shot = subprocess.run(['import', '-window', found[-1], '-format', '%k', 'info:'], capture_output=True, text=True).stdout
            if shot.strip().isdigit() and int(shot) > 16:
                break
    took_s, work_s = time.monotonic() - began, spent_s(p.pid)
    peak_kB = int(re.search(r'VmHWM:\s*(\d+)', open('/proc/%d/status' % p.pid).read()).group(1))
    p.terminate()
    p.wait()
    return took_s, work_s, peak_kB


def drag_ms(argv):
    a = App(argv, LC_ALL='C.UTF-8')
    x, y = a.centre(a.find('push button', 'Point 2: .*'))
    a.p.terminate()
    a.p.wait()
    # Again without the accessibility tree, which costs something at each step when somebody listens.
    p = subprocess.Popen(argv, env={**os.environ, 'GTK_A11Y': 'none', 'LC_ALL': 'C.UTF-8'})
    xid = App.until(lambda: sh('xdotool', 'search', '--onlyvisible', '--pid', p.pid).split(), 20, 'a window')[-1]
    sh('xdotool', 'windowactivate', '--sync', xid)
    time.sleep(3.0)
    rest = main_s(p.pid)
    time.sleep(STEPS * PAUSE_s)
    rest = main_s(p.pid) - rest
    sh('xdotool', 'mousemove', '--sync', x, y, 'mousedown', 1)
    for i in range(8):
        sh('xdotool', 'mousemove', x, y - i)
        time.sleep(PAUSE_s)
    before, n = main_s(p.pid), 0
    while n < STEPS:
        sh('xdotool', 'mousemove', x, y - 8 - n % 12)
        time.sleep(PAUSE_s)
        n += 1
    took = main_s(p.pid) - before
    if os.environ.get('BENCH_SHOT'):
        sh('import', '-window', 'root', os.environ['BENCH_SHOT'])
    sh('xdotool', 'mouseup', 1)
    p.terminate()
    p.wait()
    return 1e3 * (took - rest) / STEPS


def main():
    program, documents = sys.argv[1], sys.argv[2:]
    with tempfile.TemporaryDirectory() as folder:
        for path in documents:
            mine = shutil.copy(path, folder)
            took_s, work_s, peak_kB = sorted(first_frame([program, mine]) for _ in range(3))[1]
            print('%-44s first frame %4.2f s, %4.2f s of work, %5.1f MB   drag step %5.2f ms of work in the main thread'
                  % (os.path.basename(path), took_s, work_s, peak_kB / 1024, drag_ms([program, mine])), flush=True)


main()
