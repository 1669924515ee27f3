#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""A translated sentence has the same {0:kg} and {a} as its original. Prints each fault; exit status 1 when there is one."""
import glob
import os
import re
import subprocess
import sys

TOP = os.path.join(os.path.dirname(os.path.abspath(__file__)), '..', '..')


def entries(path):
    """(msgid, msgstr) pairs of a catalogue, without wrapping."""
    text = subprocess.run(['msgcat', '--no-wrap', path], capture_output=True, text=True, check=True).stdout
    for block in text.split('\n\n'):
        if '#, fuzzy' in block or 'msgid_plural' in block:
            continue
        parts = {'msgid': '', 'msgstr': ''}
        key = None
        for line in block.split('\n'):
            found = re.match(r'(msgid|msgstr) "(.*)"$', line)
            if found:
                key = found.group(1)
                parts[key] = found.group(2)
            elif key and re.match(r'"(.*)"$', line):
                parts[key] += line[1:-1]
        if parts['msgid'] and parts['msgstr']:
            yield parts['msgid'], parts['msgstr']


def main():
    faults = 0
    for path in glob.glob(os.path.join(TOP, 'po', '*.po')):
        for source, target in entries(path):
            want, have = (sorted(re.findall(r'\{[0-9ab](?::\w+)?\}', s)) for s in (source, target))
            if want != have:
                print(f'{os.path.basename(path)}: "{source[:60]}": placeholders {want} against {have}')
                faults += 1
    print(f'placeholders: {faults} faults')
    return 1 if faults else 0


if __name__ == '__main__':
    sys.exit(main())
