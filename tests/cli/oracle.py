# SPDX-License-Identifier: GPL-3.0-or-later
"""The file format read a second time, in plain Python, to compare the program with.

Nothing here is taken from the program: only what docs/file-format.md and docs/contract-readings.md say.
Published figures: segments de Leva 1996 table 4, links Drillis & Contini 1966, lifting equation NIOSH 94-110.
"""
import hashlib
import itertools
import json
import math
import os

os.environ.setdefault('OPENBLAS_NUM_THREADS', '1')  # matrices of a few rows

import numpy as np

G = 9.80665


# ---- digest ---------------------------------------------------------------------------------------------------------

def number_es6(x):
    """A number as ECMAScript prints it (RFC 8785, section 3.2.2.3)."""
    if isinstance(x, int):
        x = float(x)
    if x == 0:
        return '0'
    sign, x = ('-', -x) if x < 0 else ('', x)
    mantissa, _, exponent = repr(x).partition('e')
    whole, _, part = mantissa.partition('.')
    part = '' if part == '0' else part
    digits = (whole + part).lstrip('0')
    point = int(exponent or 0) + len(whole) - (len(whole + part) - len((whole + part).lstrip('0')))
    digits = digits.rstrip('0')
    k, n = len(digits), point
    if k <= n <= 21:
        return sign + digits + '0' * (n - k)
    if 0 < n <= 21:
        return sign + digits[:n] + '.' + digits[n:]
    if -6 < n <= 0:
        return sign + '0.' + '0' * -n + digits
    e = n - 1
    tail = 'e' + ('+' if e > 0 else '-') + str(abs(e))
    return sign + digits[0] + ('.' + digits[1:] if k > 1 else '') + tail


def canonical(value):
    if value is None or isinstance(value, bool):
        return json.dumps(value)
    if isinstance(value, (int, float)):
        return number_es6(value)
    if isinstance(value, str):
        out = '"'
        for c in value:
            short = {'"': '\\"', '\\': '\\\\', '\b': '\\b', '\f': '\\f', '\n': '\\n', '\r': '\\r', '\t': '\\t'}.get(c)
            out += short or ('\\u%04x' % ord(c) if ord(c) < 32 else c)
        return out + '"'
    if isinstance(value, list):
        return '[' + ','.join(canonical(v) for v in value) + ']'
    keys = sorted(value, key=lambda k: k.encode('utf-16-be'))
    return '{' + ','.join(canonical(k) + ':' + canonical(value[k]) for k in keys) + '}'


def digest(document):
    bare = {k: v for k, v in document.items() if k != 'signatures'}
    return hashlib.sha256(canonical(bare).encode('utf-8')).hexdigest()


# ---- load -----------------------------------------------------------------------------------------------------------

AXIS = {'x': np.array([[0, 0, 1], [1, 0, 0], [0, 1, 0.]]),
        'y': np.array([[0, 1, 0], [0, 0, 1], [1, 0, 0.]]), 'z': np.eye(3)}


def turned(degrees):
    """Rotations about the fixed axes x, then y, then z."""
    a, b, c = (math.radians(v) for v in degrees)
    x = np.array([[1, 0, 0], [0, math.cos(a), -math.sin(a)], [0, math.sin(a), math.cos(a)]])
    y = np.array([[math.cos(b), 0, math.sin(b)], [0, 1, 0], [-math.sin(b), 0, math.cos(b)]])
    z = np.array([[math.cos(c), -math.sin(c), 0], [math.sin(c), math.cos(c), 0], [0, 0, 1]])
    return z @ y @ x


def along(axis, about, across):
    """Inertia per mass of a body of revolution in part axes."""
    return np.diag([about if name == axis else across for name in 'xyz'])


