#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""At the picture itself: heights typed where they are drawn."""
import os, re, shutil, sys, tempfile
from drive import sh
from sitting import Zones, alike, click, document, picture, rests, reveal, run, save, settled, start, step, still, undo


def choose_point(a, z, number):
    """Chosen by keys: a click on it may be a drag of a pixel."""
    node = a.find('push button', 'Point %d: .*' % number, z.stage)
    rests(a, node)
    a.click(node)
    a.find('push button', 'Height of the base at point %d: .*' % number, z.stage)
    return node


def metres(name):
    return float(re.search(r': ([\d.,]+)', name).group(1).replace(',', '.'))


def typed(a, z, figure, text, *keys):
    """Opens a drawn height by a click and types over it."""
    name = figure.get_name()
    rests(a, figure)
    a.click(figure)
    entry = a.find('text', re.escape(name), z.stage)
    a.until(lambda: a.has(entry, 'focused'), 10, 'focus in the figure')
    a.type(text)
    return entry


def heights(a, z, path):
    step('a drawn height is clicked and typed; the point and the other height follow; Escape, undo')
    choose_point(a, z, 2)
    base = a.find('push button', 'Height of the base at point 2: .*', z.stage)
    hands = a.find('push button', 'Height of the hands at point 2: .*', z.stage)
    before, held = metres(base.get_name()), metres(hands.get_name())
    z_m = document(path)['route']['points'][1]['z_m']
    typed(a, z, base, '0.83')
    a.until(lambda: metres(hands.get_name()) == round(held - before + 0.83, 2), 10, 'the other to follow while typing')
    a.key('Return')
    a.until(lambda: a.has(base, 'focused'), 10, 'the figure to have the focus again')
    save(a, path, lambda d: d['route']['points'][1]['z_m'] == round(z_m + 0.83 - before, 3))
    typed(a, z, hands, '112,5 cm')
    a.key('Return')
    save(a, path, lambda d: abs(d['route']['points'][1]['z_m'] - (z_m + 1.125 - held)) < 1e-3)
    now = settled(a, base)
    typed(a, z, base, '0.4')
    a.until(lambda: metres(base.get_name()) == 0.4, 10, 'the figure to follow')
    a.key('Escape')
    a.until(lambda: base.get_name() == now, 10, 'Escape to take it back')
    undo(a, path, lambda d: d['route']['points'][1]['z_m'] == round(z_m + 0.83 - before, 3))
    undo(a, path, lambda d: d['route']['points'][1]['z_m'] == z_m)


def heights_by_keys(a, z, path):
    step('by keys alone: Return on the point chooses, Return again types; what is no height is refused in words')
    z_m = document(path)['route']['points'][1]['z_m']
    a.key('Escape')
    node = choose_point(a, z, 2)
    a.until(lambda: a.has(node, 'focused'), 10, 'focus on the point')
    base = a.find('push button', 'Height of the base at point 2: .*', z.stage)
    a.key('Return')
    entry = a.find('text', 'Height of the base at point 2: .*', z.stage)
    a.until(lambda: a.has(entry, 'focused'), 10, 'focus in the figure')
    a.type('high')
    a.key('Return')
    a.find('label', '.*number.*')
    a.key('ctrl+a')
    a.type('90 cm')
    a.key('Return')
    a.until(lambda: a.has(base, 'focused'), 10, 'the figure to have the focus again')
    a.key('Return')
    entry = a.find('text', 'Height of the base at point 2: 0.9.*', z.stage)
    a.until(lambda: a.has(entry, 'focused'), 10, 'Return on the figure to open it')
    a.key('Escape')
    save(a, path, lambda d: d['route']['points'][1]['z_m'] == 0.9)
    undo(a, path, lambda d: d['route']['points'][1]['z_m'] == z_m)


def crew(a, z, path):
    step('+ under the pointer or with the focus shows who would join; a press makes it so; - remembers')
    a.click(a.find('push button', 'Edit Today', z.stage))
    a.find('label', 'Option: Today', z.brief)
    click(a, a.find('push button', 'Crew of 2', z.brief))             # it is two: nothing changes
    without = still(a, z)
    more = a.find('push button', 'One bearer more', z.brief)
    words = a.find('label', r'\+ shows who would join.*', z.brief)
    x, y = a.centre(more)
    sh('xdotool', 'mousemove', '--sync', x, y)
    a.until(lambda: re.match('The next bearer takes grip (left|right); the greatest share is then .*', words.get_name()), 10, 'it in words')
    a.until(lambda: not alike(picture(a, z), without), 10, 'somebody pale on the stage')
    if 'GUI_PICTURES' in os.environ:
        still(a, z)
        a.shot(os.path.join(os.environ['GUI_PICTURES'], 'crew-ghost.png'))
    sh('xdotool', 'mousemove', '--sync', x, y + 200)
    a.until(lambda: alike(picture(a, z), without), 10, 'the stage to be as before')
    assert len(document(path)['options'][0]['bearers']) == 2
    click(a, more)
    a.click(a.find('push button', "Change today's way"))
    third = save(a, path, lambda d: len(d['options'][0]['bearers']) == 3)['options'][0]['bearers'][2]
    click(a, a.find('push button', 'One bearer fewer', z.brief))
    save(a, path, lambda d: len(d['options'][0]['bearers']) == 2)
    click(a, a.find('push button', 'One bearer more', z.brief))
    save(a, path, lambda d: d['options'][0]['bearers'][2:] == [third])


