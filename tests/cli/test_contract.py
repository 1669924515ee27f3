# SPDX-License-Identifier: GPL-3.0-or-later
"""The program against an independent reading of the file format (oracle.py, compare.py): hand-made cases with figures worked
out on paper, every example, random documents, and documents that must be refused."""
import concurrent.futures
import copy
import glob
import json
import math
import os
import subprocess
import sys
import time
import unittest

import compare
import documents

G = 9.80665
PROGRAM = sys.argv[1]
EXAMPLES = sys.argv[2]
RANDOM_DOCUMENTS = 150


def run(text, *call):
    data = text if isinstance(text, bytes) else text.encode('utf-8')
    return subprocess.run([PROGRAM, *(call or ('assess', '--json')), '-'], input=data, stdout=subprocess.PIPE,
                          stderr=subprocess.PIPE, timeout=60)


def assess(document):
    done = run(json.dumps(document))
    if done.returncode:
        raise AssertionError(done.stderr.decode())
    return json.loads(done.stdout)


def whole(document):
    """Differences between program and oracle, and how many figures were compared."""
    return compare.compare(document, assess(document))


def named(item):
    return item[0], whole(item[1])


def beam(mass=40, centre=(0, 0, .2), grips=((-1, 0, .2), (1, 0, .2)), points=None, **more):
    """A point load held at rest at each grip by one bearer."""
    names = ['g%d' % i for i in range(len(grips))]
    made = {
        'format': 'handspike-assessment', 'version': 1,
        'load': {'parts': [{'id': 'p', 'shape': 'point', 'centre_m': list(centre), 'mass_kg': mass}],
                 'grips': [{'id': n, 'at_m': list(at), 'kind': 'handle'} for n, at in zip(names, grips)]},
        'route': {'points': points or [{'x_m': 0, 'z_m': .6, 'reach_m': .4, 'move': 'start'},
                                       {'x_m': 0, 'z_m': .6, 'reach_m': .4, 'move': 'hold', 'time_s': 2}]},
        'workers': [{'id': 'w' + n} for n in names],
        'options': [{'id': 'o', 'bearers': [{'id': 'b' + n, 'worker': 'w' + n, 'grips': [n]} for n in names]}]}
    made.update(more)
    return made


def alone(mass=36.3, grips=((0, .2, .3), (0, -.2, .3)), suit=None, masses=None):
    """One bearer with both hands."""
    made = beam(mass=mass, centre=(0, 0, .3), grips=grips)
    made['workers'] = [{'id': 'w'}]
    made['options'] = [{'id': 'o', 'bearers': [{'id': 'b', 'worker': 'w', 'grips': ['g0', 'g1']}]}]
    if suit:
        made['suits'] = [suit]
        made['options'][0]['bearers'][0]['suit'] = suit['id']
    if masses:
        made['load']['parts'] = [{'id': 'p%d' % i, 'shape': 'point', 'centre_m': list(at), 'mass_kg': m}
                                 for i, (m, at) in enumerate(zip(masses, grips))]
    return made


def powered(**more):
    made = {'id': 's', 'kind': 'powered', 'mass_kg': 30, 'centre_m': [-.1, 1], 'self_carried': .9, 'gain': {'hands': 4, 'trunk': 4},
            'residual_N': {'hands': 10, 'trunk': 20}, 'rating': [{'reach_m': .3, 'payload_kg': 50}, {'reach_m': .5, 'payload_kg': 40}],
            'hand_height_m': [.4, 1.6], 'on_power_loss': 'lock', 'lock_s': 60, 'walks_without_power': True, 'release_self_s': 5,
            'release_helper_s': 9, 'wearer_stature_m': [1.5, 2], 'wearer_mass_kg': [50, 110],
            'power': {'idle_W': 50, 'hold_W_per_Nm': .5, 'lift_efficiency': .4, 'battery_Wh': 500}}
    made.update(more)
    return made


