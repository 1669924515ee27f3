# SPDX-License-Identifier: GPL-3.0-or-later
"""An outside reader of how people move: from `pose` alone, by how much each joint turns from one sample of a leg to the next. Where the
feet stay it is 10 degrees at most, or a caution says how many changes are greater. Examples and random documents.
usage: test_turns.py PROGRAM EXAMPLES"""
import glob
import json
import math
import os
import re
import subprocess
import sys
import unittest

import documents

PROGRAM, EXAMPLES = sys.argv[1:3]
SEEDS = range(1000, 1100)
MOST_deg, EDGE_deg = 10.0, 1e-5          # docs/body.md; the results print 9 digits
RISER_m = .05                            # docs/file-format.md: a step over a riser
JUMPS_IN_1000, WALKING_IN_1000 = 1, 5    # what is left, of pairs of samples: measured 0.2 and 1


def joints(pose):
    def slope(a, b, up):
        return math.degrees(math.atan2(pose[b][0] - pose[a][0], up * (pose[b][1] - pose[a][1])))
    shank, thigh, trunk = slope('ankle', 'knee', 1), -slope('knee', 'hip', 1), slope('hip', 'shoulder', 1)
    upper, fore = slope('shoulder', 'elbow', -1), slope('elbow', 'hand', -1)
    return {'ankle': shank, 'knee': shank + thigh, 'hip': thigh + trunk, 'trunk': trunk, 'shoulder': upper + trunk, 'elbow': fore - upper}


def turns(a, b):
    a, b = joints(a), joints(b)
    return {j: abs((b[j] - a[j] + 180) % 360 - 180) for j in a}


def steps_up(a, b, x, y):
    """The hands keep their place on the load: what the load rises and the hands over the feet do not, the feet have risen."""
    return abs((b['load']['z_m'] - a['load']['z_m']) - (y['pose']['hand'][1] - x['pose']['hand'][1])) > RISER_m


class Moving:
    """One document's results, read pair by pair."""
    def __init__(self, document, results):
        self.document, self.results = document, results
        self.pairs = {'stay': 0, 'walk': 0}
        self.jumps = {'stay': {}, 'walk': {}}            # by option
        self.most = {'stay': {}, 'walk': {}}
        for option in results['options']:
            for a, b in zip(option['samples'], option['samples'][1:]):
                if b['t_s'] - a['t_s'] > 1e-12 and b['route'] > a['route']:
                    self.pair(option['id'], a, b)

    def pair(self, option, a, b):
        point = self.document['route']['points'][math.ceil(b['route'] - 1e-9) - 1]
        kind = 'walk' if point['move'] == 'carry' else 'stay'
        for x, y in zip(a['bearers'], b['bearers']):
            if 'pose' not in x or 'pose' not in y or steps_up(a, b, x, y):
                continue
            self.pairs[kind] += 1
            turned = turns(x['pose'], y['pose'])
            if max(turned.values()) > MOST_deg + EDGE_deg:
                self.jumps[kind][option] = self.jumps[kind].get(option, 0) + 1
                continue
            for joint, deg in turned.items():
                self.most[kind][joint] = max(deg, self.most[kind].get(joint, 0))

    def told(self):
        """What the cautions own up to, by option."""
        ret = {}
        for option in self.results['options']:
            for text in self.results['cautions']:
                found = re.match(re.escape(option.get('name') or option['id']) + r': the posture changes at once .*: (\d+)\.$', text)
                if found:
                    ret[option['id']] = int(found.group(1))
        return ret


def assess(document):
    done = subprocess.run([PROGRAM, 'assess', '--json', '-'], input=json.dumps(document), capture_output=True, text=True, timeout=120,
                          check=False)
    if done.returncode:
        raise AssertionError(done.stderr)
    return json.loads(done.stdout)


def load(name):
    with open(name, encoding='utf-8') as file:
        return json.load(file)


class Turns(unittest.TestCase):
    def read(self, named):
        pairs, jumps = {'stay': 0, 'walk': 0}, {'stay': 0, 'walk': 0}
        for name, document in named:
            moving = Moving(document, assess(document))
            self.assertEqual(moving.jumps['stay'], moving.told(), name)
            for kind, n in moving.pairs.items():
                pairs[kind] += n
                jumps[kind] += sum(moving.jumps[kind].values())
        print('pairs', pairs, 'jumps', jumps, file=sys.stderr)
        self.assertLessEqual(jumps['walk'] * 1000, pairs['walk'] * WALKING_IN_1000)
        return pairs['stay'], jumps['stay']

    def test_examples(self):
        names = sorted(glob.glob(os.path.join(EXAMPLES, '*.handspike.json')))
        self.assertEqual(len(names), 14)
        pairs, jumps = self.read((os.path.basename(n), load(n)) for n in names)
        self.assertGreater(pairs, 1500)
        self.assertEqual(jumps, 0)

    def test_random_documents(self):
        pairs, jumps = self.read(('seed %d' % s, documents.document(s)) for s in SEEDS)
        self.assertGreater(pairs, 5000)
        self.assertLessEqual(jumps * 1000, pairs * JUMPS_IN_1000)

    def test_it_would_notice(self):
        """Every second sample left out: somebody jumps, and no caution says so."""
        name = sorted(glob.glob(os.path.join(EXAMPLES, '02*.handspike.json')))[0]
        document = load(name)
        results = assess(document)
        for option in results['options']:
            option['samples'] = option['samples'][::2]
        moving = Moving(document, results)
        self.assertGreater(sum(moving.jumps['stay'].values()), 5)
        self.assertEqual(moving.told(), {})


if __name__ == '__main__':
    unittest.main(argv=[sys.argv[0], *sys.argv[3:]], verbosity=2)
