# SPDX-License-Identifier: GPL-3.0-or-later
"""An outside reader of the body: from `pose`, `hand_force_N`, a published table of masses and the worker's size alone, every joint
moment, the disc, the ground force, the resultant and the combined centre of mass of bearers without a suit at rest; and a scene
mirrored left for right has the mirrored result. Examples and random documents.
usage: test_body_reader.py PROGRAM EXAMPLES"""
import glob
import json
import math
import os
import subprocess
import sys
import unittest

import documents
import oracle

G = 9.80665
PROGRAM, EXAMPLES = sys.argv[1:3]
SEEDS = range(1000, 1040)
CLOSE = 1e-4

# P. de Leva, Adjustments to Zatsiorsky-Seluyanov's segment inertia parameters, J. Biomech. 29(9):1223-1230 (1996), table 4: share of
# the body's mass of one segment, centre of mass as a share of the length from the first-named end, length in mm.
DE_LEVA = {
    'male': {'head': (.0694, .5002, 242.9), 'upper': (.1596, .2999, 170.7), 'middle': (.1633, .4502, 215.5),
             'lower': (.1117, .6115, 145.7), 'arm': (.0271, .5772, 281.7), 'forearm': (.0162, .4574, 268.9), 'hand': (.0061, .79, 86.2),
             'thigh': (.1416, .4095, 422.2), 'shank': (.0433, .4459, 434.0), 'foot': (.0137, .4415, 258.1),
             'shoulder-hip': 515.5, 'suprasternale-hip': 531.9, 'C7-hip': 603.3, 'wrist-grip': .039},
    'female': {'head': (.0668, .4841, 243.7), 'upper': (.1545, .2077, 142.5), 'middle': (.1465, .4512, 205.3),
               'lower': (.1247, .4920, 181.5), 'arm': (.0255, .5754, 275.1), 'forearm': (.0138, .4559, 264.3), 'hand': (.0056, .7474, 78.0),
               'thigh': (.1478, .3612, 368.5), 'shank': (.0481, .4416, 432.3), 'foot': (.0129, .4014, 228.3),
               'shoulder-hip': 497.9, 'suprasternale-hip': 529.3, 'C7-hip': 614.8, 'wrist-grip': .034}}
L5S1, FOREARM, FOOT, FOOT_ANKLE, FOOT_HEIGHT = .20, .146, .152, .25, .02      # docs/body.md; lengths: Drillis & Contini 1966


def along(a, b, t):
    return a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])


def masses(worker, pose, kneels):
    """Segments from the hands down as (kg, place), in groups: what a joint has above it is all groups before it."""
    t, H = DE_LEVA[worker['sex']], worker['stature_m']
    p = {k: tuple(v) for k, v in pose.items()}
    trunk, lower = t['shoulder-hip'], t['lower'][2]

    def spine(mm):
        return along(p['hip'], p['shoulder'], mm / trunk)
    cut = L5S1 * trunk                                        # the lower trunk is cut at the disc, by length
    part, whole_at, top_at = (lower - cut) / lower, (1 - t['lower'][1]) * lower, (cut + lower) / 2
    wrist = FOREARM / (FOREARM + t['wrist-grip'])
    groups = {
        'elbow': [(2 * t['hand'][0], p['hand']), (2 * t['forearm'][0], along(p['elbow'], p['hand'], t['forearm'][1] * wrist))],
        'shoulder': [(2 * t['arm'][0], along(p['shoulder'], p['elbow'], t['arm'][1]))],
        'l5s1': [(t['head'][0], spine(t['C7-hip'] + (1 - t['head'][1]) * t['head'][2])),
                 (t['upper'][0], spine(t['suprasternale-hip'] - t['upper'][1] * t['upper'][2])),
                 (t['middle'][0], spine(lower + (1 - t['middle'][1]) * t['middle'][2])),
                 (part * t['lower'][0], spine(top_at))],
        'hip': [((1 - part) * t['lower'][0], spine((whole_at - part * top_at) / (1 - part)))],
        'knee': [(2 * t['thigh'][0], along(p['hip'], p['knee'], t['thigh'][1]))],
        'ankle': [(2 * t['shank'][0], along(p['knee'], p['ankle'], t['shank'][1]))],
        'feet': [(2 * t['foot'][0], p['ankle'] if kneels else ((t['foot'][1] - FOOT_ANKLE) * FOOT * H, FOOT_HEIGHT * H))]}
    return {j: [(share * worker['mass_kg'], at) for share, at in group] for j, group in groups.items()}