def solid(part):
    """Volume, and inertia per mass about the centroid, in the part's own axes."""
    shape, axis = part['shape'], part.get('axis', 'z')
    if shape == 'point':
        return 0.0, np.zeros((3, 3))
    if shape in ('box', 'wedge'):
        x, y, z = part['size_m']
        if shape == 'box':
            return x * y * z, np.diag([y * y + z * z, x * x + z * z, x * x + y * y]) / 12
        cover = np.array([[x * x / 18, 0, -x * z / 36], [0, y * y / 12, 0], [-x * z / 36, 0, z * z / 18]])
        return x * y * z / 2, np.trace(cover) * np.eye(3) - cover
    r = part['radius_m']
    if shape == 'sphere':
        return 4 / 3 * math.pi * r ** 3, np.eye(3) * 0.4 * r * r
    if shape == 'hemisphere':
        return 2 / 3 * math.pi * r ** 3, along(axis, 0.4 * r * r, 83 / 320 * r * r)
    h = part['length_m']
    if shape == 'cone':
        return math.pi * r * r * h / 3, along(axis, 0.3 * r * r, 0.15 * r * r + 3 / 80 * h * h)
    i = part.get('inner_radius_m', 0) if shape == 'tube' else 0
    return math.pi * (r * r - i * i) * h, along(axis, (r * r + i * i) / 2, (r * r + i * i) / 4 + h * h / 12)


def liquid(part):
    """Mass, centre and inertia of the liquid at rest in a container, load axes."""
    depth, rho = part['liquid']['depth_m'], part['liquid']['density_kg_m3']
    centre = np.array(part['centre_m'], float)
    axis = part.get('axis', 'z')
    if part['shape'] == 'box' or axis == 'z':
        tall = part['size_m'][2] if part['shape'] == 'box' else part['length_m']
        body = dict(part, size_m=[*part['size_m'][:2], depth]) if part['shape'] == 'box' else dict(part, length_m=depth)
        volume, inertia = solid(body)
        return rho * volume, centre + [0, 0, (depth - tall) / 2], rho * volume * inertia
    r, length = part['radius_m'], part['length_m']
    u, w = np.polynomial.legendre.leggauss(64)                  # the segment of a circle, by slices
    low = -1.0
    high = depth / r - 1
    # angle as the variable, so that the chord's root is smooth
    a0, a1 = -math.pi / 2, math.asin(min(1.0, high))
    a = a0 + (u + 1) / 2 * (a1 - a0)
    z, half, dz = r * np.sin(a), r * np.cos(a), r * np.cos(a) * w * (a1 - a0) / 2
    area = np.sum(2 * half * dz)
    mean = np.sum(2 * half * z * dz) / area
    zz = np.sum(2 * half * (z - mean) ** 2 * dz) / area
    cross = np.sum(2 * half ** 3 / 3 * dz) / area
    ends = length ** 2 / 12
    cover = np.diag([ends, cross, zz] if axis == 'x' else [cross, ends, zz])
    mass = rho * area * length
    return mass, centre + [0, 0, mean], mass * (np.trace(cover) * np.eye(3) - cover)


def shift(inertia, mass, d):
    return inertia + mass * (d @ d * np.eye(3) - np.outer(d, d))


def from_parts(parts):
    bodies = []
    for part in parts:
        volume, per_mass = solid(part)
        mass = part['mass_kg'] if 'mass_kg' in part else part['density_kg_m3'] * volume
        turn = turned(part.get('turn_deg', [0, 0, 0]))
        sign = -1 if part.get('void') else 1
        bodies.append((sign * mass, np.array(part['centre_m'], float), sign * mass * (turn @ per_mass @ turn.T)))
        if 'liquid' in part:
            bodies.append(liquid(part))
    total = sum(b[0] for b in bodies)
    centre = sum(b[0] * b[1] for b in bodies) / total
    return total, centre, sum(shift(b[2], b[0], b[1] - centre) for b in bodies)


def lowest(part):
    """How far below its centroid a part reaches in a direction: returns the support function (load axes)."""
    turn = turned(part.get('turn_deg', [0, 0, 0]))
    shape, axis = part['shape'], part.get('axis', 'z')

    def reach(direction):
        d = turn.T @ direction
        if shape == 'point':
            return 0.0
        if shape == 'box':
            return float(np.abs(d) @ np.array(part['size_m']) / 2)
        if shape == 'wedge':
            x, y, z = part['size_m']
            corners = [(-x / 3, -z / 3), (2 * x / 3, -z / 3), (-x / 3, 2 * z / 3)]
            return max(d[0] * a + d[2] * b for a, b in corners) + abs(d[1]) * y / 2
        r = part['radius_m']
        if shape == 'sphere':
            return r
        k = 'xyz'.index(axis)
        across = math.sqrt(max(0.0, float(d @ d) - d[k] ** 2))
        if shape == 'hemisphere':
            dome = r * math.sqrt(float(d @ d)) if d[k] > 0 else r * across
            return dome - d[k] * 3 / 8 * r
        h = part['length_m']
        if shape == 'cone':
            return max(d[k] * 3 * h / 4, r * across - d[k] * h / 4)
        return r * across + abs(d[k]) * h / 2
    return reach