def no_grip(a, z, path):
    step('with no free grip + offers one, where it takes most off the others')
    click(a, a.find('push button', 'Crew of 4', z.brief))
    four = save(a, path, lambda d: len(d['options'][0]['bearers']) == 4)
    assert len(four['load']['grips']) == 4
    click(a, a.find('push button', 'One bearer more', z.brief))
    a.click(a.find('push button', 'Add a grip here'))
    five = save(a, path, lambda d: len(d['options'][0]['bearers']) == 5)
    assert five['options'][0]['bearers'][4]['grips'] == [five['load']['grips'][4]['id']]
    undo(a, path, lambda d: len(d['options'][0]['bearers']) == 4 and len(d['load']['grips']) == 4)
    click(a, a.find('push button', 'Crew of 2', z.brief))
    save(a, path, lambda d: len(d['options'][0]['bearers']) == 2)


def heavy(a, z, path):
    step('weighed: a click on the heavy side must agree with the readings; where it does not, they may be swapped')
    click(a, a.find('push button', 'Weigh', z.brief))
    front = a.find('text', 'Weighing 1, scale 2, reading, kg', z.brief)
    click(a, front)
    a.until(lambda: a.has(front, 'focused'), 10, 'focus in the reading')
    a.key('ctrl+a')
    a.type('28')
    a.key('Return')
    weighed = save(a, path, lambda d: 'weighings' in d['load'] and d['load']['weighings'][0]['readings'][1]['reading_kg'] == 28)['load']['weighings'][0]['readings']
    a.find('label', 'Weighed: .*; centre of gravity .*', z.brief)
    drawing = a.find('panel|filler|image|unknown|drawing area', 'The load from the side: click on its heavy side', z.brief)
    rests(a, drawing)
    reveal(a, drawing)
    rests(a, drawing)
    x, y = a.centre(drawing)
    sh('xdotool', 'mousemove', '--sync', x + 60, y, 'click', 1)
    a.find('label', 'The readings agree: .*', z.brief)
    sh('xdotool', 'mousemove', '--sync', x - 60, y, 'click', 1)
    a.find('label', 'The readings disagree: by them the heavy side is front, .* swapped.*', z.brief)
    if 'GUI_PICTURES' in os.environ:
        a.shot(os.path.join(os.environ['GUI_PICTURES'], 'heavy.png'))
    click(a, a.find('push button', 'Swap the two readings', z.brief))
    save(a, path, lambda d: [r['reading_kg'] for r in d['load']['weighings'][0]['readings']] == [r['reading_kg'] for r in reversed(weighed)])
    a.find('label', 'The readings agree: .*', z.brief)
    click(a, a.find('toggle button|push button', 'The heavy side is: front', z.brief))
    a.find('label', 'The readings disagree: by them the heavy side is rear, .*', z.brief)
    undo(a, path, lambda d: d['load']['weighings'][0]['readings'] == weighed)
    click(a, a.find('push button', 'Take the readings away', z.brief))
    save(a, path, lambda d: 'weighings' not in d['load'])


def prints(a, z, path):
    step("the system's print dialog, into a file beside the document that is called like it")
    def dialog():
        return next((n for n in (a.node.get_child_at_index(i) for i in range(a.node.get_child_count())) if n and n.get_name() == 'Print'), None)
    for wait in (15, 25, 40):   # the system looks for printers first; something that closes may swallow the key
        a.key('ctrl+p')
        try:
            box = a.until(dialog, wait, 'the dialog')
            break
        except AssertionError:
            print('# the key was swallowed, or the dialog takes more than %d s' % wait)
    else:
        raise AssertionError('no print dialog')
    row = a.find('label', 'Print to File', box)
    rests(a, row)
    g = dict(re.findall(r'(Absolute upper-left [XY]|Width|Height): *(-?\d+)', sh('xwininfo', '-name', 'Print')))
    f, e = box.get_extents(1), row.get_extents(1)
    sh('xdotool', 'mousemove', '--sync', int(g['Absolute upper-left X']) + (int(g['Width']) - f.width) // 2 + e.x + e.width // 2,
       int(g['Absolute upper-left Y']) + (int(g['Height']) - f.height) // 2 + e.y + e.height // 2, 'click', 1)
    button = a.find('push button', '_?Print( Print)?', box)
    a.until(lambda: a.has(button, 'sensitive'), 15, 'a printer to be chosen')
    a.press(button)
    out = os.path.join(os.path.dirname(path), 'pump.pdf')
    a.until(lambda: os.path.exists(out) and os.path.getsize(out) > 10000, 60, 'the print')
    if shutil.which('pdftotext'):
        text = a.until(lambda: sh('pdftotext', '-layout', out, '-'), 15, 'its text')
        assert 'Pump motor onto its base frame' in text


def main(exe, work):
    folder = tempfile.mkdtemp()
    path = os.path.join(folder, 'pump.handspike.json')
    shutil.copy(work, path)
    a = start(exe, path)
    z = Zones(a)
    run(a, (heights, heights_by_keys, crew, no_grip, heavy, prints), z, path)
    a.key('ctrl+s')
    a.until(lambda: not a.frame().get_name().startswith('•'), 10, 'the mark of unsaved changes to go')
    a.quit()
    said = [line for line in a.said() if 'avahi' not in line]   # GTK's own, of a machine without printers
    assert not said, said
    shutil.rmtree(folder)
    print('all right')


if __name__ == '__main__':
    main(*sys.argv[1:3])
