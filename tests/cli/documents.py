# SPDX-License-Identifier: GPL-3.0-or-later
"""Random documents that are valid by docs/file-format.md; the same seed gives the same document."""
import math
import random


def near(r, low, high, digits=3):
    return round(r.uniform(low, high), digits)


def part(r, i):
    shape = r.choice(['box', 'cylinder', 'tube', 'sphere', 'hemisphere', 'cone', 'wedge', 'point', 'box'])
    p = {'id': 'p%d' % i, 'shape': shape, 'centre_m': [near(r, -.3, .3), near(r, -.15, .15), near(r, .05, .5)]}
    if shape in ('box', 'wedge'):
        p['size_m'] = [near(r, .2, .6), near(r, .2, .5), near(r, .1, .5)]
    elif shape != 'point':
        p['radius_m'] = near(r, .1, .25)
        if shape == 'tube':
            p['inner_radius_m'] = near(r, .02, .09)
        if shape in ('cylinder', 'tube', 'cone'):
            p['length_m'] = near(r, .2, .6)
        if shape != 'sphere':
            p['axis'] = r.choice('xyz')
    if shape == 'point' or r.random() < .7:
        p['mass_kg'] = near(r, 1, 16)
    else:
        p['density_kg_m3'] = near(r, 50, 400)
    if shape not in ('point', 'sphere') and r.random() < .3:
        p['turn_deg'] = [r.choice([0, 30, -45, 90, near(r, -180, 180)]) for _ in range(3)]
    if r.random() < .5:
        p['known'] = r.choice(['weighed', 'label', 'estimated'])
    if shape in ('box', 'cylinder') and 'mass_kg' in p and 'turn_deg' not in p and r.random() < .4:
        upright = shape == 'box' or p['axis'] == 'z'
        tall = p['size_m'][2] if shape == 'box' else p['length_m'] if upright else 2 * p['radius_m']
        p['liquid'] = {'density_kg_m3': near(r, 100, 400), 'depth_m': round(tall * r.uniform(.1, .9), 4)}
    return p


def load(r):
    parts = [{'id': 'body', 'shape': 'box', 'size_m': [near(r, .4, 1.2), near(r, .3, .6), near(r, .2, .5)],
              'centre_m': [0, 0, .25], 'mass_kg': near(r, 6, 30)}]
    parts += [part(r, i) for i in range(r.randint(0, 3))]
    if r.random() < .3:
        parts.append({'id': 'hole', 'shape': r.choice(['box', 'cylinder']), 'centre_m': [near(r, -.1, .1), 0, .25],
                      'size_m': [.1, .12, .1], 'radius_m': .06, 'length_m': .1, 'mass_kg': 2, 'void': True, 'axis': 'z'})
        for key in (['radius_m', 'length_m', 'axis'] if parts[-1]['shape'] == 'box' else ['size_m']):
            del parts[-1][key]
    return parts


def route(r, stairs):
    points = [{'x_m': 0, 'z_m': near(r, .3, .8), 'move': 'start'}]
    if r.random() < .5:
        points[0]['set_down'] = True
    x, z = 0.0, points[0]['z_m']
    if stairs:
        points.append({'x_m': 4, 'z_m': round(z + stairs, 3), 'move': 'carry', 'time_s': near(r, 5, 9)})
        x, z = 4.0, z + stairs
    for _ in range(r.randint(0 if stairs else 1, 3)):
        move = r.choice(['lift', 'carry', 'lower', 'slide', 'hold', 'carry'])
        p = {'move': move}
        if move == 'carry':
            x = round(x + r.choice([-1, 1, 1, 1]) * r.uniform(.5, 3), 3)
            z = round(z + r.uniform(-.05, .05), 3)
        elif move == 'lift':
            z = round(z + r.uniform(.05, .4), 3)
        elif move == 'lower':
            z = round(z - r.uniform(.02, .2), 3)
        elif move == 'slide':
            x = round(x + r.uniform(.1, .4), 3)
            p['held_up'] = r.choice([0, .5, .9, near(r, 0, 1)])
            p['slide_friction'] = near(r, .1, .5)
        p.update(x_m=x, z_m=z)
        if move == 'hold' or r.random() < .7:
            p['time_s'] = near(r, 1, 4)
        if r.random() < .2:
            p['hold_s'] = near(r, .5, 5)
        if r.random() < .2:
            p['precise'] = True
        if r.random() < .25:
            p['turn_deg'] = near(r, -40, 60, 0)
        if r.random() < .3:
            p['set_down'] = True
        if move in ('carry', 'lift') and r.random() < .25:
            p['pitch_deg'] = near(r, -12, 25, 1)
        points.append(p)
    for p in points:
        p['reach_m'] = near(r, .25, .6)
    return points