# ---- motion ---------------------------------------------------------------------------------------------------------

def quintic(p0, v0, p1, v1, T, t):
    """Position, velocity, acceleration; acceleration 0 at both ends."""
    d = p1 - p0 - v0 * T
    e = (v1 - v0) * T
    a3, a4, a5 = 10 * d - 4 * e, -15 * d + 7 * e, 6 * d - 3 * e
    s = t / T
    return (p0 + v0 * t + a3 * s ** 3 + a4 * s ** 4 + a5 * s ** 5,
            v0 + (3 * a3 * s ** 2 + 4 * a4 * s ** 3 + 5 * a5 * s ** 4) / T,
            (6 * a3 * s + 12 * a4 * s ** 2 + 20 * a5 * s ** 3) / T ** 2)


class Floor:
    def __init__(self, points):
        self.points = [tuple(map(float, p)) for p in points] if points else [(0.0, 0.0)]
        p = self.points
        self.risers = [(p[i][0], p[i][1], p[i + 1][1]) for i in range(len(p) - 1)
                       if p[i][0] == p[i + 1][0] and p[i][1] != p[i + 1][1]]

    def at(self, x):
        p = self.points
        if x < p[0][0]:
            return p[0][1]
        found = None
        for i, (px, pz) in enumerate(p):
            if px <= x:
                found = i
        if found == len(p) - 1 or p[found][0] == x:
            return p[found][1]
        (ax, az), (bx, bz) = p[found], p[found + 1]
        return az + (bz - az) * (x - ax) / (bx - ax)

    def flights(self):
        runs, run = [], []
        for riser in self.risers:
            same = run and riser[0] - run[-1][0] <= 0.6 + 1e-9 and (riser[2] > riser[1]) == (run[-1][2] > run[-1][1])
            if not same:
                runs.append(run)
                run = []
            run.append(riser)
        runs.append(run)
        lines = []
        for run in runs:
            if len(run) < 2:
                continue
            if run[0][2] > run[0][1]:
                going = run[1][0] - run[0][0]
                x0 = run[0][0] - going
                lines.append((x0, self.at(x0), run[-1][0], run[-1][2]))
            else:                                             # walked down: the same line seen from below
                going = run[-1][0] - run[-2][0]
                x1 = run[-1][0] + going
                lines.append((run[0][0], run[0][1], x1, self.at(x1)))
        return lines

    def smooth(self, x):
        for x0, z0, x1, z1 in self.flights():
            if x0 <= x <= x1:
                return z0 + (z1 - z0) * (x - x0) / (x1 - x0)
        return self.at(x)


class Leg:
    """What holds between two instants: a leg, or a dwell at a point (index is then that of the point)."""
    def __init__(self, index, start, length, dwell):
        self.index, self.start, self.length, self.dwell = index, start, length, dwell


class Motion:
    def __init__(self, points, reaches):
        self.points, n = points, len(points)
        self.move = [p['move'] for p in points]
        self.time = [0.0] + [self.duration(i) for i in range(1, n)]
        self.coordinate = {'x': [p.get('x_m', 0) for p in points], 'z': [p.get('z_m', 0) for p in points],
                           'pitch': [math.radians(p.get('pitch_deg', 0)) for p in points], 'reach': reaches}
        self.rate = {k: self.rates(v) for k, v in self.coordinate.items()}
        self.pieces, t = [], 0.0
        for i in range(n):
            if i:
                self.pieces.append(Leg(i, t, self.time[i], False))
                t += self.time[i]
            if points[i].get('hold_s', 0) > 0:
                self.pieces.append(Leg(i, t, points[i]['hold_s'], True))
                t += points[i]['hold_s']
        self.end = t

    def duration(self, i):
        p, q = self.points[i - 1], self.points[i]
        if 'time_s' in q:
            return float(q['time_s'])
        length = math.dist([p.get(k, 0) for k in ('x_m', 'y_m', 'z_m')], [q.get(k, 0) for k in ('x_m', 'y_m', 'z_m')])
        return max(1.0, length / (0.8 if q['move'] == 'carry' else 0.35))

    def inner(self, i):
        return (0 < i < len(self.points) - 1 and self.move[i] == 'carry' and self.move[i + 1] == 'carry'
                and not self.points[i].get('hold_s', 0) > 0)

    def rates(self, c):
        out = [0.0] * len(c)
        for i in range(len(c)):
            if self.inner(i):
                a, b = (c[i] - c[i - 1]) / self.time[i], (c[i + 1] - c[i]) / self.time[i + 1]
                out[i] = 2 * a * b / (a + b) if a * b > 0 else 0.0
        return out

    def run(self, i):
        """The points of the carry run that leg i is part of, its first point included."""
        a = i
        while a > 1 and self.inner(a - 1):
            a -= 1
        b = i
        while self.inner(b):
            b += 1
        return range(a - 1, b + 1)

    def at(self, piece, t, name):
        c, i = self.coordinate[name], piece.index
        if piece.dwell:
            return c[i], 0.0, 0.0
        v = self.rate[name]
        return quintic(c[i - 1], v[i - 1], c[i], v[i], piece.length, t - piece.start)


