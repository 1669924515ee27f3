#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""A number says its unit at the end of its name: checks every double in the headers of core, model and draw. Prints each
fault; exit status 1 when there is one."""
import os
import re
import sys

ROOT = os.path.join(os.path.dirname(os.path.abspath(__file__)), '..', '..', 'src')
UNITS = ('m mm cm kg N kN Nm Nms Nh deg rad s min h Hz W Wh J K C kPa px pt pct lb in bpm years per_h per_min per_m_s '
         'm_s m_s2 rad_s rad_s2 kg_m2 kg_m3 W_per_Nm Wh_per_h Wh_per_J px_per_m px_per_N m_per_N J_per_Wh kg_per_h '
         'minutes_per_h kcal_min Nm_per_rad m2 m3 N_s2 kg_per_min per_hour per_year kJ kmh').split()
# Numbers of the search (descent.h, dual.h, effort.h): a value with its slopes, a constraint's room, a curvature or a penalty; what
# they are in depends on which angle and which constraint is asked, so that no unit could stand there.
SEARCH = re.compile(r'^(v|c|c2|q|inverse|r2|cx|cy|curve|room|ret_worst_room|ret_step|pull|penalty|rough|hs_effort_rough|by_knee)$')
# Pure numbers that have a word of their own: where between two ends (t, along), shares of stature (back, front), a direction (side),
# the length of a vector of any unit (length), rise per run (grade), a factor of the ground (terrain), a ratio to reach (target), how
# near a ratio is to the limit (closeness), column widths as parts of the page (parts), coordinates of mixed units (velocity: m/s and rad/s).
WORDS = re.compile(r'^(t|along|back|front|side|length|grade|terrain|target|hs_sheet_closeness|parts|velocity)$')
# In draw: sizes on a cairo surface, in the surface's own unit: px in the window, pt on paper.
SURFACE = re.compile(r'(^|_)(width|height|measure)$')
# dimensionless by the first or last word of the name
PLAIN = re.compile(r'(^|_)(friction|gain|fraction|ratio|utilisation|p|factor|value|limit|number|size|share|k|n|x|y|z|u|f|a|r|g|b|'
                   r'percentile|scale|residual|greatest|least|most|weight_factor|held_up|multiplier|index|reserve|efficiency|'
                   r'meet|draws|seed|tolerance|result|terms|matrix|right|root|low|high|threshold|margin|count|alpha|route|'
                   r'predicted|measured|figure|within|coefficient|times|share_of|mu|hours|recovery_h|lines|sign|self_carried|'
                   r'unpowered|p05|p50|p95|HM|VM|DM|AM|FM|CM|LI|RWL|at|m|points|angle|cost|lower|upper|objective|dual|weight|'
                   r'rows|columns|couple|zoom|slope|exponent|base|line|radius_of|length_of|quantity|otherwise)(_|$)')


def main():
    faults = []
    for base, _, names in os.walk(ROOT):
        layer = os.path.relpath(base, ROOT).split(os.sep)[0]
        if layer not in ('core', 'model', 'draw'):
            continue
        for name in sorted(n for n in names if n.endswith('.h')):
            path = os.path.join(base, name)
            text = re.sub(r'/\*.*?\*/', lambda m: '\n' * m.group(0).count('\n'), open(path, encoding='utf-8').read(), flags=re.S)
            whole = open(path, encoding='utf-8').read().split('\n')
            for number, line in enumerate(text.split('\n'), 1):
                # A comment that begins with a unit gives it to every number of its line: "double x, y; /* px, y down */".
                said = re.search(r'/\* (\w+)[,:;. ]', whole[number - 1])
                if said and said.group(1) in UNITS:
                    continue
                for found in re.finditer(r'\bdouble\s+(?!\()([^;{})]*)', line):
                    for item in found.group(1).split(','):
                        word = re.match(r'\s*(?:const\s+)?\*?\s*(?:const\s+)?(?:double\s+\*?)?(\w+)', item)
                        if not word or word.group(1) in ('double', 'const', 'int', 'hs_vec2', 'bool', 'void', 'hs_vec3'):
                            continue
                        one = word.group(1)
                        if re.search(r'\b' + one + r'\s*\(', item) and not one.startswith('ret_'):
                            pass
                        if one.startswith(('hs_', 'gboolean', 'cairo', 'char')) and not re.search(r'\b' + one + r'\s*\(', line):
                            continue
                        if any(one.endswith('_' + u) or one == u for u in UNITS) or any(r.search(one) for r in (PLAIN, SEARCH, WORDS)) or (layer == 'draw' and SURFACE.search(one)):
                            continue
                        faults.append(f'{os.path.relpath(path, ROOT)}:{number}: {one} does not say its unit')
    for fault in faults:
        print(fault)
    print(f'units: {len(faults)} faults')
    return 1 if faults else 0


if __name__ == '__main__':
    sys.exit(main())
