#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Links of the Markdown files lead somewhere, and functions named in docs/tour.md are defined. Exit status 1 on a fault."""
import glob
import os
import re
import sys

TOP = os.path.join(os.path.dirname(os.path.abspath(__file__)), '..', '..')


def main():
    faults = []
    code = '\n'.join(open(p, encoding='utf-8').read() for p in glob.glob(os.path.join(TOP, 'src', '**', '*.c'), recursive=True))
    pages = glob.glob(os.path.join(TOP, '*.md')) + glob.glob(os.path.join(TOP, 'docs', '**', '*.md'), recursive=True)
    for page in pages:
        text = open(page, encoding='utf-8').read()
        for target in re.findall(r'\]\(([^)#]+)(?:#[^)]*)?\)', text):
            if '://' not in target and not os.path.exists(os.path.join(os.path.dirname(page), target)):
                faults.append(f'{os.path.relpath(page, TOP)}: no such file: {target}')
    for name in re.findall(r'`(hs_\w+)\(\)`', open(os.path.join(TOP, 'docs', 'tour.md'), encoding='utf-8').read()):
        if not re.search(r'^' + name + r'\(', code, re.M):
            faults.append(f'docs/tour.md: {name}() is not defined')
    for fault in faults:
        print(fault)
    print(f'tour: {len(pages)} pages, {len(faults)} faults')
    return 1 if faults else 0


if __name__ == '__main__':
    sys.exit(main())