# ---- shares ---------------------------------------------------------------------------------------------------------

def hull(points):
    """Corners of the convex hull, counter-clockwise (one or two where it is a point or a line)."""
    p = sorted({(round(x, 12), round(y, 12)) for x, y in points})
    if len(p) < 3:
        return [np.array(v) for v in p]

    def half(q):
        out = []
        for v in q:
            while len(out) > 1 and ((out[-1][0] - out[-2][0]) * (v[1] - out[-2][1])
                                    - (out[-1][1] - out[-2][1]) * (v[0] - out[-2][0])) <= 1e-12:
                out.pop()
            out.append(v)
        return out
    a, b = half(p), half(p[::-1])
    return [np.array(v) for v in a[:-1] + b[:-1]]


def nearest(corners, p):
    if len(corners) > 2:
        if all((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]) >= 0
               for a, b in zip(corners, corners[1:] + corners[:1])):
            return p
    best = None
    for a, b in zip(corners, corners[1:] + corners[:1]):
        d = b - a
        s = 0.0 if not d @ d else min(1.0, max(0.0, (p - a) @ d / (d @ d)))
        q = a + s * d
        if best is None or np.hypot(*(p - q)) < np.hypot(*(p - best)):
            best = q
    return best


def least_norm(places, at, force):
    """Smallest sum of squares of upward forces with the given resultant: f = max(0, plane)."""
    n = len(places)
    a = np.vstack([np.ones(n), places.T - np.reshape(at, (2, 1))])
    free = list(range(n))
    bound = set()
    for _ in range(8 * n + 8):                               # active set: drop the pulling grips, take back where wrong
        f = np.zeros(n)
        plane = np.linalg.pinv(a[:, free].T, rcond=1e-9) @ (np.linalg.pinv(a[:, free], rcond=1e-9) @ [force, 0, 0])
        f[free] = a[:, free].T @ plane
        worst = min(free, key=lambda i: f[i])
        if f[worst] < -1e-9 * force:
            free.remove(worst)
            bound.add(worst)
            continue
        back = [i for i in bound if (a.T @ plane)[i] > 1e-9 * force]
        if not back:
            return f
        i = max(back, key=lambda k: (a.T @ plane)[k])
        free.append(i)
        bound.remove(i)
    raise ArithmeticError('no set')


def range_of(places, at, force, mine):
    """Least and most that the grips `mine` carry together, over all corners of the admissible set."""
    n = len(places)
    a = np.vstack([np.ones(n), places.T - np.reshape(at, (2, 1))])
    b = np.array([1.0, 0, 0])
    rank = np.linalg.matrix_rank(a, tol=1e-7)
    sums = []
    for k in itertools.combinations(range(n), rank):
        sub = a[:, k]
        if np.linalg.matrix_rank(sub, tol=1e-7) < rank:
            continue
        f = np.linalg.lstsq(sub, b, rcond=None)[0]
        if np.abs(sub @ f - b).max() < 1e-8 and f.min() > -1e-9:
            sums.append(sum(f[j] for j, i in enumerate(k) if i in mine))
    return force * min(sums), force * max(sums)