# D. A. Winter, Biomechanics and Motor Control of Human Movement, 4th ed. (2009), table 4.1: share of the body's mass of one segment, centre of
# mass as a share of its length from the upper end; both sexes. The head's centre is the ear canal, which lies at eye height.
WINTER = {'hand': (.006, 1), 'forearm': (.016, .430), 'arm': (.028, .436), 'head': (.081, None), 'trunk': (.497, .50), 'pelvis': (.142, .105),
          'thigh': (.100, .433), 'shank': (.0465, .433), 'foot': (.0145, .500)}
EYES, HIPS, TRUNK = .936, .530, .288                                          # of stature: Drillis & Contini 1966


def masses_winter(worker, pose, kneels):
    """As masses(), by the other table: its pelvis ends at the disc, and the rest of the trunk lies where the whole's centre asks."""
    t, H = WINTER, worker['stature_m']
    p = {k: tuple(v) for k, v in pose.items()}

    def spine(share):
        return along(p['hip'], p['shoulder'], share)
    wrist = FOREARM / (FOREARM + DE_LEVA[worker['sex']]['wrist-grip'])
    pelvis, above = L5S1 * (1 - t['pelvis'][1]), t['trunk'][0] - t['pelvis'][0]
    groups = {
        'elbow': [(2 * t['hand'][0], p['hand']), (2 * t['forearm'][0], along(p['elbow'], p['hand'], t['forearm'][1] * wrist))],
        'shoulder': [(2 * t['arm'][0], along(p['shoulder'], p['elbow'], t['arm'][1]))],
        'l5s1': [(t['head'][0], spine((EYES - HIPS) / TRUNK)),
                 (above, spine((t['trunk'][0] * t['trunk'][1] - t['pelvis'][0] * pelvis) / above))],
        'hip': [(t['pelvis'][0], spine(pelvis))],
        'knee': [(2 * t['thigh'][0], along(p['hip'], p['knee'], t['thigh'][1]))],
        'ankle': [(2 * t['shank'][0], along(p['knee'], p['ankle'], t['shank'][1]))],
        'feet': [(2 * t['foot'][0], p['ankle'] if kneels else ((t['foot'][1] - FOOT_ANKLE) * FOOT * H, FOOT_HEIGHT * H))]}
    return {j: [(share * worker['mass_kg'], at) for share, at in group] for j, group in groups.items()}


TABLES = {'de_leva': masses, 'winter': masses_winter}                         # policy.segments


