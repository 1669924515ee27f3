#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""From a blank page by pointer and keys: a route in one stroke, grips and feet dragged, paper, a crash and what it left."""
import glob, json, os, re, shutil, sys, tempfile
from drive import App, sh
from sitting import Zones, alike, click, document, picture, rests, run, save, settled, step, still, undo


def start_page(exe):
    return App([exe], G_DEBUG='fatal-criticals', LC_ALL='C.UTF-8')


def points(a, z):
    """Names of the route's handles on the edited option, in order."""
    found = [n.get_name() for n in a.all(z.stage) if re.match(r'Point \d', n.get_name() or '')]
    return sorted(found)


def draw(a, z, path):
    step('R, one stroke: at most six points, marked as sketched')
    before = points(a, z)
    a.key('r')
    a.find('label', 'Drag the load to where it goes; .*', z.stage)
    first, second = (a.centre(a.find('push button', 'Point %d: .*' % i, z.stage)) for i in (1, 2))
    metre = (first[1] - second[1]) / 0.45                      # the blank way begins 0.30 and goes up to 0.75
    assert metre > 30, metre
    x, y = first
    step('load and bearers go along with the stroke; Escape takes it back')
    empty = still(a, z)
    sh('xdotool', 'mousemove', '--sync', x, y, 'mousedown', 1)
    for i in range(1, 11):
        sh('xdotool', 'mousemove', '--sync', x + round(0.06 * i * metre), y - round(0.05 * i * metre))
    a.find('label', 'Here: base of the load 0.8.* up, greatest share .*', z.stage)
    assert not alike(picture(a, z), empty), 'a pale load and its bearers'
    if 'GUI_PICTURES' in os.environ:
        still(a, z)
        a.shot(os.path.join(os.environ['GUI_PICTURES'], 'stroke-ghost.png'))
    sh('xdotool', 'key', 'Escape')
    sh('xdotool', 'mouseup', 1)
    a.until(lambda: points(a, z) == before, 15, 'nothing drawn')
    a.key('r')
    a.find('label', 'Drag the load to where it goes; .*', z.stage)
    step('the stroke itself: level parts levelled, the end on the floor, the line fades, one undo')
    for left in (2, 1, 0):
        a.stroke([(x, y), (x, y - round(0.5 * metre)), (x + round(1.2 * metre), y - round(0.52 * metre)),
                  (x + round(1.2 * metre), y + round(0.28 * metre))])
        a.until(lambda: any('sketched' in n for n in points(a, z)), 15, 'the stroke to become the route')
        fresh = picture(a, z)
        try:
            a.until(lambda: not alike(picture(a, z), fresh), 5, 'the raw stroke to fade')
            break
        except AssertionError:      # a busy machine took its first picture after the line had gone
            if not left:
                raise
            a.key('ctrl+z')
            a.until(lambda: points(a, z) == before, 15, 'the stroke to go')
            a.key('r')
            a.find('label', 'Drag the load to where it goes; .*', z.stage)
    drawn = points(a, z)
    assert 3 <= len(drawn) <= 6 and all('sketched' in n for n in drawn), drawn
    a.key('ctrl+z')
    a.until(lambda: points(a, z) == before, 15, 'one undo to take the whole stroke back')
    a.key('ctrl+shift+z')
    a.until(lambda: points(a, z) == drawn, 15, 'the stroke to come back')


def save_first(a, z, path):
    step('save by the dialog, under a typed name')
    a.key('ctrl+s')
    by_name(a, 'Save as', path)
    a.until(lambda: os.path.exists(path), 15, 'the file')
    d = document(path)
    moves = [p['move'] for p in d['route']['points']]
    assert moves[0] == 'start' and moves[1] == 'lift' and 'carry' in moves and moves[-1] == 'lower', moves
    assert all(p['sketched'] is True for p in d['route']['points'])
    assert all(round(p['z_m'], 2) == p['z_m'] for p in d['route']['points']), 'rounded to 1 cm'
    assert d['route']['points'][-1]['z_m'] == 0, 'the end is on the floor: %r' % d['route']['points'][-1]
    level = moves.index('carry')
    assert d['route']['points'][level]['z_m'] == d['route']['points'][level - 1]['z_m'], d['route']['points']


def by_name(a, title, path):
    """Types a whole path into the file dialog of a title."""
    def dialog():
        for i in range(a.node.get_child_count()):
            n = a.node.get_child_at_index(i)
            if n and n.get_name() == title:
                return n
    entry = a.find('text', 'Name:', a.until(dialog, 15, 'the dialog'))
    a.until(lambda: a.has(entry, 'focused'), 10, 'focus in the name')
    a.key('ctrl+a')
    a.type(path)
    a.until(lambda: a.text(entry) == path, 10, 'the typed name')
    a.key('Return')
    # Asked through X: GTK 4.8 answers AT-SPI with a critical warning while a dialog is being taken down.
    a.until(lambda: sh('xdotool', 'getactivewindow').strip() == a.xid, 15, 'the window to have the keys again')