# ---- body -----------------------------------------------------------------------------------------------------------
# mass, place of the centre and lengths (mm): de Leva 1996, table 4, men and women; places on the line mid-hip to
# mid-shoulder follow from the lengths; L5/S1 at 0.20 of it, where the lower trunk is cut by length
def body(head, c_head, upper, c_upper, middle, c_middle, lower, c_lower, lengths, **rest):
    l_head, l_upper, l_middle, l_lower, trunk, c7 = lengths
    cut = 0.20 * trunk
    above, at, whole = 1 - cut / l_lower, (cut + l_lower) / 2 / trunk, (1 - c_lower) * l_lower / trunk
    return dict(rest, head=head, upper=upper, middle=middle, lower=lower, t_middle=(l_lower + (1 - c_middle) * l_middle) / trunk,
                t_upper=(l_lower + l_middle + (1 - c_upper) * l_upper) / trunk, t_head=(c7 + (1 - c_head) * l_head) / trunk,
                cut=above, t_cut=at, t_rest=(whole - above * at) / (1 - above))


BODY = {
    'male': body(.0694, .5002, .1596, .2999, .1633, .4502, .1117, .6115, (242.9, 170.7, 215.5, 145.7, 515.5, 603.3),
                 arm=.0271, fore=.0162, hand=.0061, thigh=.1416, shank=.0433, foot=.0137, c_arm=.5772, c_fore=.4574,
                 c_thigh=.4095, c_shank=.4459),
    'female': body(.0668, .4841, .1545, .2077, .1465, .4512, .1247, .4920, (243.7, 142.5, 205.3, 181.5, 497.9, 614.8),
                   arm=.0255, fore=.0138, hand=.0056, thigh=.1478, shank=.0481, foot=.0129, c_arm=.5754, c_fore=.4559,
                   c_thigh=.3612, c_shank=.4416)}


def joints_at_rest(worker, pose, down_N, factor=1.0):
    """Moments of everything on the hands' side at rest: forward-tipping positive; and the weight above L5/S1."""
    b, M, H = BODY[worker['sex']], worker['mass_kg'], worker['stature_m']
    p = {k: np.array(v, float) for k, v in pose.items()}
    hip, shoulder = p['hip'], p['shoulder']

    def trunk(f):
        return hip + f * (shoulder - hip)
    reach = p['hand'] - p['elbow']
    wrist = p['elbow'] + reach * .146 * H / float(np.hypot(*reach))
    hand = [(2 * b['hand'], p['hand'])]
    fore = [(2 * b['fore'], p['elbow'] + b['c_fore'] * (wrist - p['elbow']))]
    arm = [(2 * b['arm'], shoulder + b['c_arm'] * (p['elbow'] - shoulder))]
    above = [(b['head'], trunk(b['t_head'])), (b['upper'], trunk(b['t_upper'])), (b['middle'], trunk(b['t_middle'])),
             (b['lower'] * b['cut'], trunk(b['t_cut']))]
    rest = [(b['lower'] * (1 - b['cut']), trunk(b['t_rest']))]
    thigh = [(2 * b['thigh'], hip + b['c_thigh'] * (p['knee'] - hip))]
    shank = [(2 * b['shank'], p['knee'] + b['c_shank'] * (p['ankle'] - p['knee']))]
    chain = {'elbow': hand + fore, 'shoulder': hand + fore + arm, 'l5s1': hand + fore + arm + above}
    chain['hip'] = chain['l5s1'] + rest
    chain['knee'] = chain['hip'] + thigh
    chain['ankle'] = chain['knee'] + shank
    out = {j: sum(m * M * G * factor * (at[0] - p[j][0]) for m, at in bodies) + down_N * (p['hand'][0] - p[j][0])
           for j, bodies in chain.items()}
    return out, sum(m for m, _ in chain['l5s1']) * M * G * factor


def disc(moment, weight, pose):
    """Compression and shear by one muscle (0.05 m; 0.10 m in front) and the disc's slope 40 degrees + pelvis."""
    p = {k: np.array(v, float) for k, v in pose.items()}
    trunk = p['shoulder'] - p['hip']
    T = math.degrees(math.atan2(trunk[0], trunk[1]))
    shank, thigh = p['knee'] - p['ankle'], p['hip'] - p['knee']
    K = 180 - math.degrees(math.atan2(shank[0], shank[1]) + math.atan2(-thigh[0], thigh[1]))
    turn = max(0.0, -17.5 - .12 * T + .227 * K + .0012 * T * K + .005 * T * T - .00075 * K * K)
    s = math.radians(40 + turn)
    muscle = moment / .05 if moment >= 0 else -moment / .10
    return muscle + weight * math.cos(s), weight * math.sin(s)


