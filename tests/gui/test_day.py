#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""A reviewer's day: a lift entered wholly by hand from a blank page, section by section, until its sheet is on paper."""
import json, os, re, shutil, sys, tempfile
from drive import App, sh
from sitting import Zones, click, document, rests, run, save, step, undo
from test_route import by_name, points


def fill(a, z, name, text):
    """Types over a field of the brief, as the person does: click, all, figure, Return."""
    entry = a.find('text', name, z.brief)
    click(a, entry)
    a.until(lambda: a.has(entry, 'focused'), 10, 'focus in ' + name)
    a.key('ctrl+a')
    a.type(text)
    a.key('Return')


def section(a, z, title, probe):
    """Opens a section of the brief unless it is open: probe is the name of something in it."""
    if not any(re.fullmatch(probe, n.get_name() or '') for n in a.all(z.brief)):
        click(a, a.find('toggle button|push button', title, z.brief))
    return a.find('text|push button|toggle button|combo box|check box', probe, z.brief)


def about(a, z, path):
    step('what and who')
    section(a, z, 'About', 'Title')
    fill(a, z, 'Title', 'Valve body onto its flange')
    fill(a, z, 'Task, in a sentence', 'Lift a valve body from a trolley and set it on the flange.')
    assessor = a.find('text', 'Assessor', z.brief)
    a.until(lambda: a.has(assessor, 'focused'), 10, 'Return to go on from the one sentence')
    fill(a, z, 'Assessor', 'R. Reviewer')
    a.key('ctrl+s')
    by_name(a, 'Save as', path)
    a.until(lambda: os.path.exists(path), 15, 'the file')
    assert document(path)['about']['task'] == 'Lift a valve body from a trolley and set it on the flange.'


def load(a, z, path):
    step('the load by parts: a body, a hand wheel; its grips')
    section(a, z, 'Load', 'Part box, mass, kg')
    fill(a, z, 'Part box, mass, kg', '31')
    fill(a, z, 'Part box, long, m', '0.5')
    fill(a, z, 'Part box, high, m', '36 cm')
    fill(a, z, 'Part box, centre, up, m', '0,18')
    click(a, a.find('push button', 'Add a part', z.brief))
    fill(a, z, 'Part part, mass, kg', '6.5')
    combo = a.find('combo box', 'Part part, shape', z.brief)
    click(a, combo)
    a.find('label', 'tube', combo)
    a.key('Down', 'Return')
    a.find('text', 'Part part, radius, m', z.brief)
    fill(a, z, 'Part part, centre, ahead, m', '0.2')
    fill(a, z, 'Part part, centre, up, m', '0.42')
    click(a, a.find('push button', 'Add a grip', z.brief))
    fill(a, z, 'Grip grip, ahead, m', '0.28')
    fill(a, z, 'Grip grip, up, m', '0.2')
    d = save(a, path, lambda d: len(d['load']['grips']) == 3 and d['load']['grips'][2]['at_m'] == [0.28, 0, 0.2])
    assert [(p['shape'], p['mass_kg']) for p in d['load']['parts']] == [('box', 31), ('cylinder', 6.5)], d['load']['parts']
    assert d['load']['parts'][0]['centre_m'] == [0, 0, 0.18] and d['load']['parts'][0]['size_m'] == [0.5, 0.3, 0.36]


def liquid(a, z, path):
    step('a liquid in a part and out again, one undo each')
    before = document(path)['load']['parts'][0]
    click(a, a.find('push button', 'Part box, add a liquid', z.brief))
    save(a, path, lambda d: d['load']['parts'][0].get('liquid') == {'density_kg_m3': 1000, 'depth_m': 0.18})
    fill(a, z, 'Part box, liquid, depth, m', '0.1')
    save(a, path, lambda d: d['load']['parts'][0]['liquid']['depth_m'] == 0.1)
    click(a, a.find('push button', 'Part box, pour the liquid away', z.brief))
    save(a, path, lambda d: 'liquid' not in d['load']['parts'][0])
    undo(a, path, lambda d: d['load']['parts'][0].get('liquid', {}).get('depth_m') == 0.1)
    undo(a, path, lambda d: d['load']['parts'][0].get('liquid', {}).get('depth_m') == 0.18)
    undo(a, path, lambda d: d['load']['parts'][0] == before)


def site(a, z, path):
    step('the floor')
    section(a, z, 'Site', 'Friction.*')
    fill(a, z, 'Friction.*', '0.55')
    save(a, path, lambda d: d['site'].get('friction') == 0.55)
    click(a, a.find('toggle button|push button', 'Site', z.brief))