def measure(a, z, path):
    step('a typed height is no longer sketched, and the mark goes with one undo')
    click(a, a.find('toggle button|push button', 'Route', z.brief))
    entry = a.find('text', 'Point 2, base of the load, up, m', z.brief)
    click(a, entry)
    a.until(lambda: a.has(entry, 'focused'), 10, 'focus in the field')
    a.key('ctrl+a')
    a.type('0.82')
    a.key('Return')
    assert a.has(entry, 'focused'), 'the field stays while its mark goes'
    d = save(a, path, lambda d: d['route']['points'][1]['z_m'] == 0.82)
    assert 'sketched' not in d['route']['points'][1] and d['route']['points'][2]['sketched']
    undo(a, path, lambda d: d['route']['points'][1].get('sketched') is True)
    click(a, a.find('push button', 'Point 3: its height was measured', z.brief))
    save(a, path, lambda d: 'sketched' not in d['route']['points'][2])
    click(a, a.find('toggle button|push button', 'Route', z.brief))


def grip(a, z, path):
    step('drag a grip, undo')
    grips = document(path)['load']['grips']                    # seen from the side, the right one lies over the left
    a.drag(a.find('push button', 'Grip right .*', z.stage), 12, -9)
    save(a, path, lambda d: d['load']['grips'][1]['at_m'] != grips[1]['at_m'] and d['load']['grips'][0] == grips[0])
    undo(a, path, lambda d: d['load']['grips'] == grips)


def feet(a, z, path):
    step("drag the feet: today's way asks once; whole centimetres; Escape takes back; arrows")
    node = a.find('push button', 'Feet of .*', z.stage)
    a.drag(node, -30, 0)
    a.click(a.find('push button', "Change today's way"))
    reach_m = save(a, path, lambda d: 'reach_m' in d['options'][0])['options'][0]['reach_m']
    assert abs(reach_m * 100 - round(reach_m * 100)) < 1e-9, reach_m
    node = a.find('push button', 'Feet of .*', z.stage)
    before = settled(a, node)
    x, y = a.centre(node)
    sh('xdotool', 'mousemove', '--sync', x, y, 'mousedown', 1)
    for i in range(1, 9):
        sh('xdotool', 'mousemove', '--sync', x - 4 * i, y)
    a.until(lambda: node.get_name() != before, 10, 'the feet to follow')
    sh('xdotool', 'key', 'Escape')                  # App.key clears what is held down, the mouse's button too
    sh('xdotool', 'mouseup', 1)
    a.until(lambda: node.get_name() == before, 10, 'Escape to take the drag back')
    a.key('Left')
    save(a, path, lambda d: abs(d['options'][0]['reach_m'] - reach_m - 0.01) < 2e-3)
    a.key('shift+Right')
    save(a, path, lambda d: abs(d['options'][0]['reach_m'] - reach_m - 0.009) < 2e-3)


def paper(a, z, path):
    step('the sheet as a file, under a typed name')
    out = path.replace('.handspike.json', '.pdf')
    a.key('ctrl+e')
    by_name(a, 'Export the sheet', out)
    a.until(lambda: os.path.exists(out) and os.path.getsize(out) > 10000, 30, 'the file')
    text = a.until(lambda: sh('pdftotext', '-layout', out, '-'), 15, 'the text of the print')
    assert 'sketched' in text, 'the mark is printed'


def focus(a, node):
    """Clicks until the thing has the focus: choosing a point moves the picture under the pointer."""
    for _ in range(5):
        rests(a, node)
        a.click(node)
        try:
            return a.until(lambda: a.has(node, 'focused'), 2)
        except AssertionError:
            pass
    raise AssertionError('no focus: ' + node.get_name())


def crash(exe, a, z, path):
    step('a crash: the last change is there again')
    p = a.find('push button', 'Point 2: .*', z.stage)
    before = settled(a, p)
    focus(a, p)
    a.key('Up')
    a.until(lambda: p.get_name() != before, 10, 'the nudge')
    changed = settled(a, p)
    z_m = round(float(re.search(r'along, ([\d.]+)', changed).group(1)), 3)
    kept = os.path.join(os.environ['XDG_STATE_HOME'], 'handspike', 'recovery', '*.json')

    def is_kept():
        return any(abs(json.load(open(f))['route']['points'][1]['z_m'] - z_m) < 6e-3 for f in glob.glob(kept))
    a.until(is_kept, 10, 'the change to be kept')
    a.kill()
    b = start_page(exe)
    answer = b.find('push button', 'Open it')
    rests(b, answer)
    b.click(answer)
    again = b.find('push button', 'Point 2: .*')
    assert again.get_name() == changed, (again.get_name(), changed)
    return b


def main(exe):
    folder = tempfile.mkdtemp()
    path = os.path.join(folder, 'drawn.handspike.json')
    a = start_page(exe)
    step('blank, from the start page')
    a.click(a.find('push button', 'Blank'))
    a.find('push button', 'Point 1: .*')
    z = Zones(a)
    steps = [draw, save_first, measure, grip, feet]
    if shutil.which('pdftotext'):
        steps.append(paper)
    run(a, steps, z, path)
    try:
        b = crash(exe, a, z, path)
    except AssertionError:
        a.shot(os.environ.get('GUI_SHOT', 'gui-failed.png'))
        raise
    b.key('ctrl+s')
    b.until(lambda: not b.frame().get_name().startswith('•'), 10, 'the mark of unsaved changes to go')
    b.quit()
    assert not b.said(), b.said()
    shutil.rmtree(folder)
    print('all right')


if __name__ == '__main__':
    main(sys.argv[1])