class Reading:
    """Compares one document's results; counts what it compared."""
    def __init__(self, document, results):
        self.document, self.results, self.wrong, self.counted = document, results, [], {}
        self.masses = TABLES[document.get('policy', {}).get('segments', 'de_leva')]

    def same(self, what, got, want, least=1.0):
        self.counted[what] = self.counted.get(what, 0) + 1
        if got is None or not abs(got - want) <= CLOSE * max(abs(want), least):
            self.wrong.append('%s: %r, rebuilt %r' % (what, got, want))

    def run(self):
        for option, got in zip(self.document['options'], self.results['options']):
            o = oracle.Option(self.document, option)
            o.mass, o.centre = self.results['load']['mass_kg'], self.results['load']['centre_m']
            kneels = option.get('stance', 'standing') != 'standing'
            for s in got['samples']:
                self.sample(o, s, kneels)
        return self

    def at_rest(self, o, s):
        moving = abs(s['load']['acceleration_m_s2'][0]) + abs(s['load']['acceleration_m_s2'][1])
        piece = next((p for p in o.motion.pieces if p.start - 1e-9 <= s['t_s'] <= p.start + p.length + 1e-9), None)
        return moving < 1e-9 and piece is not None and o.state(piece, s['t_s'])['v'] < 1e-9

    def sample(self, o, s, kneels):
        if not self.at_rest(o, s):
            return
        centres = []
        for b, bearer in zip(s['bearers'], o.bearers):
            if bearer.get('suit') or 'pose' not in b or abs(b['hand_push_N']) > 1e-9:
                continue
            worker = o.workers[bearer['worker']]
            groups = self.masses(worker, b['pose'], kneels)
            self.joints(o, b, s, groups)
            centres.append((b, bearer, worker, self.ground(b, worker, groups)))
        if len(centres) == len(o.bearers) and o.reach_known:
            self.combined(o, s, centres)

    def joints(self, o, b, s, groups):
        pose, force, above, held = b['pose'], b['hand_force_N'], [], self.couple(o, s)
        if held:                                              # somebody holds a couple: not to be had from the pose
            return
        for joint in ('elbow', 'shoulder', 'l5s1', 'hip', 'knee', 'ankle'):
            above += groups[joint]
            moment = sum(kg * G * (at[0] - pose[joint][0]) for kg, at in above) + force * (pose['hand'][0] - pose[joint][0])
            if joint == 'l5s1':
                self.same('L5/S1', b['l5s1']['moment_Nm'], moment)
                self.disc(b, moment, sum(kg for kg, _ in above) * G + force)
            if joint in b['joints']:
                self.same(joint, b['joints'][joint]['moment_Nm'], moment)

    def couple(self, o, s):
        piece = next(p for p in o.motion.pieces if p.start - 1e-9 <= s['t_s'] <= p.start + p.length + 1e-9)
        return o.shares(o.state(piece, s['t_s']))[1] > 1e-9

    def disc(self, b, moment, weight):
        """C = |M| / d + G cos s, S = G sin s (docs/results.md); s: 40 degrees and the turn of the pelvis (docs/body.md)."""
        p = b['pose']
        trunk = math.degrees(math.atan2(p['shoulder'][0] - p['hip'][0], p['shoulder'][1] - p['hip'][1]))
        shank = math.degrees(math.atan2(p['knee'][0] - p['ankle'][0], p['knee'][1] - p['ankle'][1]))
        thigh = math.degrees(math.atan2(p['knee'][0] - p['hip'][0], p['hip'][1] - p['knee'][1]))
        knee = 180 - shank - thigh
        turn = -17.5 - .12 * trunk + .227 * knee + .0012 * trunk * knee + .005 * trunk ** 2 - .00075 * knee ** 2
        slope = math.radians(40 + max(0, turn))
        self.same('compression', b['l5s1']['compression_N'], abs(moment) / (.05 if moment >= 0 else .10) + weight * math.cos(slope))
        self.same('shear', b['l5s1']['shear_N'], weight * math.sin(slope))

    def ground(self, b, worker, groups):
        bodies = [one for group in groups.values() for one in group]
        kg = sum(m for m, _ in bodies)
        self.same('ground', b['ground_force_N'], worker['mass_kg'] * G + b['hand_force_N'])
        return sum(m * at[0] for m, at in bodies) / kg, sum(m * at[1] for m, at in bodies) / kg

    def combined(self, o, s, centres):
        """Load and all bearers in the world: where their feet are follows from the grips, the side they stand on, and the reach."""
        piece = next(p for p in o.motion.pieces if p.start - 1e-9 <= s['t_s'] <= p.start + p.length + 1e-9)
        state = o.state(piece, s['t_s'])
        state.update(x=s['load']['x_m'], z=s['load']['z_m'], pitch=math.radians(s['load']['pitch_deg']))
        load = o.placed(o.centre, state['pitch'])
        total = [o.mass * (state['x'] + load[0]), o.mass * load[1], o.mass * (state['z'] + load[2])]
        kg = o.mass
        for b, bearer, worker, centre in centres:
            ahead = {'behind': (1, 0), 'ahead': (-1, 0), 'left': (0, -1), 'right': (0, 1)}[o.stands(bearer)]
            hands = o.hands(bearer, state)
            feet = [hands[i] - ahead[i] * state['reach'] for i in (0, 1)]
            place = feet[0] + ahead[0] * centre[0], feet[1] + ahead[1] * centre[0], o.floor.at(feet[0]) + centre[1]
            if not o.floor.risers:
                total = [a + worker['mass_kg'] * c for a, c in zip(total, place)]
            kg += worker['mass_kg']
        self.same('combined mass', s['combined']['mass_kg'], kg)
        if not o.floor.risers:
            for axis in range(3):
                self.same('combined centre', s['combined']['centre_m'][axis], total[axis] / kg)


