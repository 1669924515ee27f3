#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""One sitting at the window with the real pointer and real keys. Arguments: the program, a folder with examples."""
import json, os, re, shutil, sys, tempfile, time
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


def click(a, node):
    reveal(a, node)
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


def drags(a, z, path):
    step('drag a point, nudge it by keys, undo both')
    p = a.find('push button', 'Point 2: .*', z.stage)
    before = p.get_name()
    a.drag(p, 40, -50)
    a.until(lambda: p.get_name() != before, 10, 'point 2 to move')
    moved = settled(a, p)
    a.key('Up')
    a.until(lambda: p.get_name() != moved, 10, 'point 2 to be nudged')
    a.key('ctrl+z')
    a.until(lambda: p.get_name() == moved, 10, 'the nudge to be undone')
    a.key('ctrl+z')
    a.until(lambda: p.get_name() == before, 10, 'the drag to be undone by one step')
    a.key('ctrl+shift+z')
    a.until(lambda: p.get_name() == moved, 10, 'the drag to come back')


def types(a, z, path):
    step('type a number, refuse a wrong one, save, read the file')
    p = a.find('push button', 'Point 2: .*', z.stage)
    click(a, a.find('toggle button|push button', 'Route', z.brief))
    entry = a.find('text', 'Point 2, base of the load, up, m', z.brief)
    click(a, entry)
    a.until(lambda: a.has(entry, 'focused'), 10, 'focus in the field')
    a.key('ctrl+a')
    a.type('0.83')
    a.until(lambda: re.search('0.83.m up', p.get_name()), 10, 'the stage to follow while it is typed')
    a.key('Return')
    save(a, path, lambda d: d['route']['points'][1]['z_m'] == 0.83)
    a.key('ctrl+a')
    a.type('8 parsecs')
    a.key('Escape')
    a.until(lambda: a.text(entry) == '0.83', 10, 'the old figure')
    click(a, a.find('toggle button|push button', 'Route', z.brief))


def crew(a, z, path):
    step('one bearer more by +, the baseline asks once; one fewer by -')
    before = len(document(path)['options'][0]['bearers'])
    a.click(a.find('push button', 'Edit Today', z.stage))
    a.find('label', 'Option: Today', z.brief)
    click(a, a.find('push button', 'One bearer more', z.brief))
    a.click(a.find('push button', "Change today's way"))
    save(a, path, lambda d: len(d['options'][0]['bearers']) == before + 1)
    click(a, a.find('push button', 'One bearer fewer', z.brief))
    save(a, path, lambda d: len(d['options'][0]['bearers']) == before)


def suit(a, z, path):
    step('pick a suit for a bearer, undo it')
    combo = a.find('combo box', 'Suit of Bearer A', z.brief)
    click(a, combo)
    a.find('label', 'Powered suit', combo)       # the list is open
    a.key('Down', 'Return')
    save(a, path, lambda d: d['options'][0]['bearers'][0].get('suit') == d['suits'][0]['id'])
    undo(a, path, lambda d: 'suit' not in d['options'][0]['bearers'][0])


def finding(a, z, path):
    step('choose a finding: its working opens; choose it again: it closes')
    cell = a.find('push button', r'Low back, compression, Proposed: .*', z.findings)
    click(a, cell)
    working = a.find('label', 'Working · Proposed.*', z.findings)
    assert working
    a.key('Escape')
    a.until(lambda: not any((n.get_name() or '').startswith('Working ·') for n in a.all(z.findings)), 20, 'it to close')


def scrub(a, z, path):
    step('scrub by the strip, drag over the plots, switch the power off')
    scale = a.find('slider', 'Moment of the route, seconds', z.strip)
    Atspi.Value.set_current_value(scale, 2.0)
    a.find('label', '2.0.s', z.strip)
    a.press(a.find('push button|toggle button', 'Power off here', z.strip))
    a.until(lambda: a.has(a.find('push button|toggle button', 'Power off here', z.strip), 'pressed'), 10, 'power off')
    a.press(a.find('push button|toggle button', 'Power off here', z.strip))


def loads(a, z, path):
    step('choose a load from the catalogue by typing, undo it')
    name = document(path)['load']['name']
    click(a, a.find('push button|toggle button|combo box', 'Choose a load', z.brief))
    a.find('text|entry', 'Search the loads', z.brief)       # the catalogue is open
    a.type('beam')
    a.key('Return')
    save(a, path, lambda d: d['load']['name'] == 'Beam')
    undo(a, path, lambda d: d['load']['name'] == name)


def names(a):
    step('every control has a name of its own')
    roles = ('push button', 'toggle button', 'text', 'slider', 'combo box', 'check box', 'spin button', 'table cell')
    nameless = [(n.get_role_name(), n.get_name()) for n in a.all()
                if n.get_role_name() in roles and re.match('$|G[tsd]k[A-Z]|Hs[A-Z]', n.get_name() or '')]
    assert not nameless, nameless


def main(exe, work):
    folder = tempfile.mkdtemp()
    path = os.path.join(folder, 'pump.handspike.json')
    shutil.copy(work, path)
    a = start(exe, path)
    z = Zones(a)
    for part in (drags, types, crew, suit, finding, scrub, loads):
        try:
            part(a, z, path)
        except AssertionError:
            print('# the program said:', a.said())
            a.shot(os.environ.get('GUI_SHOT', 'gui-failed.png'))
            raise
    names(a)
    if len(sys.argv) > 3:
        a.shot(sys.argv[3])
    a.key('ctrl+s')
    a.until(lambda: not a.frame().get_name().startswith('•'), 10, 'the mark of unsaved changes to go')
    a.quit()
    assert not a.said(), a.said()
    shutil.rmtree(folder)
    print('all right')


if __name__ == '__main__':
    main(*sys.argv[1:3])