class Paper(unittest.TestCase):
    """Figures that anybody can check by hand."""
    def setUp(self):
        self.longMessage = True

    def first(self, document, option=0):
        wrong, counted = whole(document)
        self.assertEqual(wrong, [])
        self.assertGreater(counted, 20)
        return assess(document)['options'][option]['samples'][0]

    def shares(self, document):
        return [b['share_N'] for b in self.first(document)['bearers']]

    def finding(self, document, check, option=0):
        found = [f for f in assess(document)['options'][option]['findings'] if f['check'] == check]
        self.assertEqual(len(found), 1, check)
        return found[0]

    def near(self, got, want):
        self.assertEqual(len(got), len(want))
        for a, b in zip(got, want):
            self.assertAlmostEqual(a, b, delta=1e-6 * max(1, abs(b)))

    def test_two_on_a_beam(self):
        self.near(self.shares(beam(centre=(.5, 0, .2))), [10 * G, 30 * G])
        self.near(self.shares(beam(centre=(-1, 0, .2))), [40 * G, 0])

    def test_on_a_stair_of_32_degrees(self):
        t, c, W = math.tan(math.radians(32)), .3, 600 / G
        points = [{'x_m': 0, 'z_m': 1, 'reach_m': .4, 'pitch_deg': 32, 'move': 'start'},
                  {'x_m': 0, 'z_m': 1, 'reach_m': .4, 'pitch_deg': 32, 'move': 'hold', 'time_s': 1}]
        made = beam(mass=W, centre=(0, 0, .5), grips=((-.9, 0, .2), (.9, 0, .2)), points=points)
        self.near(self.shares(made), [600 * (.9 + c * t) / 1.8, 600 * (.9 - c * t) / 1.8])
        made['load']['parts'][0]['centre_m'][2] = .2          # held at the height of its CG it is shared evenly on any stair
        self.near(self.shares(made), [300, 300])

    def test_the_pitch_follows_the_stair(self):
        going, rise = .28, .28 * math.tan(math.radians(32))
        floor, z = [[-9, 0]], 0.0
        for i in range(14):
            floor += [[2 + i * going, z], [2 + i * going, z + rise]]
            z += rise
        points = [{'x_m': 0, 'z_m': .7, 'reach_m': .4, 'move': 'start'}, {'x_m': 8, 'z_m': .7 + z, 'reach_m': .4, 'move': 'carry', 'time_s': 12}]
        made = beam(centre=(0, 0, .5), grips=((-.9, 0, .2), (.9, 0, .2)), points=points, site={'floor': floor, 'friction': .5})
        wrong, _ = whole(made)
        self.assertEqual(wrong, [])
        samples = assess(made)['options'][0]['samples']
        middle = [s for s in samples if 3.2 < s['load']['x_m'] < 4.4]
        self.assertTrue(middle)
        for s in middle:
            self.assertAlmostEqual(s['load']['pitch_deg'], 32, delta=1e-9)
            self.assertGreater(s['bearers'][0]['share_N'], s['bearers'][1]['share_N'])
            for b in s['bearers']:
                self.assertAlmostEqual(b['hand_force_N'], 1.6 * b['share_N'], delta=1e-6)

    def test_four_at_the_corners_until_one_lifts_off(self):
        corners = ((-.5, -.4, .2), (-.5, .4, .2), (.5, -.4, .2), (.5, .4, .2))
        self.near(self.shares(beam(grips=corners)), [10 * G] * 4)
        W, lifted = 40 * G, False
        for step in range(0, 10):
            x, y = .05 * step, .04 * step
            plane = [W * (1 / 4 + x * gx / 1 + y * gy / .64) for gx, gy, _ in corners]
            got = self.shares(beam(centre=(x, y, .2), grips=corners))
            if min(plane) >= 0:
                self.near(got, plane)
            else:                                             # three carry it: the far corner has let go
                lifted = True
                self.assertEqual(round(got[0], 6), 0)
                self.near([got[1] + got[3]], [W * (.5 + y / .8)])
                self.near([got[2] + got[3]], [W * (.5 + x)])
        self.assertTrue(lifted)

    def test_three(self):
        grips = ((-.6, 0, .2), (.4, .5, .2), (.4, -.5, .2))
        self.near(self.shares(beam(mass=30, centre=(.1, .1, .2), grips=grips)), [9 * G, 13.5 * G, 7.5 * G])

    def test_outside_the_grips(self):
        made = beam(centre=(1.1, 0, .3))
        self.near(self.shares(made), [0, 40 * G])
        polygon = self.finding(made, 'load.polygon')
        self.assertAlmostEqual(polygon['value'], .1 * 40 * G, delta=1e-6)
        self.assertEqual((polygon['unit'], polygon['limit'], polygon['status']), ('Nm', 10, 'beyond'))
        made['policy'] = {'couple_Nm': 50}
        self.assertEqual(self.finding(made, 'load.polygon')['status'], 'within')

    def test_hanging_it_turns_until_it_balances(self):
        made = beam(centre=(1.1, 0, .1))
        for g in made['load']['grips']:
            g['kind'] = 'strap'
        self.assertIn(self.finding(made, 'load.polygon')['status'], ('within', 'near'))

    def test_a_quarter_in_all_at_gain_four(self):
        made = alone(suit=powered(residual_N={'hands': 0, 'trunk': 0}))
        b = self.first(made)['bearers'][0]
        self.assertAlmostEqual(b['felt_force_N'], 36.3 * G / 4, delta=1e-6)        # both hands together
        self.assertAlmostEqual(b['felt_force_N'] / 2, 10 * 4.4482216, delta=.05)   # 10 lbf in each
        made['suits'][0]['residual_N']['hands'] = 10
        b = self.first(made)['bearers'][0]
        self.assertAlmostEqual(b['felt_force_N'] / 2, 36.3 * G / 8 + 5, delta=1e-6)
        self.assertAlmostEqual(b['felt_force_N'] + b['suit_force_N'], b['hand_force_N'], delta=1e-9)

    def test_the_excess_is_felt_in_full(self):
        made = alone(mass=60, suit=powered())                 # reach .4: 45 kg
        self.assertAlmostEqual(self.first(made)['bearers'][0]['felt_force_N'], 45 * G / 4 + 10 + 15 * G, delta=1e-6)
        rating = self.finding(made, 'suit.rating')
        self.assertAlmostEqual(rating['ratio'], 60 / 45, delta=1e-9)
        self.assertEqual((rating['status'], rating['unit']), ('beyond', 'kg'))

    def test_ends_of_height_and_reach_belong_to_them(self):
        made = alone(suit=powered(hand_height_m=[.9, 1.2]))   # hands at .6 + .3
        self.assertLess(self.first(made)['bearers'][0]['felt_force_N'], 36.3 * G)
        made['suits'][0]['hand_height_m'] = [.9 + 1e-8, 1.2]
        self.assertAlmostEqual(self.first(made)['bearers'][0]['felt_force_N'], 36.3 * G, delta=1e-9)
        rating = self.finding(made, 'suit.rating')
        self.assertEqual(rating['status'], 'beyond')
        self.assertNotIn('ratio', rating)
        made['suits'][0]['hand_height_m'] = [.5, 1.2]
        for p in made['route']['points']:
            p['reach_m'] = .5
        self.assertAlmostEqual(self.first(made)['bearers'][0]['felt_force_N'], 36.3 * G / 4 + 10, delta=1e-6)
        for p in made['route']['points']:
            p['reach_m'] = .5 + 1e-8
        self.assertAlmostEqual(self.first(made)['bearers'][0]['felt_force_N'], 36.3 * G, delta=1e-9)

    def test_a_suit_never_changes_what_the_ground_carries(self):
        made = alone(suit=powered())
        self.assertAlmostEqual(self.first(made)['bearers'][0]['ground_force_N'], (85.5 + 30 + 36.3) * G, delta=1e-6)

    def test_what_is_missing_is_absent_and_named(self):
        for key in ('gain', 'rating', 'hand_height_m', 'residual_N'):
            suit = powered()
            del suit[key]
            made = alone(suit=suit)
            r = assess(made)
            self.assertNotIn('felt_force_N', r['options'][0]['samples'][0]['bearers'][0], key)
            data = self.finding(made, 'data')
            self.assertEqual((data['status'], data['why']), ('not_judged', 'missing'))
            self.assertIn(key, data['text'])
            self.assertIn(r['options'][0]['verdict']['status'], ('undecided', 'not_supported'))

    def test_a_container_in_each_hand(self):
        def sideways(masses):
            made = alone(grips=((0, .35, .3), (0, -.35, .3)), masses=masses)
            for p in made['route']['points']:
                p['reach_m'] = .05
            return self.first(made)['bearers'][0]['resultant_m'][1]
        self.assertAlmostEqual(sideways((12, 12)), 0, delta=1e-9)
        self.assertGreater(sideways((16, 8)), .005)
        self.assertLess(sideways((8, 16)), -.005)

    def test_lifting_index(self):
        points = [{'x_m': 0, 'z_m': .1, 'reach_m': .4, 'move': 'start'}, {'x_m': 0, 'z_m': .6, 'reach_m': .35, 'move': 'lift'}]
        made = alone(mass=15)
        made['route']['points'] = points
        made['work'] = {'cycles_per_hour': 60, 'hours': 2, 'recovery_h': .6}
        made['load']['grips'][0]['coupling'] = 'poor'
        # H 40, V 40, D 50, A 0, poor, one a minute, moderate: 23 x .625 x .895 x .91 x 1 x .88 x .9
        self.assertAlmostEqual(self.finding(made, 'lift.niosh-1994')['value'], 15 / (23 * .625 * .895 * .91 * .88 * .9), delta=1e-9)
        made['work']['recovery_h'] = .59
        self.assertAlmostEqual(self.finding(made, 'lift.niosh-1994')['value'], 15 / (23 * .625 * .895 * .91 * .75 * .9), delta=1e-9)
        made['route']['points'][1].update(precise=True, turn_deg=-60)
        # destination H 35, V 90, A 60
        self.assertAlmostEqual(self.finding(made, 'lift.niosh-1994')['value'], max(
            15 / (23 * .625 * .895 * .91 * .75 * .9), 15 / (23 * 25 / 35 * .955 * .91 * .808 * .75 * .9)), delta=1e-9)
        made['work']['hours'] = 8.5
        self.assertEqual(self.finding(made, 'lift.niosh-1994')['status'], 'not_judged')

    def test_walking(self):
        points = [{'x_m': 0, 'z_m': .6, 'reach_m': .4, 'move': 'start'}, {'x_m': 4, 'z_m': .6, 'reach_m': .4, 'move': 'carry', 'time_s': 5}]
        made = alone(mass=10)
        made['route']['points'] = points
        samples = assess(made)['options'][0]['samples']
        middle = [s for s in samples if abs(s['route'] - 1.5) < 1e-9]
        v = 1.875 * 4 / 5                                     # the law's greatest speed
        self.assertAlmostEqual(middle[0]['bearers'][0]['hand_force_N'], 10 * G * (1 + .2 * (v / 1.5) ** 2), delta=1e-9)
        self.assertEqual(samples[0]['bearers'][0]['hand_force_N'], 10 * G)
        made['policy'] = {'walking_factor': 1.3}
        middle = [s for s in assess(made)['options'][0]['samples'] if abs(s['route'] - 1.5) < 1e-9]
        self.assertAlmostEqual(middle[0]['bearers'][0]['hand_force_N'], 13 * G, delta=1e-9)

    def test_every_default_is_an_assumption(self):
        made = beam()
        for p in made['route']['points']:
            del p['reach_m']
        made['route']['points'].append({'x_m': 2, 'z_m': .6, 'move': 'carry'})
        paths = [a['path'] for a in assess(made)['assumptions']]
        for path in ('route.points[0].reach_m', 'route.points[2].time_s', 'load.grips[0].hands', 'load.parts[0].known',
                     'load.grips[0].coupling', 'policy.slip_factor', 'policy.near_ratio', 'policy.couple_Nm', 'policy.walking_factor',
                     'policy.step_Hz', 'policy.step_m', 'policy.strength_percentile', 'policy.team_rule', 'criteria',
                     'work.cycles_per_hour', 'work.hours', 'workers[0].sex', 'workers[0].stature_m', 'workers[0].mass_kg',
                     'workers[0].age_years'):
            self.assertTrue(any(p == path or p.startswith(path) or path.startswith(p + '.') for p in paths), (path, paths))

    def test_combined_has_everybody_whole(self):
        made = alone(mass=10)
        made['workers'][0].update(sex='female', mass_kg=60, stature_m=1.6)
        self.assertAlmostEqual(self.first(made)['combined']['mass_kg'], 70, delta=1e-9)
        for p in made['route']['points']:
            p['reach_m'] = 1.9                                # no pose reaches
        self.assertEqual(self.first(made)['combined'], {'mass_kg': 70})

    def test_a_remembered_limit_is_never_beyond(self):
        made = alone(mass=5)
        made['route']['points'] = [{'x_m': 0, 'z_m': .3, 'reach_m': .8, 'move': 'start'}, {'x_m': 0, 'z_m': .7, 'reach_m': .8, 'move': 'lift'}]
        found = self.finding(made, 'lift.en-1005-2')          # the reach is past the table's end: nothing is recommended
        self.assertEqual((found['confidence'], found['status']), ('memory', 'near'))
        self.assertNotIn('value', found)

    def test_roles_gates_and_verdict(self):
        made = beam(mass=6)
        made['options'].append({'id': 'one', 'bearers': [{'id': 'x', 'worker': 'wg0', 'grips': ['g0']}]})
        self.assertEqual((self.finding(made, 'roles', 1)['status'], self.finding(made, 'roles', 1)['why']), ('not_judged', 'missing'))
        made['roles'] = [{'role': 'Opens', 'before': 'bg0', 'after': ''}]
        self.assertEqual(self.finding(made, 'roles', 1)['status'], 'beyond')
        made['gates'] = [{'gate': 'Drill', 'answer': 'no'}]
        for option in assess(made)['options']:
            self.assertEqual(option['verdict']['status'], 'not_supported')