# ---- lifting equation -----------------------------------------------------------------------------------------------

NIOSH_RATE = [.2, .5, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15]
NIOSH_FM = {
    ('short', 0): [1, .97, .94, .91, .88, .84, .80, .75, .70, .60, .52, .45, .41, .37, 0, 0, 0],
    ('short', 1): [1, .97, .94, .91, .88, .84, .80, .75, .70, .60, .52, .45, .41, .37, .34, .31, .28],
    ('moderate', 0): [.95, .92, .88, .84, .79, .72, .60, .50, .42, .35, .30, .26, 0, 0, 0, 0, 0],
    ('moderate', 1): [.95, .92, .88, .84, .79, .72, .60, .50, .42, .35, .30, .26, .23, .21, 0, 0, 0],
    ('long', 0): [.85, .81, .75, .65, .55, .45, .35, .27, .22, .18, 0, 0, 0, 0, 0, 0, 0],
    ('long', 1): [.85, .81, .75, .65, .55, .45, .35, .27, .22, .18, .15, .13, 0, 0, 0, 0, 0]}


def niosh_rate(work, high):
    hours, rest = work.get('hours', 1), work.get('recovery_h', 0)
    kind = 'short' if hours <= 1 and rest >= hours else 'moderate' if hours <= 2 and rest >= .3 * hours else 'long'
    rate, row = max(.2, work.get('cycles_per_hour', 1) / 60), NIOSH_FM[kind, int(high)]
    for k in range(len(row) - 1):
        if NIOSH_RATE[k] <= rate <= NIOSH_RATE[k + 1]:
            if rate == NIOSH_RATE[k]:
                return row[k]
            if rate == NIOSH_RATE[k + 1]:
                return row[k + 1]
            if row[k + 1] == 0:
                return 0.0
            return row[k] + (row[k + 1] - row[k]) * (rate - NIOSH_RATE[k]) / (NIOSH_RATE[k + 1] - NIOSH_RATE[k])
    return 0.0


def niosh_weight(reach, height, travel, turn, coupling, work):
    """Recommended weight in kg, metres and degrees in."""
    h, v, d, a = 100 * reach, 100 * height, 100 * abs(travel), abs(turn)
    hm = 0 if h > 63 + 1e-9 else min(1.0, 25 / h) if h > 0 else 1.0
    vm = 0 if v > 175 + 1e-9 else 1 - .003 * abs(v - 75)
    dm = 0 if d > 175 + 1e-9 else 1.0 if d < 25 else .82 + 4.5 / d
    am = 0 if a > 135 + 1e-9 else 1 - .0032 * a
    high = v >= 75 - 1e-9
    cm = {'good': 1.0, 'fair': 1.0 if high else .95, 'poor': .9}[coupling]
    return 23 * hm * vm * dm * am * cm * niosh_rate(work, high)


# ---- an option ------------------------------------------------------------------------------------------------------

