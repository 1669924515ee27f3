#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""One sitting at the window with the real pointer and real keys. Arguments: the program, a folder with examples."""
import os, re, shutil, sys, tempfile
from drive import Atspi
from sitting import Zones, click, document, rests, reveal, run, save, settled, start, step, undo

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


def sort(a, z, path):
    step('sort the findings by the other option, and back')
    for left, right in (('Sort by Today', 'Sorted by Today.*'), ('Sort by Proposed', 'Sorted by Proposed.*')):
        click(a, a.find('toggle button|push button', left, z.findings))
        a.find('toggle button|push button', right, z.findings)


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


def jump(a, z, path):
    step('an open item leads to its section: the head rests at the top of the brief')
    click(a, a.find('toggle button|push button', 'Checks', z.brief))    # below Work, so that there is room to scroll
    a.find('text', 'Strength percentile', z.brief)
    a.click(a.find('push button|toggle button', r'Sheet · \d+ open'))
    a.press(a.find('push button', 'Afterwards nobody does this: watches.*'))
    a.find('text', 'watches, after', z.brief)
    head = a.find('toggle button|push button', 'Work', z.brief)
    title = a.find('label', 'Brief', z.brief)
    rests(a, head)
    e, t = head.get_extents(1), title.get_extents(1)
    assert 0 <= e.y - (t.y + t.height) < 20, 'head at %d, title ends at %d' % (e.y, t.y + t.height)
    for name in ('Work', 'Checks'):
        click(a, a.find('toggle button|push button', name, z.brief))


def lesson(a, z, path):
    step('lesson: a typed guess stays beside the answer; R covers everything for the next class')
    a.press(a.find('push button', 'Lesson'))
    a.click(a.find('push button', 'First question'))
    guess = a.find('text', 'The class guesses')
    a.click(guess)
    a.until(lambda: a.has(guess, 'focused'), 10, 'focus in the guess')
    a.type('300 N')
    a.key('Return')
    a.find('label', r'The load weighs .*, at its centre of gravity\. Guessed: 300.N\.')
    a.click(a.find('push button', 'Next question'))
    a.find('label', 'Who carries how much of it.*')
    a.click(a.find('push button', 'Show the answer'))
    a.find('label', 'The greatest share of one bearer is [^G]*')
    a.key('r')
    a.find('label', 'What do you see.*')
    a.press(a.find('push button', 'End lesson'))
    a.find('panel', 'Assessment')


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
    run(a, (drags, types, crew, suit, finding, sort, scrub, loads, jump, lesson), z, path)
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
