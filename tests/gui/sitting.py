# SPDX-License-Identifier: GPL-3.0-or-later
"""What every sitting at the window needs: waiting for the file, undo, scrolling, a screenshot where it fails."""
import json, os, subprocess, time
from drive import App, Atspi

BEGAN = time.monotonic()


def step(name):
    print('# %5.1f s  %s' % (time.monotonic() - BEGAN, name), flush=True)


def start(exe, path):
    return App([exe, path], G_DEBUG='fatal-criticals', LC_ALL='C.UTF-8')


def document(path):
    return json.load(open(path))


def save(a, path, ready, wait=20):
    """Ctrl+S until the file says what is wanted: a closing popover may still swallow the first."""
    pressed = [0.0]

    def look():
        if time.monotonic() - pressed[0] > 1.5:
            a.key('ctrl+s')
            pressed[0] = time.monotonic()
        return ready(document(path)) and document(path)
    return a.until(look, wait, 'the file to say so')


def undo(a, path, ready):
    """One Ctrl+Z; pressed again only when a closing list has swallowed it, which leaves the file as it was."""
    before = document(path)
    for left in (2, 1, 0):
        a.key('ctrl+z')
        try:
            return save(a, path, ready, 6)
        except AssertionError:
            if left == 0 or document(path) != before:
                raise


class Zones:
    """The window's zones, looked for once: each look at the whole window costs a thousand messages."""

    def __init__(self, a):
        work = a.find('panel', 'Assessment')
        self.brief = a.find('landmark|region|panel|filler', 'Brief', work)
        self.stage = a.find('panel|filler', 'Stage', work)
        self.strip = a.find('panel|filler', 'Strip', work)
        self.findings = a.find('landmark|region|panel|filler', 'Findings', work)


def reveal(a, node):
    """Scroll with the wheel until the thing is inside the window."""
    frame = a.frame().get_extents(1)
    x, y = a.origin()
    for _ in range(80):
        e = node.get_extents(1)
        if 90 < e.y and e.y + e.height < frame.height - 20:
            return
        down = e.y + e.height >= frame.height - 20
        a.wheel(x + e.x + 5, y + frame.height // 2, down, min(8, 1 + abs(e.y - frame.height // 2) // 120))
    raise AssertionError('could not be scrolled to: ' + node.get_name())


def rests(a, node):
    """Waits until the thing stays where it is: rows above it may still come and go after an undo."""
    def look():
        e, now = node.get_extents(1), time.monotonic()
        if (e.x, e.y) != seen[0]:
            seen[:] = [(e.x, e.y), now]
        return now - seen[1] > 0.3
    seen = [None, time.monotonic()]
    a.until(look, 10, 'a place that stays')


def click(a, node):
    rests(a, node)
    reveal(a, node)
    rests(a, node)
    a.click(node)


def settled(a, node):
    """The node's name once it has stayed the same for half a second."""
    seen = [node.get_name(), time.monotonic()]

    def look():
        if node.get_name() != seen[0]:
            seen[:] = [node.get_name(), time.monotonic()]
        return time.monotonic() - seen[1] > 0.5
    a.until(look, 10, 'a name that stays')
    return seen[0]


def picture(a, z):
    """The stage as it is on the screen, to be compared."""
    x, y = a.origin()
    e = z.stage.get_extents(1)
    return subprocess.run(['import', '-window', 'root', '-crop', '%dx%d+%d+%d' % (e.width, e.height, x + e.x, y + e.y), '-depth', '8', 'gray:-'],
                          check=True, capture_output=True).stdout


def alike(one, other):
    """But for a few pixels at the edge of what was painted again."""
    return len(one) == len(other) and sum(p != q for p, q in zip(one, other)) < 40


def still(a, z):
    """The picture of the stage once two looks at it are the same."""
    seen = [b'']

    def look():
        now = picture(a, z)
        same, seen[0] = now == seen[0], now
        return same
    a.until(look, 10, 'a picture that stays')
    return seen[0]


def run(a, steps, *more):
    """The steps in order; where one fails: what the program said and a picture."""
    for part in steps:
        try:
            part(a, *more)
        except (AssertionError, IndexError):
            print('# the program said:', a.said())
            a.shot(os.environ.get('GUI_SHOT', 'gui-failed.png'))
            raise
