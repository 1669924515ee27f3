# SPDX-License-Identifier: GPL-3.0-or-later
"""Compares the results of the program with the oracle; `compare(document, results)` gives a list of differences."""
import math

import oracle
from oracle import np

G = oracle.G
TOP = {'format', 'version', 'document', 'load', 'options', 'comparison', 'assumptions', 'cautions'}
FINDING = {'check', 'bearer', 'route', 't_s', 'value', 'limit', 'unit', 'ratio', 'status', 'why', 'confidence', 'source', 'text',
           'remedy', 'working'}
BEARER = {'id', 'share_N', 'share_range_N', 'hand_force_N', 'hand_push_N', 'felt_force_N', 'suit_force_N', 'ground_force_N',
          'balance_margin_m', 'resultant_m', 'base_m', 'l5s1', 'pose', 'joints', 'power_lost'}
KEYS = {
    'document': {'title', 'digest'}, 'load': {'mass_kg', 'centre_m', 'inertia_kg_m2'},
    'option': {'id', 'name', 'baseline', 'samples', 'findings', 'totals', 'verdict'},
    'sample': {'t_s', 'route', 'load', 'combined', 'grips', 'bearers'},
    'sample load': {'x_m', 'z_m', 'pitch_deg', 'acceleration_m_s2'}, 'combined': {'mass_kg', 'centre_m'},
    'pose': {'ankle', 'knee', 'hip', 'l5s1', 'shoulder', 'elbow', 'hand', 'neck'},
    'joints': {'ankle', 'knee', 'hip', 'l5s1', 'shoulder', 'elbow'}, 'joint': {'moment_Nm', 'strength_Nm', 'utilisation'},
    'l5s1': {'moment_Nm', 'compression_N', 'shear_N'}, 'power_lost': {'state', 'felt_force_N', 'hold_s', 'needed_s'},
    'totals': {'energy_Wh_per_h', 'metabolic_W', 'mass_moved_kg_per_h', 'worker_minutes_per_h'},
    'verdict': {'status', 'suit_only', 'reasons', 'conditions'}}
CHECKS = set('''share load.polygon load.weighing grip.hold lift.niosh-1994 lift.niosh-composite lift.iso-11228-1 lift.en-1005-2
lift.mil-std-1472 lift.gb-guideline spine.compression spine.shear strength balance suit.rating suit.scope suit.power-loss
suit.energy hold.endurance placing slosh floor.load floor.friction route.clearance route.sight site.wind site.heat day.mass
day.energy day.spine loss.bearer rescue roles gates data'''.split())