def suit(r, kind):
    s = {'id': kind, 'kind': kind, 'mass_kg': near(r, 3, 8) if kind != 'powered' else near(r, 18, 40),
         'release_self_s': 6, 'release_helper_s': near(r, 5, 15), 'wearer_stature_m': [1.5, 2], 'wearer_mass_kg': [45, 120],
         'stairs': r.random() < .5, 'slope_deg': 8}
    if kind != 'powered':
        s['torque'] = [{'angle_deg': 10, 'moment_Nm': 0}, {'angle_deg': 45, 'moment_Nm': near(r, 10, 30)},
                       {'angle_deg': 90, 'moment_Nm': near(r, 10, 40)}]
        return s
    loss = r.choice(['lock', 'descend', 'limp'])
    s.update(centre_m=[near(r, -.2, 0), near(r, .8, 1.1)], self_carried=near(r, .5, 1), on_power_loss=loss,
             gain={'hands': near(r, 2, 9), 'trunk': near(r, 2, 6)}, residual_N={'hands': near(r, 0, 20), 'trunk': near(r, 0, 40)},
             rating=[{'reach_m': .3, 'payload_kg': near(r, 35, 60)}, {'reach_m': .45, 'payload_kg': near(r, 15, 35)},
                     {'reach_m': near(r, .5, .7), 'payload_kg': near(r, 0, 15)}],
             hand_height_m=[near(r, .2, .6), near(r, 1, 1.6)], foot={'heel_m': .08, 'toe_m': .23, 'width_m': .13},
             walks_without_power=r.random() < .5, lockable=r.random() < .5,
             power={'idle_W': near(r, 30, 100), 'hold_W_per_Nm': near(r, .3, 1), 'lift_efficiency': near(r, .2, .5),
                    'battery_Wh': near(r, 100, 900), 'reserve': .15})
    if r.random() < .5:
        s['power']['swap_min'] = 3
    if loss == 'lock' and r.random() < .9:
        s['lock_s'] = near(r, 5, 900)
    if loss == 'descend' and r.random() < .9:
        s['sink_m_s'] = near(r, .05, .3)
    if loss == 'limp':
        s['self_carried_unpowered'] = near(r, 0, .8)
    if r.random() < .2:
        del s[r.choice(['gain', 'rating', 'hand_height_m', 'self_carried', 'residual_N', 'on_power_loss', 'walks_without_power',
                        'release_helper_s', 'power'])]
    return s


