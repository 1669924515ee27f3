#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Every source file says which question it answers; public functions of core and model carry a comment; nothing that must
not be in the project is in it. Prints each fault; exit status 1 when there is one."""
import os
import re
import subprocess
import sys

TOP = os.path.join(os.path.dirname(os.path.abspath(__file__)), '..', '..')
KEYS = ['What', 'In', 'Out', 'Frame', 'Errors', 'Source']
# Unfinished marks, and words that are no verdict. Written in pieces so that this file does not find itself.
MARKS = re.compile(r'\b(' + '|'.join(['TO' + 'DO', 'FIX' + 'ME', 'XX' + 'X', 'HA' + 'CK']) + r')\b')


def tracked():
    out = subprocess.run(['git', '-C', TOP, 'ls-files'], capture_output=True, text=True).stdout.split('\n')
    if not any(out):
        out = [os.path.relpath(os.path.join(b, n), TOP) for b, _, ns in os.walk(os.path.join(TOP, 'src')) for n in ns]
    return [p for p in out if p and os.path.exists(os.path.join(TOP, p))]


def doc_faults(path, text):
    faults = []
    for found in re.finditer(r'/\*\*\n \* (hs_\w+) - .*?\*/', text, re.S):
        missing = [k for k in KEYS if not re.search(r'^ \* ' + k + r'\b', found.group(0), re.M)]
        if missing:
            faults.append(f'{path}: {found.group(1)}: doc comment lacks {", ".join(missing)}')
    return faults


def main():
    faults = []
    for path in tracked():
        full = os.path.join(TOP, path)
        if not path.endswith(('.c', '.h', '.def', '.py', '.sh', '.ui', '.css', '.build')):
            continue
        text = open(full, encoding='utf-8', errors='replace').read()
        if 'SPDX-License-Identifier: GPL-3.0-or-later' not in text[:300]:
            faults.append(f'{path}: no licence line')
        if path.startswith('src/') and path.endswith(('.c', '.h')) and not os.path.basename(path).startswith('words_'):
            head = text[:1500]
            for word in ('Question:', 'Answer:', 'Not here:'):
                if word not in head:
                    faults.append(f'{path}: the head does not say "{word}"')
                    break
        if path.startswith(('src/', 'tests/', 'ui/')) and MARKS.search(text):
            faults.append(f'{path}: an unfinished mark')
        if path.startswith(('src/core', 'src/model')) and path.endswith('.h'):
            faults += doc_faults(path, text)
    for fault in faults:
        print(fault)
    print(f'heads: {len(faults)} faults')
    return 1 if faults else 0


if __name__ == '__main__':
    sys.exit(main())
