#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Worked examples of statics that come with a whole document, through the program from file to result.
usage: statics_documents.py PROGRAM CASES.json"""
import json
import re
import subprocess
import sys


def pick(results, path):
    """options[today].samples[first].bearers[a].share_N -> value; an index may be a number, an id, first or last."""
    at = results
    for key, index in re.findall(r'(\w+)|\[([^\]]+)\]', path):
        if key:
            at = at[key]
        elif index in ('first', 'last'):
            at = at[0 if index == 'first' else -1]
        elif index.lstrip('-').isdigit():
            at = at[int(index)]
        else:
            at = next(item for item in at if item['id'] == index)
    return at


def value(results, path):
    found = re.match(r'(max|min) over samples of options\[(\w+)\]\.(.*)$', path)
    if not found:
        return pick(results, path)
    how, option, rest = found.groups()
    samples = pick(results, f'options[{option}]')['samples']
    return (max if how == 'max' else min)(pick(sample, rest) for sample in samples)


def main():
    program, cases = sys.argv[1:3]
    ran = failed = 0
    for case in json.load(open(cases, encoding='utf-8'))['cases']:
        if 'document' not in case:
            continue
        ran += 1
        done = subprocess.run([program, 'assess', '-', '--json'], input=json.dumps(case['document']), capture_output=True, text=True)
        if done.returncode != 0 or done.stderr:
            print(f'{case["name"]}: exit {done.returncode}: {done.stderr}')
            failed += 1
            continue
        results = json.loads(done.stdout)
        for wanted in case['results']:
            try:
                got = value(results, wanted['path'])
            except (KeyError, IndexError, StopIteration) as error:
                print(f'{case["name"]}: {wanted["path"]}: absent ({error!r})')
                failed += 1
                continue
            tolerance = wanted.get('abs_tol', 0) + wanted.get('rel_tol', 0) * abs(wanted['value'])
            if not abs(got - wanted['value']) <= tolerance + 1e-12:
                print(f'{case["name"]}: {wanted["path"]}: {got} instead of {wanted["value"]}')
                failed += 1
    print(f'statics documents: {ran} ran, {failed} faults')
    return 1 if failed or ran < 40 else 0


if __name__ == '__main__':
    sys.exit(main())
