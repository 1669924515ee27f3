#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""The worked cases come out as they were worked out by hand before they were entered: verdict, deciding check, figures at rest.
docs/scenarios.md tells what was expected and why the program differs where it does.
usage: test_scenarios.py PROGRAM EXAMPLES"""
import json
import os
import subprocess
import sys

G = 9.80665

# file, option: verdict, checks that must be among its reasons, suit alone or None
VERDICTS = [
    ('01-flat-pack-wardrobe', 'cross', 'not_supported', 'route.clearance', False),
    ('01b-flat-pack-on-edge', 'edge', 'with_conditions', 'suit.rating', True),
    ('02-rear-differential', 'suited', 'not_supported', 'suit.rating', False),
    ('02-rear-differential', 'rail', 'with_conditions', 'suit.rating', True),
    ('03-medicine-fridge-upstairs', 'suited', 'not_supported', 'suit.scope suit.power-loss suit.rating', False),
    ('03-medicine-fridge-upstairs', 'today', 'not_supported', 'strength spine.compression', False),
    ('04-scenery-flat', 'suited', 'not_supported', 'roles', False),
    ('05-open-juice-tub', 'across', 'not_supported', 'slosh', False),
    ('05b-juice-tub-with-lid', 'across', 'with_conditions', 'suit.rating', True),
    ('06-marble-relief', 'pads', 'not_supported', 'grip.hold', False),
    ('06-marble-relief', 'cradle', 'with_conditions', 'suit.power-loss', True),
    ('07-paper-roll', 'suited', 'with_conditions', 'suit.power-loss', True),
    ('08-insulating-glass', 'suited', 'with_conditions', 'suit.rating', True),
    ('09-hose-reel-apron', 'medium', 'not_supported', 'suit.rating', False),
    ('09-hose-reel-apron', 'large', 'undecided', 'suit.scope floor.friction gates', False),
    ('10-two-man-ladle', 'small', 'not_supported', 'suit.power-loss roles slosh suit.rating', False),
    ('10-two-man-ladle', 'large', 'not_supported', 'roles slosh suit.rating', False),
    ('11-battery-module', 'suited', 'not_supported', 'suit.rating', False),
    ('12-glass-boxes', 'suited', 'with_conditions', 'suit.rating suit.energy', True),
]


def first(results, option, bearer=0):
    return results[option]['samples'][0]['bearers'][bearer]


def last(results, option, bearer=0):
    return results[option]['samples'][-1]['bearers'][bearer]


def share_kg(results, option, bearer):
    return first(results, option, bearer)['share_N'] / G


def finding(results, option, check, key='value'):
    return next(f for f in results[option]['findings'] if f['check'] == check)[key]


def break_even(results, option, quantity, check):
    return next(b['value'] for b in results['comparison']['break_even']
                if b['option'] == option and b['quantity'] == quantity and b['check'] == check)


def greatest_at(results, option, route):
    return max(b['share_N'] for s in results[option]['samples'] if abs(s['route'] - route) < 1e-9 for b in s['bearers'])


# file, what, figure by hand, half of its last digit, how the program says it
FIGURES = [
    ('01-flat-pack-wardrobe', 'front bearer, kg', 27.1, .05, lambda r: share_kg(r, 'today', 0)),
    ('01-flat-pack-wardrobe', 'rear bearer, kg', 19.4, .05, lambda r: share_kg(r, 'today', 1)),
    ('01-flat-pack-wardrobe', 'index of the front bearer, setting down', 2.21, .005, lambda r: finding(r, 'today', 'lift.niosh-1994')),
    ('01-flat-pack-wardrobe', 'felt, carried crosswise, N', 80.6, .05, lambda r: first(r, 'cross')['felt_force_N']),
    ('01-flat-pack-wardrobe', 'payload at 0.45 m, kg', 45.5, .05, lambda r: finding(r, 'cross', 'suit.rating', 'limit')),
    ('01-flat-pack-wardrobe', 'width at the door, m', 2.10, .005, lambda r: finding(r, 'cross', 'route.clearance')),
    ('01b-flat-pack-on-edge', 'felt on edge, N', 72.0, .05, lambda r: first(r, 'edge')['felt_force_N']),
    ('01b-flat-pack-on-edge', 'payload at 0.30 m, kg', 56.7, .05, lambda r: finding(r, 'edge', 'suit.rating', 'limit')),
    ('02-rear-differential', 'tail, kg', 29.4, .05, lambda r: share_kg(r, 'today', 0)),
    ('02-rear-differential', 'nose, kg', 19.1, .05, lambda r: share_kg(r, 'today', 1)),
    ('02-rear-differential', 'felt at the pallet, N', 74.5, .05, lambda r: first(r, 'suited')['felt_force_N']),
    ('02-rear-differential', 'payload at the bench, kg', 39.2, .05, lambda r: finding(r, 'suited', 'suit.rating', 'limit')),
    ('02-rear-differential', 'felt at the bench, N', 154.8, .05, lambda r: last(r, 'suited')['felt_force_N']),
    ('02-rear-differential', 'reach that turns it, m', .416, .0006, lambda r: break_even(r, 'suited', 'reach_m', 'suit.rating')),
    ('03-medicine-fridge-upstairs', 'lower bearer level, kg', 33.5, .05, lambda r: share_kg(r, 'today', 0)),
    ('03-medicine-fridge-upstairs', 'lower bearer at 25 degrees, kg', 45.1, .05, lambda r: greatest_at(r, 'today', 4) / G),
    ('04-scenery-flat', 'one, kg', 21.2, .05, lambda r: share_kg(r, 'today', 0)),
    ('04-scenery-flat', 'the other, kg', 19.8, .05, lambda r: share_kg(r, 'today', 1)),
    ('04-scenery-flat', 'felt, N', 65.3, .05, lambda r: first(r, 'suited')['felt_force_N']),
    ('04-scenery-flat', 'payload, kg', 53.3, .05, lambda r: finding(r, 'suited', 'suit.rating', 'limit')),
    ('05-open-juice-tub', 'each, kg', 14.0, .05, lambda r: share_kg(r, 'today', 0)),
    ('05-open-juice-tub', 'index each', 1.25, .005, lambda r: finding(r, 'today', 'lift.niosh-1994')),
    ('05-open-juice-tub', 'index alone', 2.51, .005, lambda r: finding(r, 'unaided', 'lift.niosh-1994')),
    ('05-open-juice-tub', 'along the long side, Hz', .95, .005, lambda r: finding(r, 'across', 'slosh')),
    ('05-open-juice-tub', 'sway, Hz', .95, .005, lambda r: finding(r, 'across', 'slosh', 'limit')),
    ('05-open-juice-tub', 'felt, N', 74.8, .05, lambda r: first(r, 'across')['felt_force_N']),
    ('05-open-juice-tub', 'payload with the long side forward, kg', 30.3, .05, lambda r: finding(r, 'along', 'suit.rating', 'limit')),
    ('05b-juice-tub-with-lid', 'payload with the long side across, kg', 35.7, .05, lambda r: finding(r, 'across', 'suit.rating', 'limit')),
    ('06-marble-relief', 'each of two, kg', 21.6, .05, lambda r: share_kg(r, 'today', 0)),
    ('06-marble-relief', 'what the stone bears, N', 350, .5, lambda r: finding(r, 'pads', 'grip.hold', 'limit')),
    ('06-marble-relief', 'felt in the cradle, N', 68, .5, lambda r: first(r, 'cradle')['felt_force_N']),
    ('07-paper-roll', 'index of the crew', 1.71, .005, lambda r: finding(r, 'today', 'lift.niosh-1994')),
    ('07-paper-roll', 'index alone', 3.42, .005, lambda r: finding(r, 'bare', 'lift.niosh-1994')),
    ('07-paper-roll', 'felt, N', 62.1, .05, lambda r: first(r, 'suited')['felt_force_N']),
    ('07-paper-roll', 'floor, N', 1524.0, .05, lambda r: first(r, 'suited')['ground_force_N']),
    ('07-paper-roll', 'Wh an hour, near', 93, 1, lambda r: r['suited']['totals']['energy_Wh_per_h']),
    ('08-insulating-glass', 'felt, N', 68.9, .05, lambda r: first(r, 'suited')['felt_force_N']),
    ('08-insulating-glass', 'payload, kg', 56.7, .05, lambda r: finding(r, 'suited', 'suit.rating', 'limit')),
    ('09-hose-reel-apron', 'rear, kg', 26.9, .05, lambda r: share_kg(r, 'today', 0)),
    ('09-hose-reel-apron', 'front, kg', 19.1, .05, lambda r: share_kg(r, 'today', 1)),
    ('09-hose-reel-apron', 'felt, medium suit, N', 207.5, .05, lambda r: first(r, 'medium')['felt_force_N']),
    ('09-hose-reel-apron', 'felt, large suit, N', 71.4, .05, lambda r: first(r, 'large')['felt_force_N']),
    ('10-two-man-ladle', 'rear, kg', 19.4, .05, lambda r: share_kg(r, 'today', 0)),
    ('10-two-man-ladle', 'front, kg', 21.6, .05, lambda r: share_kg(r, 'today', 1)),
    ('10-two-man-ladle', 'felt, small suit, N', 292, .5, lambda r: first(r, 'small')['felt_force_N']),
    ('10-two-man-ladle', 'in the hands without power, N', 402, .5, lambda r: first(r, 'small')['power_lost']['felt_force_N']),
    ('10-two-man-ladle', 'felt, large suit, N', 104, .5, lambda r: first(r, 'large')['felt_force_N']),
    ('10-two-man-ladle', 'of the liquid, Hz', 1.77, .005, lambda r: finding(r, 'small', 'slosh')),
    ('11-battery-module', 'index at the slot', 2.19, .005, lambda r: finding(r, 'today', 'lift.niosh-1994')),
    ('11-battery-module', 'index alone', 4.38, .005, lambda r: finding(r, 'unaided', 'lift.niosh-1994')),
    ('11-battery-module', 'felt in the slot, N', 402, .5, lambda r: last(r, 'suited')['felt_force_N']),
    ('11-battery-module', 'on one plate at rest, N', 1677, .5, lambda r: last(r, 'suited')['ground_force_N']),
    ('11-battery-module', 'a man and half the load, N', 1103, .5, lambda r: last(r, 'today', 0)['ground_force_N']),
    ('12-glass-boxes', 'index of the crew', 1.62, .005, lambda r: finding(r, 'today', 'lift.niosh-1994')),
    ('12-glass-boxes', 'index alone', 3.24, .005, lambda r: finding(r, 'unaided', 'lift.niosh-1994')),
    ('12-glass-boxes', 'felt at rest, N', 74.9, .05, lambda r: first(r, 'suited')['felt_force_N']),
    ('12-glass-boxes', 'peak of the lift, kg', 33.5, .05, lambda r: finding(r, 'suited', 'suit.rating')),
    ('12-glass-boxes', 'payload, kg', 33.6, .05, lambda r: finding(r, 'suited', 'suit.rating', 'limit')),
    ('12-glass-boxes', 'a day, kg', 7840, .5, lambda r: finding(r, 'suited', 'day.mass')),
    # where the program differs, with its own figure: docs/scenarios.md says why
    ('02-rear-differential', 'index of the tail, trunk straight at the pallet', 2.83, .006, lambda r: finding(r, 'today', 'lift.niosh-1994')),
    ('06-marble-relief', 'squeeze with the lift, N', 655, .5, lambda r: finding(r, 'pads', 'grip.hold')),
    ('06-marble-relief', 'index at the rail, setting down', 1.71, .005, lambda r: finding(r, 'today', 'lift.niosh-1994')),
    ('08-insulating-glass', 'squeeze with the lift, N', 575, .5, lambda r: finding(r, 'suited', 'grip.hold')),
    ('12-glass-boxes', 'Wh an hour', 79.2, .05, lambda r: r['suited']['totals']['energy_Wh_per_h']),
]


def main():
    program, examples = sys.argv[1:3]
    known, failed = {}, 0

    def results(name):
        if name not in known:
            path = os.path.join(examples, name + '.handspike.json')
            out = json.loads(subprocess.run([program, 'assess', path, '--json'], check=True, capture_output=True).stdout)
            known[name] = {**{o['id']: o for o in out['options']}, 'comparison': out['comparison']}
        return known[name]

    for name, option, status, checks, suit_only in VERDICTS:
        verdict = results(name)[option]['verdict']
        lacking = set(checks.split()) - set(verdict['reasons'])
        if verdict['status'] != status or lacking or verdict['suit_only'] != suit_only:
            print(f'# {name} {option}: {verdict}, wanted {status} by {checks}, suit only {suit_only}')
            failed += 1
    for name, what, wanted, half, ask in FIGURES:
        got = ask(results(name))
        if not abs(got - wanted) <= half * 1.0001:
            print(f'# {name}: {what}: {got}, wanted {wanted}')
            failed += 1
    print(f'{"not " if failed else ""}ok 1 - {len(VERDICTS)} verdicts and {len(FIGURES)} figures of {len(known)} cases')
    print('1..1')
    return 1 if failed else 0


if __name__ == '__main__':
    sys.exit(main())
