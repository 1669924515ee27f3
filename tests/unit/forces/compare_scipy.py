#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Do shares, ranges, squeeze and closure agree with another solver?

Asks 500 random problems of each kind of core (through ask_forces) and of SciPy: the least-norm set by non-negative least
squares with heavily weighted equations, the others by linear programmes. Same status, and the same value to 1e-6. Usage: compare_scipy.py PATH-OF-ask_forces
"""
import subprocess
import sys

import numpy as np
from scipy.optimize import linprog, nnls

COUNT = 500
CLOSE = 1e-6


def grips(rng):
    n = int(rng.integers(1, 9))
    if rng.random() < 0.5:  # a coarse grid: lines and coincident places come up
        return rng.integers(-2, 3, (n, 2)) * 0.25, rng.integers(-3, 4, 2) * 0.125
    at = rng.uniform(-1, 1, (n, 2))
    inside = rng.dirichlet(np.ones(n)) @ at
    return at, inside if rng.random() < 0.8 else rng.uniform(-1, 1, 2)


def equations(at, point):
    return np.vstack([np.ones(len(at)), at.T]), np.array([1.0, *point])


def feasible(a, b):
    return linprog(np.zeros(a.shape[1]), A_eq=a, b_eq=b, method="highs").status == 0


def least_norm(a, b):
    """min |f|2 with A f = b, f >= 0, as NNLS with heavily weighted equations, then polished on its active set."""
    heavy = 1e5
    f, _ = nnls(np.vstack([heavy * a, np.eye(a.shape[1])]), np.concatenate([heavy * b, np.zeros(a.shape[1])]), maxiter=1000)
    kept = f > 1e-8
    polished = np.zeros(a.shape[1])
    polished[kept] = np.linalg.pinv(a[:, kept], rcond=1e-9) @ b
    return polished


def numbers(values):
    return " ".join(repr(float(v)) for v in np.ravel(values))


def share_problems(rng):
    for _ in range(COUNT):
        at, point = grips(rng)
        a, b = equations(at, point)
        text = f"shares {len(at)} 1 {numbers(point)} {numbers(at)}"
        yield text, (least_norm(a, b) if feasible(a, b) else None)


def range_problems(rng):
    for _ in range(COUNT):
        at, point = grips(rng)
        a, b = equations(at, point)
        member = rng.integers(0, 2, len(at)).astype(float)
        text = f"range {len(at)} 1 {numbers(point)} {numbers(at)} {numbers(member)}"
        if not feasible(a, b):
            yield text, None
            continue
        least = linprog(member, A_eq=a, b_eq=b, method="highs").fun
        most = -linprog(-member, A_eq=a, b_eq=b, method="highs").fun
        yield text, np.array([least, most])


def contacts(rng):
    n = int(rng.integers(2, 9))
    at = rng.uniform(-0.4, 0.4, (n, 3))
    inward = -at + rng.normal(0, 0.1, (n, 3))
    inward /= np.linalg.norm(inward, axis=1)[:, None]
    return at, inward, rng.uniform(0.2, 0.9, n), np.arange(n) % max(1, n // 2)


def across(normal, along):
    tangent = along - normal * (along @ normal)
    if np.linalg.norm(tangent) <= 1e-9 * np.linalg.norm(along):
        along = np.array([0, 0, 1.0]) if abs(normal[2]) < abs(normal[0]) else np.array([1.0, 0, 0])
        tangent = along - normal * (along @ normal)
    return tangent / np.linalg.norm(tangent)


def edges(at, inward, mu, along, count):
    columns, owner = [], []
    for i, normal in enumerate(inward):
        t1 = across(normal, along)
        t2 = np.cross(normal, t1)
        for k in range(count):
            angle = 2 * np.pi * k / count
            force = normal + mu[i] * (np.cos(angle) * t1 + np.sin(angle) * t2)
            columns.append(np.concatenate([force, np.cross(at[i], force)]))
            owner.append(i)
    return np.array(columns).T, np.array(owner)


def written(at, inward, mu, pad):
    return " ".join(f"{numbers(at[i])} {numbers(inward[i])} {float(mu[i])!r} {int(pad[i])}" for i in range(len(at)))


def squeeze_problems(rng):
    for _ in range(COUNT):
        at, inward, mu, pad = contacts(rng)
        need = np.concatenate([rng.normal(0, 30, 2), [rng.uniform(50, 300)], rng.normal(0, 3, 3)])
        w, owner = edges(at, inward, mu, need[:3], 8)
        n_pads = int(pad.max()) + 1
        rows = np.zeros((n_pads, w.shape[1] + 1))
        for j, i in enumerate(owner):
            rows[pad[i], j] = 1.0
        rows[:, -1] = -1.0
        cost = np.zeros(w.shape[1] + 1)
        cost[-1] = 1.0
        answer = linprog(cost, A_ub=rows, b_ub=np.zeros(n_pads), A_eq=np.hstack([w, np.zeros((6, 1))]), b_eq=need, method="highs")
        text = f"squeeze {len(at)} 8 {numbers(need)} {written(at, inward, mu, pad)}"
        yield text, (np.array([answer.fun]) if answer.status == 0 else None)


def closure_problems(rng):
    for _ in range(COUNT):
        at, inward, mu, pad = contacts(rng)
        w, _owner = edges(at, inward, mu, np.array([0, 0, 1.0]), 8)
        n = w.shape[1]
        a = np.vstack([np.hstack([w, w.sum(axis=1)[:, None]]), np.concatenate([np.ones(n), [n]])])
        cost = np.zeros(n + 1)
        cost[-1] = -1.0
        answer = linprog(cost, A_eq=a, b_eq=np.array([0, 0, 0, 0, 0, 0, 1.0]), method="highs")
        closed = np.linalg.matrix_rank(w, tol=1e-6) == 6 and answer.status == 0 and -answer.fun > 1e-9
        yield f"closure {len(at)} 8 {written(at, inward, mu, pad)}", np.array([1.0 if closed else 0.0])


def compare(name, problems, driver):
    asked = list(problems)
    out = subprocess.run([driver], input="\n".join(text for text, _ in asked) + "\n", capture_output=True, text=True, check=True)
    lines = out.stdout.splitlines()
    assert len(lines) == len(asked), f"{name}: {len(lines)} answers to {len(asked)} problems"
    bad = solved = 0
    for (text, wanted), line in zip(asked, lines):
        got = None if line == "NO" else np.array([float(v) for v in line.split()[1:]])
        solved += wanted is not None
        if (got is None) != (wanted is None) or (
                wanted is not None and np.max(np.abs(got - wanted)) > CLOSE * max(1.0, np.max(np.abs(wanted)))):
            bad += 1
            if bad <= 3:
                print(f"# {name}: {text}\n#   core {got}\n#   SciPy {wanted}")
    varied = 0 < solved if name != "closure" else len({w[0] for _, w in asked}) == 2
    return bad == 0 and varied, f"{name}: {len(asked)} problems, {solved} with an answer, {bad} differ"


def main():
    rng = np.random.default_rng(20240517)
    kinds = [("shares", share_problems), ("range", range_problems), ("squeeze", squeeze_problems), ("closure", closure_problems)]
    print(f"1..{len(kinds)}")
    all_good = True
    for number, (name, problems) in enumerate(kinds, 1):
        good, text = compare(name, problems(rng), sys.argv[1])
        all_good = all_good and good
        print(f"{'ok' if good else 'not ok'} {number} - {text}")
    return 0 if all_good else 1


if __name__ == "__main__":
    sys.exit(main())