def document(seed):
    r = random.Random(seed)
    stairs = 0.0
    site = {'friction': .5} if r.random() < .8 else {}
    kind = r.random()
    if kind < .2:
        n, rise, going = r.randint(2, 6), near(r, .12, .19), near(r, .24, .32)
        if r.random() < .5:
            rise = -rise
        floor, z = [[-5, 0]], 0.0
        for i in range(n):
            x = round(1.5 + i * going, 4)
            floor += [[x, round(z, 4)], [x, round(z + rise, 4)]]
            z += rise
        site['floor'] = floor + [[12, round(z, 4)]]
        stairs = round(z, 4)
    elif kind < .35:
        site['floor'] = [[-5, 0], [.5, 0], [3, near(r, -.15, .15)], [8, .1]]
    if r.random() < .3:
        site['rating_kg'] = near(r, 100, 300, 0)
    crew = r.choice([1, 2, 2, 2, 3, 4, 4, 5, 6, 7, 8])
    grips, bearers, workers = [], [], []
    wide = .4 if r.random() < .5 else .0
    for i in range(crew):
        angle = 2 * math.pi * (i + .5) / crew
        for k in range(r.choice([1, 1, 2]) if crew < 6 else 1):
            if crew == 2 and not wide:
                at = [(-.6, .6)[i], near(r, -.02, .02), .3] if k == 0 else [(-.6, .6)[i], .2, .3]
            else:
                at = [round(.6 * math.cos(angle + .2 * k), 3), round(.5 * math.sin(angle + .2 * k), 3), near(r, .1, .5)]
            grips.append({'id': 'g%d%s' % (i, 'ab'[k]), 'at_m': at, 'kind': r.choice(['handle', 'edge', 'hook', 'strap', 'cradle'])})
            if grips[-1]['kind'] in ('hook', 'edge'):
                grips[-1]['inward'] = [0, 0, 1]
            if r.random() < .5:
                grips[-1]['coupling'] = r.choice(['good', 'fair', 'poor'])
        workers.append({'id': 'w%d' % i, 'sex': r.choice(['male', 'female']), 'stature_m': near(r, 1.55, 1.95),
                        'mass_kg': near(r, 52, 105, 1), 'age_years': r.randint(20, 62)})
        bearers.append({'id': 'b%d' % i, 'worker': 'w%d' % i, 'grips': [g['id'] for g in grips if g['id'][1:-1] == str(i)]})
        if r.random() < .2:
            bearers[-1]['stands'] = r.choice(['behind', 'ahead', 'left', 'right'])
    grips += [{'id': 'l', 'at_m': [near(r, -.05, .05), .25, .3], 'kind': r.choice(['handle', 'strap', 'hook'])},
              {'id': 'r', 'at_m': [near(r, -.05, .05), -.25, .3], 'kind': 'handle'}]
    suits = [suit(r, k) for k in ('powered', 'back_spring', 'arm_spring')]
    options = [{'id': 'crew', 'baseline': True, 'bearers': bearers}]
    if r.random() < .7:
        options.append({'id': 'suited', 'bearers': [{'id': 's', 'worker': 'w0', 'suit': r.choice(['powered', 'powered', 'back_spring',
                                                                                                'arm_spring']), 'grips': ['l', 'r']}]})
        if r.random() < .3:
            options[-1]['reach_m'] = near(r, .25, .5)
    if r.random() < .3:
        options[-1]['heading_deg'] = r.choice([90, 180, -90, near(r, -180, 180, 0)])
    made = {'format': 'handspike-assessment', 'version': 1, 'about': {'title': 'Random task %d' % seed},
            'load': {'parts': load(r), 'grips': grips}, 'site': site, 'route': {'points': route(r, stairs)},
            'workers': workers, 'suits': suits, 'options': options}
    if r.random() < .6:
        made['work'] = {'cycles_per_hour': r.choice([1, 12, 30, 60, 120]), 'hours': r.choice([.5, 1, 2, 7, 9]), 'recovery_h': r.choice([0, .6, 1, 2])}
    if r.random() < .5:
        made['policy'] = {'team_rule': r.choice(['none', 'gb', 'mil-std-1472', 'en-1005-2'])}
        if r.random() < .4:
            made['policy']['walking_factor'] = near(r, 1.0, 1.5)
        if r.random() < .4:
            made['policy']['near_ratio'] = near(r, .6, .95)
    if r.random() < .3:
        made['gates'] = [{'gate': 'Health advice', 'answer': r.choice(['yes', 'no', 'open'])}]
    if r.random() < .6:
        made['roles'] = [{'role': 'Opens the gate', 'before': 'b0', 'after': r.choice(['s', 'device: a door stop', ''])}]
    if r.random() < .3:
        made['criteria'] = r.sample(['niosh-1994', 'iso-11228-1', 'en-1005-2', 'mil-std-1472', 'gb-guideline', 'spine-compression'], 3)
    return made