class Documents(unittest.TestCase):
    def compare_all(self, made):
        wrong, counted = [], 0
        with concurrent.futures.ProcessPoolExecutor(max_workers=2) as pool:
            for name, (said, n) in pool.map(named, made, chunksize=4):
                counted += n
                wrong += ['%s: %s' % (name, line) for line in said[:5]]
        self.assertEqual(wrong, [], '\n' + '\n'.join(wrong[:60]))
        return counted

    def test_examples(self):
        made = []
        for name in sorted(glob.glob(os.path.join(EXAMPLES, '*.handspike.json'))):
            with open(name, encoding='utf-8') as file:
                made.append((os.path.basename(name), json.load(file)))
        self.assertGreaterEqual(len(made), 12)
        self.assertGreater(self.compare_all(made), 10000)

    def test_random(self):
        self.assertGreater(self.compare_all([('seed %d' % s, documents.document(s)) for s in range(RANDOM_DOCUMENTS)]), 100000)


class Refused(unittest.TestCase):
    """Exit status 3, what is wrong and what is allowed on standard error, nothing on standard output, at once."""
    def refused(self, text, *words):
        for call in (('assess', '--json'), ('check',)):
            start = time.monotonic()
            done = run(text, *call)
            took = time.monotonic() - start
            self.assertEqual((done.returncode, done.stdout), (3, b''), (words, done.stderr[:300]))
            said = done.stderr.decode('utf-8')
            self.assertTrue(said.strip(), words)
            self.assertTrue(said.startswith('-: '), said[:200])
            for word in words:
                self.assertIn(word, said)
            self.assertLess(took, 2)

    def changed(self, path, value, *words):
        made = alone(suit=powered())
        at = made
        for key in path[:-1]:
            at = at[key]
        if value is None:
            del at[path[-1]]
        else:
            at[path[-1]] = value
        where = ''.join('[%d]' % k if isinstance(k, int) else '.' + k for k in path).lstrip('.')
        self.refused(json.dumps(made), *(words or (where + ': ',)))

    def test_wrong_values(self):
        for path, value in ((('version',), 2), (('version',), '1'), (('format',), 'other'), (('load', 'parts', 0, 'mass_kg'), -1),
                            (('load', 'parts', 0, 'mass_kg'), 'ten'), (('load', 'parts', 0, 'mass_kg'), True),
                            (('load', 'parts', 0, 'shape'), 'blob'), (('load', 'parts', 0, 'centre_m'), [0, 0]),
                            (('load', 'grips', 0, 'kind'), 'claw'), (('load', 'grips', 0, 'hands'), 3), (('load', 'grips'), {}),
                            (('route', 'points', 1, 'move'), 'jump'), (('route', 'points', 1, 'held_up'), 1.5),
                            (('route', 'points', 1, 'time_s'), -1), (('workers', 0), 7), (('suits', 0, 'self_carried'), 2),
                            (('suits', 0, 'kind'), 'magic'), (('options', 0, 'bearers', 0, 'stands'), 'above'),
                            (('options', 0, 'bearers', 0, 'worker'), 'nobody'), (('options', 0, 'bearers', 0, 'suit'), 'none such'),
                            (('options', 0, 'bearers', 0, 'grips'), [])):
            self.changed(path, value)
        self.changed(('options', 0, 'bearers', 0, 'grips'), ['g0', 'nowhere'], 'options[0].bearers[0].grips')
        self.changed(('options', 0, 'bearers', 0, 'grips'), ['g0', 'g0'], 'options[0].bearers[0].grips')
        self.changed(('route', 'points', 0, 'move'), 'lift', 'route.points[0].move')
        self.changed(('route', 'points', 1, 'move'), 'start', 'route.points[1].move')

    def test_missing(self):
        for path in (('format',), ('version',), ('load',), ('load', 'grips'), ('route',), ('workers',), ('options',),
                     ('load', 'grips', 0, 'at_m'), ('load', 'parts', 0, 'shape'), ('options', 0, 'bearers', 0, 'grips'),
                     ('options', 0, 'bearers', 0, 'worker')):
            self.changed(path, None)

    def test_rules(self):
        made = alone()
        made['load']['parts'].append({'id': 'hole', 'shape': 'point', 'centre_m': [0, 0, 0], 'mass_kg': 40, 'void': True})
        self.refused(json.dumps(made), 'load')
        made = beam()
        made['options'][0]['bearers'][1]['grips'] = ['g0']
        self.refused(json.dumps(made), 'options[0].bearers[1].grips')
        made = beam()
        made['options'][0]['bearers'][1]['worker'] = 'wg0'
        self.refused(json.dumps(made), 'options[0].bearers[1].worker')
        for name in ('workers', 'options'):
            made = beam()
            made[name].append(copy.deepcopy(made[name][0]))
            self.refused(json.dumps(made), name + '[')
        made = beam()
        made['load']['grips'].append(dict(made['load']['grips'][0]))
        self.refused(json.dumps(made), 'load.grips[2].id')
        made = beam()
        made['options'][0]['bearers'][0]['effector'] = 'hook'
        self.refused(json.dumps(made), 'options[0].bearers[0].effector')
        made = alone()
        for g in made['load']['grips']:
            g['hands'] = 2
        self.refused(json.dumps(made), 'options[0].bearers[0]')
        tub = {'id': 't', 'shape': 'box', 'size_m': [.4, .3, .3], 'centre_m': [0, 0, .15], 'mass_kg': 2,
               'liquid': {'density_kg_m3': 1000, 'depth_m': .1}}
        for bad in (dict(tub, void=True), dict(tub, turn_deg=[0, 10, 0]), dict(tub, liquid={'density_kg_m3': 1000, 'depth_m': .31}),
                    {k: v for k, v in dict(tub, density_kg_m3=5).items() if k != 'mass_kg'}, dict(tub, shape='wedge'),
                    {'id': 't', 'shape': 'tube', 'radius_m': .1, 'inner_radius_m': .1, 'length_m': 1, 'axis': 'x',
                     'centre_m': [0, 0, 0], 'mass_kg': 2}):
            made = alone()
            made['load']['parts'].append(bad)
            self.refused(json.dumps(made), 'load.parts[1]')

    def test_no_document(self):
        good = json.dumps(alone())
        for text in ('', ' ', '{', '[]', 'null', '7', '"x"', good[:-1], good[:200], good + '}', good.replace('36.3', 'NaN'),
                     good.replace('36.3', 'Infinity'), good.replace('36.3', '1e999'), good.replace('36.3', '036.3'),
                     good.replace('36.3', '36,3'), good.replace('36.3', '0x24'), good.replace('"mass_kg": 36.3', '"mass_kg": 36.3, "mass_kg": 36.3'),
                     good.replace('"format"', "'format'"), '/* */' + good, '[' * 10 * 1024 * 1024, '{"a":' * (2 * 1024 * 1024)):
            self.refused(text)
        self.refused(good.encode().replace(b'"wg0"', b'"\xff\xfe"') if '"wg0"' in good else good.encode().replace(b'"w"', b'"\xff"'))
        self.refused(good.encode('utf-16'))


if __name__ == '__main__':
    unittest.main(argv=[sys.argv[0], *sys.argv[3:]], verbosity=2)
