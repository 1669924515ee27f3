#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Limits at the window: a set chosen from the list by keys, what the findings say then; all team rules unfolded."""
import os, re, shutil, sys, tempfile
from sitting import Zones, click, document, run, start, step


ITEMS = ('list item', 'table cell', 'table row')
FORMER = 'Guideline figures, Great Britain, Today: beyond'
AT_ONCE = 6   # rows that an open list surely shows


def chosen(a, z):
    """The picker, looked for anew: the section is built again by each choice. By its words it is shown which set it is."""
    return a.find('combo box', 'Set of limits', z.brief)


def choose(a, z, title):
    """Opens the list by a click and goes to the title by keys; what is farther than the list shows at once takes a second look."""
    for _ in range(6):
        combo = chosen(a, z)
        click(a, combo)
        a.find('label', re.escape(title), combo)                   # the list is open
        a.until(lambda: any(a.has(n, 'focused') for n in a.all(combo) if n.get_role_name() in ITEMS), 10, 'focus in the list')
        words = [n.get_name() for n in a.all(combo) if n.get_role_name() == 'label' and n.get_name() != '(None)']
        away = words[1:].index(title) - words[1:].index(words[0])
        a.key(*['Down' if away > 0 else 'Up'] * min(abs(away), AT_ONCE), 'Return')
        if abs(away) <= AT_ONCE:
            return
        a.until(lambda: shown(a, z) not in ('', words[0]), 10, 'another set')


def shown(a, z):
    return next((n.get_name() for n in a.all(chosen(a, z)) if n.get_role_name() == 'label' and n.get_name() != '(None)'), '')


def compression(a, z, said):
    return a.find('push button', 'Low back, compression, Today: ' + said, z.findings)


def published(a, z, path):
    step('published figures alone: the low back against 3.4 kN')
    click(a, a.find('toggle button|push button', 'Checks', z.brief))
    a.find('label', 'No set is chosen: .*', z.brief)
    compression(a, z, r'near, 3\.\d of 3\.4\skN')
    a.find('push button', r'Guideline figures, Great Britain, Today: beyond, .*', z.findings)


def country(a, z, path):
    step('a country chosen: the set is named, its figures stand in place of the others')
    choose(a, z, "Austria, accident insurer's leaflet")
    a.find('label', "Austria, accident insurer's leaflet, edition undated, set code [0-9a-f]{12}", z.brief)
    a.until(lambda: not any((n.get_name() or '').startswith(FORMER) for n in a.all(z.findings)), 10, 'the finding of before to go: of a team it is not judged')
    a.find('label', r'.*men 19-45, repeated: [\d.]+\skg, read in a publication.*', z.brief)


def rules(a, z, path):
    step('all team rules unfold under the choice of the rule')
    row = a.find('push button|toggle button', 'All team rules', z.brief)
    assert not a.has(row, 'expanded')
    click(a, row)
    a.until(lambda: a.has(row, 'expanded'), 10, 'the row to be unfolded')
    a.find('label', 'so it is', z.brief)
    words = [n.get_name() or '' for n in a.all(z.brief) if n.get_role_name() == 'label']
    said = words[words.index('All team rules'):]
    assert 'Today' in said and 'British guidance' in said and any('of 127' in w for w in said), said
    if 'GUI_PICTURES' in os.environ:
        a.shot(os.path.join(os.environ['GUI_PICTURES'], 'team-rules.png'))


def main(exe, work):
    folder = tempfile.mkdtemp()
    path = os.path.join(folder, 'pump.handspike.json')
    shutil.copy(work, path)
    before = document(path)
    a = start(exe, path)
    z = Zones(a)
    run(a, (published, country, rules), z, path)
    assert not a.frame().get_name().startswith('•'), 'a set is no part of the document'
    a.quit()
    assert document(path) == before
    assert not a.said(), a.said()
    shutil.rmtree(folder)
    step('all right')


if __name__ == '__main__':
    main(*sys.argv[1:3])
