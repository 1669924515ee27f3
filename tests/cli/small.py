# SPDX-License-Identifier: GPL-3.0-or-later
"""Documents that the end-to-end tests start from: invented loads and people."""
import copy
import json


def crew():
    """A box between two people, a carry of 4 m."""
    return {
        'format': 'handspike-assessment', 'version': 1,
        'about': {'title': 'Box to the bench', 'task': 'Two people carry a box of 24 kg over 4 m'},
        'load': {'parts': [{'id': 'box', 'shape': 'box', 'size_m': [0.6, 0.4, 0.3], 'centre_m': [0, 0, 0.15],
                            'mass_kg': 24, 'known': 'weighed'}],
                 'grips': [{'id': 'front', 'at_m': [0.3, 0, 0.2], 'kind': 'handle'},
                           {'id': 'rear', 'at_m': [-0.3, 0, 0.2], 'kind': 'handle'}]},
        'site': {'friction': 0.6},
        'route': {'points': [{'x_m': 0, 'z_m': 0.5, 'move': 'start', 'set_down': True},
                             {'x_m': 0, 'z_m': 0.7, 'move': 'lift'},
                             {'x_m': 4, 'z_m': 0.7, 'move': 'carry', 'set_down': True}]},
        'workers': [{'id': 'w1'}, {'id': 'w2'}],
        'options': [{'id': 'crew', 'baseline': True,
                     'bearers': [{'id': 'A', 'worker': 'w1', 'grips': ['front']},
                                 {'id': 'B', 'worker': 'w2', 'grips': ['rear']}]}]}


def suited():
    """The same, and one person in a powered suit whose data are whole."""
    made = crew()
    made['load']['grips'] += [{'id': 'left', 'at_m': [0, 0.2, 0.2], 'kind': 'handle'},
                              {'id': 'right', 'at_m': [0, -0.2, 0.2], 'kind': 'handle'}]
    made['suits'] = [{
        'id': 's1', 'name': 'Invented suit', 'kind': 'powered', 'mass_kg': 60, 'release_self_s': 20, 'release_helper_s': 25,
        'donning_min': 8, 'wearer_stature_m': [1.6, 1.95], 'wearer_mass_kg': [50, 110], 'centre_m': [-0.1, 1.0],
        'self_carried': 0.9, 'self_carried_unpowered': 0.8, 'gain': {'hands': 8, 'trunk': 4},
        'residual_N': {'hands': 15, 'trunk': 40}, 'rating': [{'reach_m': 0.3, 'payload_kg': 45}, {'reach_m': 0.6, 'payload_kg': 30}],
        'hand_height_m': [0.3, 1.6], 'on_power_loss': 'lock', 'lock_s': 60, 'walks_without_power': True,
        'power': {'idle_W': 150, 'hold_W_per_Nm': 0.8, 'lift_efficiency': 0.3, 'battery_Wh': 900, 'reserve': 0.2, 'swap_min': 4}}]
    made['roles'] = [{'role': 'steers', 'before': 'B', 'after': 'A'}, {'role': 'rescues', 'before': 'B', 'after': 'foreman'}]
    made['options'].append({'id': 'suited', 'name': 'One person in the suit',
                            'bearers': [{'id': 'S', 'worker': 'w1', 'suit': 's1', 'grips': ['left', 'right']}]})
    return made


def line(document, title=None):
    made = copy.deepcopy(document)
    if title is not None:
        made['about']['title'] = title
    return json.dumps(made)
