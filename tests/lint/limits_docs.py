#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Question:  do the pages of docs/limits say the figures that the program has?
Answer:    every figure of data/limits/default.json is looked for in the sentence or table row that names it, the table of sets is made
           anew from data/limits/national, and each figure, altered, must be noticed.
Not here:  whether the figures are right (tests/cases). Exit status 1 on a fault."""
import glob
import json
import os
import re
import sys

TOP = os.path.join(os.path.dirname(os.path.abspath(__file__)), '..', '..')
PAGES = os.path.join(TOP, 'docs', 'limits')
KCAL_MIN = 4184 / 60  # W

# page, check, sentences: {figure} or {figure|how it is written}; {check:figure} of another check; {?figure} how it is known.
SENTENCES = [
    ('niosh-1994', 'lift.niosh-1994', [
        'RWL = {load constant} kg · HM',
        'moderate up to 2 h with {recovery over work of the moderate class} of it',
        'The ratio {recovery over work of the short class} is that of the 2021 revision']),
    ('iso-11228-1', 'lift.iso-11228-1', [
        'Reference mass {reference mass, men 20 to 45 years} kg men, {reference mass, women 20 to 45 years} kg women from 20 to 45 years, '
        '{reference mass, men younger or older} and {reference mass, women younger or older} kg else',
        'multipliers · {factor for one hand} for one hand · {factor for two persons} for two persons',
        'loads below {lightest object in scope} kg',
        'faster or slower than {slowest walking in scope} to {fastest walking in scope} m/s',
        *(f'| {way} m | {{day.mass:carried up to {way} m, a minute}} | {{day.mass:carried up to {way} m, an hour}} | '
          f'{{day.mass:carried up to {way} m, 8 hours}} |' for way in (1, 2, 4, 10, 20))]),
    ('en-1005-2', 'lift.en-1005-2', [
        'RML = {mass constant, adults at work} kg · HM',
        '· {factor for one hand} for one hand · {factor for two persons} for two persons',
        'The factor {factor for another heavy task} for other heavy work',
        'a carry of {carry in scope, under} m or more',
        'Up to {risk index, tolerable up to} tolerable, to {risk index, redesign from} significant, from {risk index, redesign from} redesign']),
    ('mil-std-1472', 'lift.mil-std-1472', [
        *(f'| {row} | {{{row}, men}} kg | {{{row}, women or both}} kg | {{?{row}, men}}'
          for row in ('lift to 0.91 m', 'lift to 1.52 m', 'carry to 10 m')),
        'less {factor, one lift a minute|loss} per cent a lift a minute, {factor, one carry a minute|loss} a carry a minute',
        'beyond 0.61, 0.91, 1.22 m: {factor, load deeper than 0.61 m}, {factor, load deeper than 0.91 m}, '
        '{factor, load deeper than 1.22 m}']),
    ('gb-guideline', 'lift.gb-guideline', [
        *(f'| {shown} | {{{zone}, men, close}} | {{{zone}, men, extended}} | {{{zone}, women, close}} | {{{zone}, women, extended}} |'
          for shown, zone in (('above shoulder', 'above the shoulder'), ('elbow to shoulder',) * 2, ('knuckle to elbow',) * 2,
                              ('mid lower leg to knuckle',) * 2, ('below', 'below mid lower leg'))),
        'Twist: {factor, turned beyond 45 degrees} beyond 45, {factor, turned by 90 degrees or more} from 90 degrees',
        '{factor, 1 to 2 a minute} to 2, {factor, 5 to 8 a minute} to 8 a minute, {factor, more than 12 a minute} above',
        'carries beyond {carry without a rest} m']),
    ('team', 'share', [
        '| `gb` | {gb, two} | {gb, three} | - |',
        '| `mil-std-1472` | {mil-std-1472, two} | {mil-std-1472, three} | {mil-std-1472, four} |',
        '| `en-1005-2` | {en-1005-2, two} | - | - |']),
    ('spine', 'spine.compression', [
        '| compression, design limit | {design limit} N | NIOSH 1981, kept in 1991: {?design limit}',
        '| compression that most do not tolerate | {not tolerated by most} N |',
        '| shear, up to {spine.shear:loadings a day up to which it is occasional} loadings a day / more | {spine.shear:occasional} / '
        '{spine.shear:frequent} N |',
        '20: {set by age and sex, women, 20 years|kilo} women, {set by age and sex, men, 20 years|kilo} men; '
        '30: {set by age and sex, women, 30 years|kilo}, {set by age and sex, men, 30 years|kilo}; '
        '40: {set by age and sex, women, 40 years|kilo}, {set by age and sex, men, 40 years|kilo}; '
        '50: {set by age and sex, women, 50 years|kilo}, {set by age and sex, men, 50 years|kilo}; '
        'from 60: {set by age and sex, women, 60 years|kilo}, {set by age and sex, men, 60 years|kilo} kN | '
        '{?set by age and sex, men, 60 years}',
        'above {day.spine:force that counts, men|kilo} kN for men, {day.spine:force that counts, women|kilo} kN for women counts',
        'for a shift ({day.spine:dose of a shift, men|kilo} and {day.spine:dose of a shift, women|kilo} kNh)']),
    ('energy', 'day.energy', [
        '{men, up to 1 h|kcal} kcal/min men and {women, up to 1 h|kcal} women up to an hour, {men, up to 8 h|kcal} and '
        '{women, up to 8 h|kcal} for 8 h']),
    ('site', 'spine.compression', [
        '`N` | {design limit} N; {spine.shear:occasional} or {spine.shear:frequent} N |']),
]
WRITTEN = {'': lambda x: x, 'kilo': lambda x: x / 1000, 'kcal': lambda x: x / KCAL_MIN, 'loss': lambda x: 100 * (1 - x)}
NUMBER = r'(\d+(?:\.\d+)?(?:/\d+)?)'


def page_text(name):
    return re.sub(r'\s+', ' ', open(os.path.join(PAGES, name + '.md'), encoding='utf-8').read())


def is_said(text, value):
    """To three digits and a half: 0.917 for 11/12."""
    if '/' in text:
        top, bottom = text.split('/')
        return abs(float(top) / float(bottom) - value) < 1e-9
    return abs(float(text) - value) <= 5e-4 * abs(value)


def key_of(check, name):
    other, colon, rest = name.partition(':')
    return (other, rest) if colon and '.' in other else (check, name)


def compare(figures, pages):
    """Faults, and the figures that a sentence names."""
    faults, named = [], set()
    for page, check, sentences in SENTENCES:
        for sentence in sentences:
            slots = re.findall(r'\{(\??)([^}|]+)\|?(\w*)\}', sentence)
            pieces = re.split(r'\{[^}]+\}', sentence)
            pattern = re.escape(pieces[0])
            for (asks_known, _name, _how), piece in zip(slots, pieces[1:]):
                pattern += (r'(\w+)' if asks_known else NUMBER) + re.escape(piece)
            found = re.search(pattern, pages[page])
            if not found:
                faults.append(f'docs/limits/{page}.md does not say: {sentence[:90]}')
                continue
            for (asks_known, name, how), text in zip(slots, found.groups()):
                key = key_of(check, name)
                if key not in figures:
                    faults.append(f'{page}: no such figure: {key}')
                elif asks_known and text != figures[key]['known']:
                    faults.append(f'docs/limits/{page}.md: {name} is "{text}", the data say {figures[key]["known"]}')
                elif not asks_known:
                    named.add(key)
                    if not is_said(text, WRITTEN[how](figures[key]['value'])):
                        faults.append(f'docs/limits/{page}.md: {name} is {text}, the data say {figures[key]["value"]:g}')
    return faults, named


def rows_of_sets():
    """The table of national.md, from the files."""
    for path in sorted(glob.glob(os.path.join(TOP, 'data', 'limits', 'national', '*.json'))):
        with open(path, encoding='utf-8') as file:
            one = json.load(file)
        shown = []
        for check, entries in one['limits'].items():
            for entry in entries:
                unit = '' if check.startswith('lift') and entry['unit'] == 'kg' else ' ' + entry['unit']
                text = f"{entry['figure']:g}{unit}" + ('' if check.startswith('lift') else f' ({check})')
                if text not in shown:
                    shown.append(text)
        known = '/'.join(sorted({e['known'] for entries in one['limits'].values() for e in entries}))
        yield f"| `{one['id']}` | {one['edition']} | {', '.join(shown)} | {one['title']} | {known} |"


def main():
    with open(os.path.join(TOP, 'data', 'limits', 'default.json'), encoding='utf-8') as file:
        listed = json.load(file)['figures']
    figures = {(f['check'], f['figure']): f for f in listed if not f['figure'].startswith('frequency multiplier')}
    pages = {page: page_text(page) for page, _check, _sentences in SENTENCES}
    faults, named = compare(figures, pages)
    for key in sorted(set(figures) - named):
        faults.append(f'no page says {key[0]}: {key[1]}')
    for key in sorted(named):
        altered = {**figures, key: {**figures[key], 'value': figures[key]['value'] * 1.13}}
        if not compare(altered, pages)[0]:
            faults.append(f'this test does not notice when {key[0]}: {key[1]} is altered')
    national = open(os.path.join(PAGES, 'national.md'), encoding='utf-8').read().splitlines()
    rows = list(rows_of_sets())
    faults += [f'docs/limits/national.md lacks or alters: {row}' for row in rows if row not in national]
    n_shown = sum(line.startswith('| `') for line in national)
    if n_shown != len(rows):
        faults.append(f'docs/limits/national.md lists {n_shown} sets, {len(rows)} ship')
    for fault in faults:
        print(fault)
    print(f'limits: {len(named)} figures on {len(pages)} pages, {len(rows)} sets, {len(faults)} faults')
    return 1 if faults else 0


if __name__ == '__main__':
    sys.exit(main())
