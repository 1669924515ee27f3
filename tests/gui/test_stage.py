#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""At the picture itself: heights typed where they are drawn."""
import os, re, shutil, sys, tempfile
from sitting import Zones, document, rests, run, save, settled, start, step, undo


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


def main(exe, work):
    folder = tempfile.mkdtemp()
    path = os.path.join(folder, 'pump.handspike.json')
    shutil.copy(work, path)
    a = start(exe, path)
    z = Zones(a)
    run(a, (heights, heights_by_keys), z, path)
    a.key('ctrl+s')
    a.until(lambda: not a.frame().get_name().startswith('•'), 10, 'the mark of unsaved changes to go')
    a.quit()
    assert not a.said(), a.said()
    shutil.rmtree(folder)
    print('all right')


if __name__ == '__main__':
    main(*sys.argv[1:3])
