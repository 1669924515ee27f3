#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Layers link one way: core <- model <- draw <- app, cli. Checks every include of src by text, so that branches which
the compiler does not see count too. Headers never form a circle; modules that ask each other are listed, and more than four
in one ring are a fault. Prints each fault; exit status 1 when there is one."""
import os
import re
import sys

ROOT = os.path.join(os.path.dirname(os.path.abspath(__file__)), '..', '..', 'src')
MAY_USE = {'core': {'core'}, 'model': {'core', 'model'}, 'draw': {'core', 'model', 'draw'},
           'app': {'core', 'model', 'draw', 'app'}, 'cli': {'core', 'model', 'draw', 'cli'},
           'main': {'core', 'model', 'draw', 'app', 'cli', 'main'}}
# Inside core each folder may use only those before it, in the order of the computation.
CORE_ORDER = ['base', 'load', 'motion', 'forces', 'body', 'checks', 'whatif', '']
STANDARD = set('assert complex ctype errno fenv float inttypes iso646 limits locale math setjmp signal stdalign stdarg stdatomic '
               'stdbool stddef stdint stdio stdlib stdnoreturn string tgmath threads time uchar wchar wctype'.split())
SYSTEM = {'core': {'math.h', 'stdbool.h', 'stddef.h', 'stdint.h', 'stdlib.h', 'string.h', 'stdarg.h', 'stdio.h', 'float.h',
                   'limits.h'},
          'model': {'libintl.h', 'glib', 'gio/', 'json-glib/', 'glib-object.h', 'locale.h', 'langinfo.h', 'errno.h', 'unistd.h', 'sys/', 'fcntl.h'},
          'draw': {'glib', 'gio/', 'json-glib/', 'cairo', 'pango/', 'glib-object.h'},
          'app': {'glib', 'gio/', 'json-glib/', 'cairo', 'pango/', 'gtk/', 'gdk/', 'gsk/', 'graphene.h', 'glib-object.h', 'locale.h'},
          'cli': {'glib', 'gio/', 'json-glib/', 'locale.h', 'unistd.h', 'errno.h'},
          'main': {'glib', 'gio/', 'locale.h', 'libintl.h'}}
SPECIAL = {'base/lp.c': {'glpk.h', 'setjmp.h'}, 'base/solve.c': {'gsl/', 'pthread.h'}}

# Two modules may ask each other (a list and its rows); more than this many in a ring have no order any more.
KNOT_MOST = 4
PRIVATE = r'_(?:internal|private)'


def layer_of(path):
    head = path.split(os.sep)[0]
    return head if head in MAY_USE else 'main'


def core_rank(path):
    parts = path.split(os.sep)
    folder = parts[1] if len(parts) > 2 else ''
    return CORE_ORDER.index(folder) if folder in CORE_ORDER else None


def main():
    faults, files, homes = [], [], {}
    for base, _, names in os.walk(ROOT):
        for name in names:
            if name.endswith(('.c', '.h', '.def')):
                files.append(os.path.relpath(os.path.join(base, name), ROOT))
    for path in files:
        if path.endswith('.h'):
            name = os.path.basename(path)
            if name in homes:
                faults.append(f'{path}: header name already used by {homes[name]}')
            if name[:-2] in STANDARD:
                faults.append(f'{path}: named like a standard header')
            homes[name] = path
    graph, headers = {}, {}
    private = {re.sub(PRIVATE + r'\.h$', '', p) for p in files if re.search(PRIVATE + r'\.h$', p)}

    def module_of(path):
        """x.c with x.h; where x has a private header, that header and the files x_* it was cut into belong to x."""
        stem = os.path.splitext(path)[0]
        for owner in private:
            if stem.startswith(owner + '_'):
                return owner
        return stem

    for path in sorted(files):
        layer, text = layer_of(path), open(os.path.join(ROOT, path), encoding='utf-8').read()
        if layer == 'core' and re.search(r'\bgettext\b|\b_\("', text):
            faults.append(f'{path}: words of a language in core')
        module = module_of(path)
        for number, line in enumerate(text.split('\n'), 1):
            found = re.match(r'\s*#\s*include\s*([<"])([^>"]+)[>"]', line)
            if not found:
                continue
            mark, name = found.groups()
            where = f'{path}:{number}'
            if '..' in name:
                faults.append(f'{where}: no ".." in an include')
            if mark == '<':
                short = os.path.relpath(path, 'core') if layer == 'core' else ''
                allowed = SYSTEM[layer] | SYSTEM['core'] | SPECIAL.get(short, set())
                if not any(name == a or (name.startswith(a) and a[-1] != 'h') for a in allowed):
                    faults.append(f'{where}: <{name}> is not for {layer}')
                continue
            if name.endswith('.def') or name.startswith('words_'):
                continue
            home = homes.get(os.path.basename(name))
            if home is None:
                continue
            if layer_of(home) not in MAY_USE[layer]:
                faults.append(f'{where}: {layer} may not use {home}')
            if layer == 'core' and layer_of(home) == 'core':
                a, b = core_rank(path), core_rank(home)
                if a is not None and b is not None and b > a:
                    faults.append(f'{where}: {home} comes later in the computation')
            if path.endswith('.h'):
                headers.setdefault(path, set()).add(home)
            if module_of(home) != module:
                graph.setdefault(module, set()).add(module_of(home))
    faults += ['circle of headers: ' + ' <-> '.join(k) for k in knots(headers)]
    for knot in knots(graph):
        text = 'knot of modules: ' + ' <-> '.join(knot)
        if len(knot) > KNOT_MOST:
            faults.append(text)
        else:
            print('(allowed) ' + text)
    for fault in faults:
        print(fault)
    print(f'layers: {len(files)} files, {len(faults)} faults')
    return 1 if faults else 0


def knots(graph):
    """Nodes that reach each other, as sorted lists: Tarjan's strongly connected components."""
    index, low, stack, on, out, count = {}, {}, [], set(), [], [0]

    def visit(v):
        index[v] = low[v] = count[0]
        count[0] += 1
        stack.append(v)
        on.add(v)
        for w in sorted(graph.get(v, ())):
            if w not in index:
                visit(w)
                low[v] = min(low[v], low[w])
            elif w in on:
                low[v] = min(low[v], index[w])
        if low[v] == index[v]:
            part = []
            while True:
                w = stack.pop()
                on.discard(w)
                part.append(w)
                if w == v:
                    break
            if len(part) > 1:
                out.append(sorted(part))

    sys.setrecursionlimit(10000)
    for v in sorted(graph):
        if v not in index:
            visit(v)
    return out


if __name__ == '__main__':
    sys.exit(main())