def route(a, z, path):
    step('the route in one stroke, its height typed where it is drawn')
    a.key('Escape')
    a.key('r')
    a.find('label', 'Drag the load to where it goes; .*', z.stage)
    first, second = (a.centre(a.find('push button', 'Point %d: .*' % i, z.stage)) for i in (1, 2))
    metre = (first[1] - second[1]) / 0.45
    x, y = first
    a.stroke([(x, y), (x, y - round(0.6 * metre)), (x + round(1.5 * metre), y - round(0.61 * metre)),
              (x + round(1.5 * metre), y - round(0.3 * metre))])
    a.until(lambda: all('sketched' in n for n in points(a, z)), 15, 'the stroke to become the route')
    n = len(points(a, z))
    for number, up in ((1, '0.35'), (n, '62 cm')):
        point = a.find('push button', 'Point %d: .*' % number, z.stage)
        rests(a, point)
        a.click(point)
        base = a.find('push button', 'Height of the base at point %d: .*' % number, z.stage)
        a.until(lambda: a.has(point, 'focused'), 10, 'the point to have the focus')
        a.key('Return')
        entry = a.find('text', 'Height of the base at point %d: .*' % number, z.stage)
        a.until(lambda: a.has(entry, 'focused'), 10, 'focus in the figure')
        a.type(up)
        a.key('Return')
    save(a, path, lambda d: d['route']['points'][0]['z_m'] == 0.35 and d['route']['points'][-1]['z_m'] == 0.62)


def crew(a, z, path):
    step('today: two; tomorrow: one in a suit')
    section(a, z, 'Bearers', 'One bearer more')
    click(a, a.find('push button', 'One bearer more', z.brief))
    a.click(a.find('push button', "Change today's way"))
    save(a, path, lambda d: [b['grips'] for b in d['options'][0]['bearers']] == [['left', 'right'], ['grip']])
    click(a, a.find('toggle button|push button|combo box', 'Add an option', z.stage))
    a.press(a.find('push button', 'One person in a suit'))   # a list of its own window: no place to point at
    d = save(a, path, lambda d: len(d['options']) == 2 and len(d['suits']) == 1)
    assert d['options'][1]['bearers'][0]['suit'] == d['suits'][0]['id']


def work(a, z, path):
    step('how often; what the second person did besides')
    section(a, z, 'Work', 'Add a role')
    fill(a, z, 'Cycles an hour.*', '8')
    save(a, path, lambda d: d['work']['cycles_per_hour'] == 8)
    click(a, a.find('push button', 'Add a role', z.brief))
    save(a, path, lambda d: len(d['roles']) == 1)
    fill(a, z, 'Role 1, after', 'A')
    fill(a, z, 'Role 1', 'Steers')
    fill(a, z, 'Steers, today', 'B')
    save(a, path, lambda d: d['roles'][0] == {'role': 'Steers', 'before': 'B', 'after': 'A'})


def paper(a, z, path):
    step('what is open, and the sheet')
    out = path.replace('.handspike.json', '.pdf')
    a.find('push button|toggle button', r'Sheet · \d+ open')
    a.key('ctrl+e')
    by_name(a, 'Export the sheet', out)
    a.until(lambda: os.path.exists(out) and os.path.getsize(out) > 10000, 30, 'the file')
    if shutil.which('pdftotext'):
        text = sh('pdftotext', '-layout', out, '-')
        for wanted in ('Valve body onto its flange', 'R. Reviewer', '37.5', 'DRAFT'):
            assert wanted in text, wanted


def main(exe):
    folder = tempfile.mkdtemp()
    path = os.path.join(folder, 'valve.handspike.json')
    a = App([exe], G_DEBUG='fatal-criticals', LC_ALL='C.UTF-8')
    a.click(a.find('push button', 'Blank'))
    a.find('push button', 'Point 1: .*')
    z = Zones(a)
    run(a, (about, load, liquid, site, route, crew, work, paper), z, path)
    if 'GUI_PICTURES' in os.environ:
        a.shot(os.path.join(os.environ['GUI_PICTURES'], 'day.png'))
    a.key('ctrl+s')
    a.until(lambda: not a.frame().get_name().startswith('•'), 10, 'the mark of unsaved changes to go')
    a.quit()
    assert not a.said(), a.said()
    shutil.rmtree(folder)
    print('all right')


if __name__ == '__main__':
    main(sys.argv[1])
