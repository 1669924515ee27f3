#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""The lists of core agree with what uses them: every reason has one sentence, every equation one title, every equation and
source is used, every id is there once. Prints each fault; exit status 1 when there is one."""
import collections
import glob
import os
import re
import sys

TOP = os.path.join(os.path.dirname(os.path.abspath(__file__)), '..', '..')
# Known alike from two places of one publication.
TWO_PLACES = [{'niosh_compression_1981', 'niosh_energy_1981'}, {'niosh_fm_high', 'niosh_composite'}]


def read(pattern):
    return {p: open(p, encoding='utf-8').read() for p in sorted(glob.glob(os.path.join(TOP, pattern), recursive=True))}


def ids(texts, macro):
    found = []
    for text in texts.values():
        found += re.findall(r'^\s*' + macro + r'\((\w+)', re.sub(r'/\*.*?\*/', '', text, flags=re.S), re.M)
    return found


def main():
    faults = []
    lists = read('src/core/lists/*.def')
    code = '\n'.join(read('src/**/*.c').values()) + '\n'.join(read('src/**/*.h').values())
    used = collections.Counter(re.findall(r'\w+', code))
    tables = '\n'.join(lists.values())
    reasons, words = ids(lists, 'REASON'), ids(read('src/model/words_*.h'), 'WORD')
    for name in sorted(set(reasons) - set(words)):
        faults.append(f'reason {name} has no sentence')
    for name in sorted(set(words) - set(reasons)):
        faults.append(f'sentence {name} has no reason')
    equations, titles = ids(lists, 'EQ'), ids(read('src/model/words_*.h'), 'EQUATION_WORDS')
    for kind, all_ids in (('reason', reasons), ('sentence', words), ('source', ids(lists, 'SOURCE')), ('equation', equations), ('title', titles)):
        for name in sorted({n for n in all_ids if all_ids.count(n) > 1}):
            faults.append(f'{kind} {name} stands twice')
    for name in reasons:
        if not used['HS_REASON_' + name] + used[name]:
            faults.append(f'reason {name} is never given')
    for name in sorted(set(equations) ^ set(titles)):
        faults.append(f'equation {name} and its title are not both there')
    worked = set(re.findall(r'HS_WORK\([^,]+,\s*(\w+)', code))
    for name in ids(lists, 'EQ'):
        if not used['HS_EQ_' + name] and name not in worked:
            faults.append(f'equation {name} is never used')
    listed = collections.Counter(re.findall(r'\w+', tables))
    for name in ids(lists, 'SOURCE'):
        if not used['HS_SRC_' + name] and listed[name] + used[name] < 2:
            faults.append(f'source {name} is never cited')
    by_publication = collections.defaultdict(list)
    for name, title, year, known in re.findall(r'^SOURCE\((\w+), "([^"]*)", (\d+), "[^"]*", (\w+)\)', tables, re.M):
        by_publication[re.sub(r'\W+', ' ', title.lower())[:38], year, known].append(name)
    for names in by_publication.values():
        if len(names) > 1 and set(names) not in TWO_PLACES:
            faults.append(f'one publication, two sources: {", ".join(names)}')
    for fault in faults:
        print(fault)
    print(f'lists: {len(faults)} faults')
    return 1 if faults else 0


if __name__ == '__main__':
    sys.exit(main())