def assess(document):
    done = subprocess.run([PROGRAM, 'assess', '--json', '-'], input=json.dumps(document), capture_output=True, text=True, timeout=120,
                          check=False)
    if done.returncode:
        raise AssertionError(done.stderr)
    return json.loads(done.stdout)


def examples():
    for name in sorted(glob.glob(os.path.join(EXAMPLES, '*.handspike.json'))):
        with open(name, encoding='utf-8') as file:
            yield os.path.basename(name), json.load(file)


class Rebuilt(unittest.TestCase):
    def read(self, named):
        wrong, counted = [], {}
        for name, document in named:
            reading = Reading(document, assess(document)).run()
            wrong += ['%s: %s' % (name, line) for line in reading.wrong[:5]]
            for what, n in reading.counted.items():
                counted[what] = counted.get(what, 0) + n
        self.assertTrue(not wrong, '\n'.join(wrong[:40])[:3000])
        print(', '.join('%s %d' % item for item in sorted(counted.items())), file=sys.stderr)
        for what in ('elbow', 'shoulder', 'L5/S1', 'hip', 'knee', 'ankle', 'compression', 'shear', 'ground', 'combined centre'):
            self.assertGreater(counted.get(what, 0), 50, what)

    def test_examples(self):
        self.read(examples())

    def test_random_documents(self):
        self.read(('seed %d' % s, documents.document(s)) for s in SEEDS)

    def test_the_other_table(self):
        """The examples by Winter's table, rebuilt by it, and told; by de Leva's they are others."""
        named = list(examples())
        for name, document in named:
            document.setdefault('policy', {})['segments'] = 'winter'
        self.read(named)
        results = assess(named[0][1])
        self.assertEqual(sum('Winter 2009' in text for text in results['cautions']), 1)
        self.assertFalse([a for a in results['assumptions'] if a['path'] == 'policy.segments'])
        named[0][1]['policy']['segments'] = 'de_leva'
        self.assertTrue(Reading(dict(named[0][1], policy={'segments': 'winter'}), assess(named[0][1])).run().wrong)
        del named[0][1]['policy']['segments']
        self.assertEqual([a['value'] for a in assess(named[0][1])['assumptions'] if a['path'] == 'policy.segments'], ['de_leva'])

    def test_it_would_notice(self):
        """The same reading with one figure changed by two in ten thousand is not the same."""
        document = documents.document(SEEDS[0])
        for path in (('joints', 'knee', 'moment_Nm'), ('l5s1', 'compression_N'), ('ground_force_N',)):
            results = assess(document)
            for option in results['options']:
                for s in option['samples']:
                    for b in s['bearers']:
                        at = b
                        for key in path[:-1]:
                            at = at.get(key, {})
                        if path[-1] in at:
                            at[path[-1]] += 2e-4 * max(1, abs(at[path[-1]]))
            noticed = bool(Reading(document, results).run().wrong)
            self.assertTrue(noticed, path)