class Option:
    def __init__(self, document, option):
        self.document, self.option = document, option
        load, points = document['load'], document['route']['points']
        self.mass = None
        self.grips = {g['id']: g for g in load['grips']}
        self.workers = {w['id']: dict({'sex': 'male', 'stature_m': 1.756, 'mass_kg': 85.5, 'age_years': 40}, **w)
                        for w in document['workers']}
        self.suits = {s['id']: s for s in document.get('suits', [])}
        self.site, self.work, self.policy = (document.get(k, {}) for k in ('site', 'work', 'policy'))
        self.floor = Floor(self.site.get('floor'))
        self.parts = load.get('parts', [])
        self.mass, self.centre, self.inertia = from_parts(load['parts'])
        self.bearers = option['bearers']
        self.used = [g for b in self.bearers for g in b['grips']]
        self.heading = math.radians(option.get('heading_deg', 0))
        given = option.get('reach_m')
        reaches = [p.get('reach_m') for p in points]
        if isinstance(given, list):
            reaches = [r if g is None else g for r, g in zip(reaches, given)]
        elif given is not None:
            reaches = [given] * len(points)
        self.reach_known = all(r is not None for r in reaches)
        self.motion = Motion(points, [0.5 if r is None else r for r in reaches])
        self.points = points

    # places
    def placed(self, r, pitch):
        """A place of the load frame, turned by pitch and heading."""
        x, y, z = r
        u, z = x * math.cos(pitch) - z * math.sin(pitch), x * math.sin(pitch) + z * math.cos(pitch)
        c, s = math.cos(self.heading), math.sin(self.heading)
        return np.array([u * c - y * s, u * s + y * c, z])

    def follows(self, piece):
        if self.motion.move[piece.index] != 'carry' or len(self.bearers) < 2:
            return False
        return all('pitch_deg' not in self.points[i] for i in self.motion.run(piece.index))

    def followed(self, x):
        turn = self.option.get('heading_deg', 0) % 360
        if turn not in (0, 180):
            return 0.0
        pitch = 0.0
        for step in range(60):                                # the grips are where the pitch puts them
            places = [self.placed(self.grips[g]['at_m'], pitch)[0] for g in self.used]
            a, b = min(places), max(places)
            if b - a < 1e-6:
                return 0.0
            rise = self.floor.smooth(x + b) - self.floor.smooth(x + a)
            found = math.atan2(rise, b - a) * (1 if turn == 0 else -1)
            if abs(found - pitch) < 1e-13:
                return found
            pitch = found if step < 20 else (pitch + found) / 2
        return pitch

    def stands(self, bearer):
        if 'stands' in bearer:
            return bearer['stands']
        if len(self.bearers) == 1:
            return 'behind'
        x = np.mean([self.placed(self.grips[g]['at_m'], 0)[0] for g in bearer['grips']])
        return 'behind' if x <= self.placed(self.centre, 0)[0] + 1e-9 else 'ahead'

    def state(self, piece, t):
        s = {}
        m = self.motion
        (x, vx, ax), (z, _, az) = m.at(piece, t, 'x'), m.at(piece, t, 'z')
        pitch, w, alpha = m.at(piece, t, 'pitch')
        if self.follows(piece):
            pitch, w, alpha = self.followed(x), 0.0, 0.0
        u, h = (self.centre[0] * math.cos(pitch) - self.centre[2] * math.sin(pitch),
                self.centre[0] * math.sin(pitch) + self.centre[2] * math.cos(pitch))
        s['ax'] = ax + (-h * alpha - u * w * w) * math.cos(self.heading)
        s['az'] = az + u * alpha - h * w * w
        s.update(x=x, z=z, vx=vx, pitch=pitch, w=w, alpha=alpha, reach=m.at(piece, t, 'reach')[0])
        p = self.points[piece.index]
        s['held_up'], s['move'] = p.get('held_up', 0), p['move']
        s['v'] = abs(vx) if abs(vx) > 1e-12 and p['move'] == 'carry' and not piece.dwell else 0.0
        s['piece'] = piece
        return s

    def resultant(self, s):
        """Force that the grips hold, where its line passes (from the CG, plan), grip places (from the CG)."""
        force = (1 - s['held_up']) * self.mass * (G + s['az'])
        cg = self.placed(self.centre, s['pitch'])
        places = np.array([self.placed(self.grips[g]['at_m'], s['pitch']) - cg for g in self.used])
        push = self.mass * s['ax'] / len(places)
        c, d = math.cos(s['pitch']), math.sin(s['pitch'])
        tilt = np.array([[c, 0, -d], [0, 1, 0], [d, 0, c]])
        inertia = tilt @ self.inertia @ tilt.T
        spin = np.array([0, -s['alpha'], 0])
        n = inertia @ spin
        c, d = math.cos(self.heading), math.sin(self.heading)
        nx, ny = c * n[0] - d * n[1], d * n[0] + c * n[1]
        if force <= 0:
            return force, np.zeros(2), places
        return force, np.array([push * places[:, 2].sum() - ny, nx]) / force, places

    def shares(self, s):
        force, at, places = self.resultant(s)
        if force <= 1e-9:
            return np.zeros(len(places)), 0.0, at, places
        inside = nearest(hull(places[:, :2]), at)
        return least_norm(places[:, :2], inside, force), force * float(np.hypot(*(at - inside))), inside, places

    def hands(self, bearer, s):
        return np.mean([self.placed(self.grips[g]['at_m'], s['pitch']) for g in bearer['grips']], axis=0) + [s['x'], 0, s['z']]

    def foot_x(self, bearer, s):
        side = {'behind': -1, 'ahead': 1, 'left': 0, 'right': 0}[self.stands(bearer)]
        return self.hands(bearer, s)[0] + side * s['reach']

    def hand_height(self, bearer, s):
        return self.hands(bearer, s)[2] - self.floor.at(self.foot_x(bearer, s))

    def walking(self, bearer, s):
        if s['v'] <= 0:
            return 1.0
        piece = s['piece']
        ends = sorted(self.foot_x(bearer, self.state(piece, t)) for t in (piece.start, piece.start + piece.length))
        if any(abs(b - a) > 0.05 + 1e-9 and ends[0] < x <= ends[1] for x, a, b in self.floor.risers):
            return 1.6
        given = self.policy.get('walking_factor')
        return given if given is not None else 1 + 0.2 * (min(2.0, s['v']) / 1.5) ** 2

    def payload(self, suit, reach):
        curve = [(p['reach_m'], p['payload_kg']) for p in suit['rating']]
        if reach <= curve[0][0]:
            return curve[0][1]
        if reach > curve[-1][0] + 1e-9:
            return 0.0
        reach = min(reach, curve[-1][0])
        for (a, p), (b, q) in zip(curve, curve[1:]):
            if reach <= b:
                return p + (q - p) * (reach - a) / (b - a)
        return curve[-1][1]

    def felt(self, bearer, s, force):
        """Felt force; None where the suit's data do not say."""
        suit = self.suits.get(bearer.get('suit'))
        if not suit or suit['kind'] != 'powered':
            return force
        height, most = self.hand_height(bearer, s), None
        if 'hand_height_m' in suit:
            low, high = suit['hand_height_m']
            if not low - 1e-9 <= height <= high + 1e-9:
                return force
        if 'rating' in suit:
            most = self.payload(suit, s['reach']) * G
            if most <= 0:
                return force
        if most is None or 'hand_height_m' not in suit or 'hands' not in suit.get('gain', {}) \
                or 'hands' not in suit.get('residual_N', {}):
            return None
        part = min(force, most)
        return part / suit['gain']['hands'] + suit['residual_N']['hands'] + force - part

    def to_set_down(self, piece, t):
        """Seconds to the next place where the load can be put down; None where there is none."""
        arrive = 0.0
        for i, p in enumerate(self.points):
            if i:
                arrive += self.motion.time[i]
            leave = arrive + p.get('hold_s', 0)
            if p.get('set_down') and t <= leave + 1e-9:
                return max(0.0, arrive - t)
            arrive = leave
        return None

    def underside(self, s):
        """Lowest point of the load above the world's zero (solid parts)."""
        c, d = math.cos(s['pitch']), math.sin(s['pitch'])
        down = -np.array([d, 0, c])
        return s['z'] - max(float(np.array(p['centre_m']) @ down) + lowest(p)(down) for p in self.parts if not p.get('void'))

    def niosh(self):
        """(value, kilograms recommended 0?) of each bearer: the greatest index over lift and lower legs."""
        out = {}
        for b in self.bearers:
            best = None
            for piece in self.motion.pieces:
                if piece.dwell or self.motion.move[piece.index] not in ('lift', 'lower'):
                    continue
                ends = [self.state(piece, piece.start), self.state(piece, piece.start + piece.length)]
                kilos = []
                for s in ends:
                    f = self.shares(dict(s, ax=0, az=0, alpha=0, w=0))[0]
                    kilos.append(sum(f[self.used.index(g)] for g in b['grips']) / G)
                heights = [self.hand_height(b, s) for s in ends]
                worst = max((self.grips[g].get('coupling', 'fair') for g in b['grips']), key=['good', 'fair', 'poor'].index)
                for k in (0, 1):
                    if k and not self.points[piece.index].get('precise'):
                        continue
                    point = self.points[piece.index - 1 + k]
                    weight = niosh_weight(ends[k]['reach'], heights[k], heights[1] - heights[0], point.get('turn_deg', 0),
                                          worst, self.work)
                    if weight <= 0:
                        best = math.inf
                    elif best is None or max(kilos) / weight > best:
                        best = max(kilos) / weight
            out[b['id']] = best
        return out