class Comparison:
    def __init__(self, document, results):
        self.document, self.results, self.wrong, self.counted = document, results, [], 0

    def say(self, *words):
        self.wrong.append(' '.join(str(w) for w in words))

    def same(self, where, got, want, tolerance=1e-6):
        self.counted += 1
        if want is None or got is None:
            if want is not got:
                self.say(where, 'got', got, 'want', want)
            return
        if not abs(got - want) <= tolerance * max(1.0, abs(want)):
            self.say(where, 'got', got, 'want', want)

    def keys(self, where, kind, got, need=()):
        extra, lacks = set(got) - KEYS[kind], set(need) - set(got)
        if extra or lacks:
            self.say(where, 'extra', sorted(extra), 'lacks', sorted(lacks))

    def whole(self, value, where='$'):
        if value is None or (isinstance(value, float) and not math.isfinite(value)):
            self.say(where, 'is', value)
        elif isinstance(value, dict):
            for k, v in value.items():
                self.whole(v, where + '.' + k)
        elif isinstance(value, list):
            for i, v in enumerate(value):
                self.whole(v, '%s[%d]' % (where, i))

    def run(self):
        d, r = self.document, self.results
        self.whole(r)
        if set(r) - {'doubt'} != TOP:
            self.say('top keys', sorted(set(r) ^ TOP))
        self.keys('document', 'document', r['document'], ('digest',))
        self.keys('load', 'load', r['load'])
        if r['document']['digest'] != oracle.digest(d):
            self.say('digest')
        if not d['load'].get('weighings'):
            mass, centre, inertia = oracle.from_parts(d['load']['parts'])
            self.same('mass', r['load']['mass_kg'], mass, 1e-8)
            for i in range(3):
                self.same('centre', r['load']['centre_m'][i], centre[i], 1e-8)
                for j in range(3):
                    self.same('inertia', r['load']['inertia_kg_m2'][i][j], inertia[i][j])
        ids = [o['id'] for o in d['options']]
        for option in r['options']:
            self.keys(option['id'], 'option', option, KEYS['option'] - {'name'})
            self.findings(option)
            if option['id'] in ids and d['load'].get('parts') and not d['load'].get('weighings'):
                self.option(option, oracle.Option(d, d['options'][ids.index(option['id'])]))
        alone = any(len(o['bearers']) == 1 and 'suit' not in o['bearers'][0] for o in d['options'])
        suited = any('suit' in b for o in d['options'] for b in o['bearers'])
        if ('unaided' in [o['id'] for o in r['options']]) != (suited and not alone):
            self.say('unaided option')
        self.verdicts()
        return self.wrong

    # findings and verdicts
    def findings(self, option):
        policy = self.document.get('policy', {})
        near = policy.get('near_ratio', .9)
        for f in option['findings']:
            where = option['id'] + ' ' + f['check']
            if set(f) - FINDING or not {'check', 'status', 'why', 'confidence', 'text', 'working'} <= set(f):
                self.say(where, 'keys', sorted(f))
            if f['check'] not in CHECKS or not f['text'].strip():
                self.say(where, 'id or text')
            if (f['status'] == 'not_judged') != (f['why'] in ('scope', 'missing')):
                self.say(where, f['status'], f['why'])
            if f['status'] == 'beyond' and f['confidence'] == 'memory':
                self.say(where, 'memory beyond')
            if 'ratio' in f:
                if f['status'] == 'not_judged':
                    self.say(where, 'ratio of what is not judged')
                edge = .75 if f['check'] == 'balance' else near
                if f['ratio'] > 1 + 1e-9 and f['status'] == 'within':
                    self.say(where, 'within at', f['ratio'])
                if f['ratio'] > edge + 1e-9 and f['status'] == 'within':
                    self.say(where, 'not near at', f['ratio'])
                if f['ratio'] <= 1 and f['status'] == 'beyond' and f['check'] not in ('suit.power-loss', 'balance'):
                    self.say(where, 'beyond at', f['ratio'])
            if f['confidence'] != 'memory' and f.get('ratio', 0) > 1 + 1e-9 and f['status'] == 'near' and f['check'] not in (
                    'load.polygon', 'strength', 'spine.compression', 'spine.shear', 'suit.energy', 'suit.power-loss', 'route.sight', 'lift.gb-guideline', 'lift.mil-std-1472'):
                self.say(where, 'near at', f['ratio'], f['text'])
            if f['why'] == 'missing' and f['check'] not in ('gates', 'roles') and not any(g['check'] == 'data' for g in option['findings']):
                self.say(where, 'missing, and no data finding')
        names = [f['check'] for f in option['findings']]
        if len(names) != len(set(names)):
            self.say(option['id'], 'check twice', names)

    def verdicts(self):
        d, r = self.document, self.results
        gates = [g.get('answer', 'open') for g in d.get('gates', [])]
        base = r['comparison']['baseline']
        by = {o['id']: o for o in r['options']}
        ratio = {i: {f['check']: f.get('ratio') for f in o['findings']} for i, o in by.items()}
        crew = {o['id']: len(o['bearers']) for o in d['options']}
        for i, o in by.items():
            f = [x for x in o['findings'] if x['check'] != 'loss.bearer']
            v = o['verdict']
            self.keys(i, 'verdict', v, KEYS['verdict'])
            if not set(v['reasons']) <= {x['check'] for x in f}:
                self.say(i, 'reasons', v['reasons'])
            if any(x['status'] == 'beyond' for x in f) or 'no' in gates:
                want = ['not_supported']
            elif any(x['why'] == 'missing' for x in f) or 'open' in gates:
                want = ['undecided']
            elif any(x['status'] == 'near' for x in f) or any(
                    ratio[i].get(c) is not None and ratio[base].get(c) is not None and ratio[i][c] > ratio[base][c] * (1 + 1e-9)
                    for c in ('strength', 'spine.compression', 'spine.shear', 'balance', 'grip.hold')) or any(
                    x.get('after' if crew.get(i, 1) < crew[base] else 'before', '').startswith('device:') for x in d.get('roles', [])):
                want = ['with_conditions']
            else:
                want = ['supported', 'with_conditions'] if any(x['check'] == 'rescue' for x in f) else ['supported']
            if v['status'] not in want:
                self.say(i, 'verdict', v['status'], 'want', want, [(x['check'], x['status']) for x in f if x['status'] != 'within'])
            if v['status'] == 'with_conditions' and not v['conditions']:
                self.say(i, 'no condition is stated')
            if v['suit_only'] and v['status'] not in ('supported', 'with_conditions'):
                self.say(i, 'suit_only')

    # samples
    def option(self, got, o):
        motion, k = o.motion, 0
        samples = got['samples']
        want = [(p, t) for p in motion.pieces for t in (p.start, p.start + p.length)]
        for p, t in want:
            route = p.index + 1.0 if p.dwell else p.index + (t - p.start) / p.length
            if sum(abs(s['t_s'] - t) < 1e-9 and abs(s['route'] - route) < 1e-9 for s in samples) < (1 if t in (0, motion.end) else 2):
                self.say(got['id'], 'no sample (or one too few) at', t, route)
        most, worst, tip, kg, shared = {}, {}, 0.0, 0.0, {}
        for i, s in enumerate(samples):
            while k + 1 < len(motion.pieces) and (s['t_s'] > motion.pieces[k].start + motion.pieces[k].length + 1e-9 or (
                    i and abs(samples[i - 1]['t_s'] - s['t_s']) < 1e-12 and abs(s['t_s'] - motion.pieces[k].start - motion.pieces[k].length) < 1e-9)):
                k += 1
            piece = motion.pieces[k]
            state = o.state(piece, s['t_s'])
            tip = max(tip, self.sample('%s %.4f' % (got['id'], s['route']), s, state, o, most, worst))
        f = {x['check']: x for x in got['findings']}
        self.same(got['id'] + ' load.polygon', f['load.polygon'].get('value'), tip, 1e-5)
        if f['share'].get('value', 0) > max(v[0] for v in most.values()) * (1 + 1e-6):
            self.say(got['id'], 'share above the greatest')
        if 'value' in f['share'] and f['share']['status'] == 'not_judged':
            self.same(got['id'] + ' share', f['share']['value'], max(v[0] for v in most.values()), 1e-5)
        if 'rating_kg' in o.site and 'rating_kPa' not in o.site:
            self.same(got['id'] + ' floor.load', f['floor.load']['value'], max(v[1] for v in most.values()) / G, 1e-5)
        if o.reach_known and 'lift.niosh-1994' in f and o.work.get('hours', 1) <= 8:
            n = [v for v in o.niosh().values() if v is not None]
            if n and max(n) < math.inf:
                self.same(got['id'] + ' niosh', f['lift.niosh-1994'].get('value'), max(n), 1e-6)
            elif n:
                self.same(got['id'] + ' niosh', f['lift.niosh-1994'].get('value'), None)
        if worst and 'suit.rating' in f and max(worst.values())[0] is not None:
            top = max(worst.values())
            if 'ratio' in f['suit.rating']:
                self.same(got['id'] + ' suit.rating', f['suit.rating']['value'], top[1], 1e-6)
                self.same(got['id'] + ' suit.rating limit', f['suit.rating']['limit'], top[2], 1e-6)
            elif top[0] < math.inf:
                self.say(got['id'], 'suit.rating without ratio', f['suit.rating'], top)

    def sample(self, where, s, state, o, most, worst):
        self.keys(where, 'sample', s, KEYS['sample'])
        self.keys(where, 'sample load', s['load'], KEYS['sample load'])
        self.same(where + ' x', s['load']['x_m'], state['x'])
        self.same(where + ' z', s['load']['z_m'], state['z'])
        self.same(where + ' pitch', math.radians(s['load']['pitch_deg']), state['pitch'])
        self.same(where + ' ax', s['load']['acceleration_m_s2'][0], state['ax'])
        self.same(where + ' az', s['load']['acceleration_m_s2'][1], state['az'])
        forces, couple, at, places = o.shares(state)
        held = (1 - state['held_up']) * o.mass * (G + s['load']['acceleration_m_s2'][1])
        self.same(where + ' sum of shares', sum(b['share_N'] for b in s['bearers']), held)
        for g in s['grips']:
            self.same(where + ' grip ' + g['id'], g['up_N'], forces[o.used.index(g['id'])], 2e-6)
            if g['up_N'] < -1e-9:
                self.say(where, 'pulls down', g)
        mass = o.mass
        for b, bearer in zip(s['bearers'], o.bearers):
            w = where + ' ' + b['id']
            if set(b) - BEARER or b['id'] != bearer['id']:
                self.say(w, 'keys', sorted(set(b) - BEARER))
            worker, suit = o.workers[bearer['worker']], o.suits.get(bearer.get('suit'))
            mass += worker['mass_kg'] + (suit['mass_kg'] if suit else 0)
            mine = [o.used.index(g) for g in bearer['grips']]
            share = float(sum(forces[i] for i in mine))
            self.same(w + ' share', b['share_N'], share, 2e-6)
            low, high = b['share_range_N']
            if not low - 1e-6 <= b['share_N'] <= high + 1e-6:
                self.say(w, 'share outside its range', low, b['share_N'], high)
            if s['t_s'] == 0 or abs(s['route'] % 1) < 1e-9:
                if len(places) <= 10 and held > 1:
                    want = oracle.range_of(places[:, :2], at, held, mine)
                    self.same(w + ' least', low, want[0], 1e-5)
                    self.same(w + ' most', high, want[1], 1e-5)
            factor = 1.0
            if o.reach_known:
                factor = o.walking(bearer, state)
                self.same(w + ' hand force', b['hand_force_N'], share * factor, 2e-6)
                self.same(w + ' ground', b['ground_force_N'], factor * (
                    (worker['mass_kg'] + (suit['mass_kg'] if suit else 0)) * G + share), 2e-6)
                felt = o.felt(bearer, state, b['hand_force_N'])
                self.same(w + ' felt', b.get('felt_force_N'), felt, 2e-6)
                if felt is not None:
                    self.same(w + ' suit force', b['suit_force_N'], b['hand_force_N'] - felt, 2e-6)
                if suit and suit['kind'] == 'powered' and all(n in suit for n in ('rating', 'hand_height_m')):
                    kilos, pay = b['hand_force_N'] / G, o.payload(suit, state['reach'])
                    inside = suit['hand_height_m'][0] - 1e-9 <= o.hand_height(bearer, state) <= suit['hand_height_m'][1] + 1e-9
                    ratio = kilos / pay if pay > 0 and inside else math.inf
                    if ratio > worst.get(b['id'], (-1,))[0]:
                        worst[b['id']] = (ratio, kilos, pay)
            friction = o.points[state['piece'].index].get('slide_friction', 0) if state['move'] == 'slide' and not state['piece'].dwell else 0
            if friction == 0:
                self.same(w + ' push', b['hand_push_N'], o.mass * state['ax'] * len(mine) / len(o.used), 2e-6)
            a = most.setdefault(b['id'], [0.0, 0.0])
            a[0], a[1] = max(a[0], b['share_N']), max(a[1], b['ground_force_N'])
            self.body(w, b, bearer, worker, suit, state, o, couple)
            self.loss(w, b, bearer, suit, s, state, o)
        self.same(where + ' combined', s['combined'].get('mass_kg'), mass, 1e-9)
        return couple

    def body(self, w, b, bearer, worker, suit, state, o, couple):
        if 'pose' not in b:
            return
        self.keys(w, 'pose', b['pose'], KEYS['pose'])
        self.keys(w, 'joints', b['joints'])
        margin(self, w, b, worker, suit, state)
        still = abs(state['ax']) + abs(state['az']) + state['v'] < 1e-9 and abs(b['hand_push_N']) < 1e-9
        if suit or not still or couple > 1e-9:
            return
        kneels = bool(o.option.get('stance') and o.option['stance'] != 'standing')
        if kneels:
            return
        moments, weight = oracle.joints_at_rest(worker, b['pose'], b['hand_force_N'])
        for j, m in b['joints'].items():
            self.keys(w + j, 'joint', m, ('moment_Nm',))
            self.same(w + ' moment ' + j, m['moment_Nm'], moments[j], 1e-4)
        self.same(w + ' l5s1', b['l5s1']['moment_Nm'], moments['l5s1'], 1e-4)
        c, q = oracle.disc(moments['l5s1'], weight + b['hand_force_N'], b['pose'])
        self.same(w + ' compression', b['l5s1']['compression_N'], c, 1e-4)
        self.same(w + ' shear', b['l5s1']['shear_N'], q, 1e-4)

    def loss(self, w, b, bearer, suit, s, state, o):
        lost = b.get('power_lost')
        if lost is None:
            return
        self.keys(w, 'power_lost', lost, ('state',))
        if not suit or suit['kind'] != 'powered':
            if lost['state'] != 'none':
                self.say(w, 'power lost without power', lost)
            return
        how = suit.get('on_power_loss')
        if how is None:
            return
        T = o.to_set_down(state['piece'], s['t_s'])
        state_name = {'lock': 'locked', 'descend': 'descending', 'limp': 'limp'}[how]
        if lost['state'] != state_name:
            self.say(w, lost)
        self.same(w + ' lost felt', lost.get('felt_force_N'), b['hand_force_N'] if how == 'limp' else 0.0, 1e-9)
        walks = suit.get('walks_without_power')
        if how == 'lock':
            self.same(w + ' lock', lost.get('hold_s'), suit.get('lock_s'))
            if walks is not None:
                self.same(w + ' lock needed', lost.get('needed_s'), T if walks else suit.get('release_helper_s'))
        elif how == 'limp' and walks is not None and o.reach_known:
            if walks:
                self.same(w + ' limp needed', lost.get('needed_s'), T)
            elif not o.floor.risers and len(o.floor.points) == 1:
                self.same(w + ' limp needed', lost.get('needed_s'), max(1.0, o.underside(state) / .35))
        elif how == 'descend' and len(o.floor.points) == 1 and 'sink_m_s' in suit:
            want = max(0.0, o.underside(state)) / suit['sink_m_s']
            self.same(w + ' sink', lost.get('needed_s'), want)
            self.same(w + ' sink', lost.get('hold_s'), lost.get('needed_s'))


def margin(c, w, b, worker, suit, state):
    """Margin to the 0.8 hull and the rear cut, from the resultant and the base that the results give (standing still)."""
    if not b.get('base_m') or state['v'] > 0 or 'balance_margin_m' not in b or len(b['base_m']) < 3:
        return
    base = oracle.hull(b['base_m'])
    twice = [(p[0] * q[1] - p[1] * q[0]) for p, q in zip(base, base[1:] + base[:1])]
    area = sum(twice)
    middle = sum((p + q) * t for p, q, t in zip(base, base[1:] + base[:1], twice)) / (3 * area)
    small = [middle + .8 * (p - middle) for p in base]
    at, least = np.array(b['resultant_m'], float), math.inf
    for p, q in zip(small, small[1:] + small[:1]):
        d = q - p
        least = min(least, float(d[0] * (at[1] - p[1]) - d[1] * (at[0] - p[0])) / float(np.hypot(*d)))
    c.counted += 1
    if b['balance_margin_m'] > least + 1e-6:
        c.say(w, 'margin', b['balance_margin_m'], 'is more than that to the 0.8 hull', least)


def compare(document, results):
    c = Comparison(document, results)
    return c.run(), c.counted