OTHER_SIDE = {'left': 'right', 'right': 'left'}


def mirrored(document):
    """y becomes -y: turns about x and z change their sign, a turn about y does not."""
    made = json.loads(json.dumps(document))
    for part in made['load']['parts']:
        part['centre_m'][1] *= -1
        if 'turn_deg' in part:
            part['turn_deg'] = [-part['turn_deg'][0], part['turn_deg'][1], -part['turn_deg'][2]]
    for grip in made['load']['grips']:
        for key in ('at_m', 'inward'):
            if key in grip:
                grip[key][1] *= -1
    for point in made['route']['points']:
        for key in ('y_m', 'turn_deg'):
            if key in point:
                point[key] *= -1
    for option in made['options']:
        if 'heading_deg' in option:
            option['heading_deg'] *= -1
        for bearer in option['bearers']:
            if bearer.get('stands') in OTHER_SIDE:
                bearer['stands'] = OTHER_SIDE[bearer['stands']]
    return made


def symmetric(document):
    """No part whose shape itself has a left and a right."""
    for part in document['load']['parts']:
        if part['shape'] in ('wedge', 'hemisphere', 'cone'):
            part.update(shape='sphere', radius_m=part.get('radius_m', .1))
            for key in ('size_m', 'axis', 'length_m', 'turn_deg', 'liquid'):
                part.pop(key, None)
    return document


class Mirrored(unittest.TestCase):
    def same(self, where, a, b):
        if isinstance(a, dict):
            for key in a:
                if key in ('text', 'working', 'base_m', 'remedy', 'reason', 'digest', 'input'):
                    continue
                if key not in b:
                    self.wrong.append('%s.%s is missing' % (where, key))
                    continue
                if key in ('resultant_m', 'centre_m'):
                    self.number('%s.%s y' % (where, key), a[key][1], -b[key][1])
                    self.number('%s.%s x' % (where, key), a[key][0], b[key][0])
                    continue
                self.same('%s.%s' % (where, key), a[key], b[key])
        elif isinstance(a, list):
            if len(a) != len(b):
                self.wrong.append('%s: %d and %d' % (where, len(a), len(b)))
            for i, (x, y) in enumerate(zip(a, b)):
                self.same('%s[%d]' % (where, i), x, y)
        elif isinstance(a, (int, float)) and not isinstance(a, bool):
            self.number(where, a, b)
        elif a != b:
            self.wrong.append('%s: %r and %r' % (where, a, b))

    def number(self, where, a, b):
        self.counted += 1
        if not abs(a - b) <= 1e-5 * max(1, abs(a)):
            self.wrong.append('%s: %r and %r' % (where, a, b))

    def test_left_for_right(self):
        self.wrong, self.counted = [], 0
        for seed in SEEDS:
            document = symmetric(documents.document(seed))
            a, b = assess(document), assess(mirrored(document))
            for one, other in zip(a['options'], b['options']):
                self.same('seed %d %s samples' % (seed, one['id']), one['samples'], other['samples'])
                said = [[(f['check'], f['status'], f['why']) for f in o['findings']] for o in (one, other)]
                self.same('seed %d %s findings' % (seed, one['id']), *said)
                self.same('seed %d %s verdict' % (seed, one['id']), one['verdict']['status'], other['verdict']['status'])
        self.assertTrue(not self.wrong, '%d wrong\n%s' % (len(self.wrong), '\n'.join(self.wrong[:30])[:3000]))
        self.assertGreater(self.counted, 10000)


if __name__ == '__main__':
    unittest.main(argv=[sys.argv[0], *sys.argv[3:]], verbosity=2)
