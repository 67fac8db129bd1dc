#!/usr/bin/env python3
"""The 102 x 152 mm flask, 19 h programme, beside scipy's BDF on the same input, in one run, each on one core.

    cargo bench --bench heat --no-run
    python3 tests/tools/heat_beside_scipy.py BENCH_BINARY [REFERENCE_CSV] [ROUNDS]

Needs numpy and scipy. Prints the wall time of both, their ratio, and how far both centres are from a reference on 68 x 104 cells (scipy BDF,
rtol 1e-7). scipy: vertex-centred finite volumes on 17 x 26 cells of the upper half, rtol 1e-4, the Jacobian's pattern given, restarted at every kink
of the programme. The binary is given the same input and does its own choosing of rings and steps; it is run once, and its own median of 21 is taken.
The material is illustrative, from memory, not a data sheet.
"""
import os
for name in ("OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS", "MKL_NUM_THREADS"):
    os.environ[name] = "1"
import csv, statistics, subprocess, sys, tempfile, time
import numpy as np
from scipy.integrate import solve_ivp
from scipy.sparse import csr_matrix, lil_matrix

R, L, RHO, H_SURFACE, T0 = 0.051, 0.076, 1700.0, 25.0, 20.0
K = [[20, 0.95], [100, 0.90], [150, 0.55], [400, 0.42], [750, 0.46], [1000, 0.52]]
CP = [[20, 1250], [100, 1250], [150, 950], [400, 1000], [700, 1100], [1000, 1150]]
LATENT = [(95.0, 105.0, 451400.0), (120.0, 180.0, 150000.0)]
KILN = np.array([[0, 20], [1, 150], [4, 150], [6, 370], [8, 370], [10.5, 730], [14.5, 730], [16, 540], [19, 540]], float)
EVERY = 300.0


def table(rows):
    x, y = np.array(rows, float).T
    return lambda t: np.interp(t, x, y)


conductivity, specific_heat = table(K), table(CP)


def capacity(t):
    c = specific_heat(t)
    for low, high, heat in LATENT:
        half, middle = (high - low) / 2, (high + low) / 2
        c = c + heat / half * np.clip(1 - np.abs(t - middle) / half, 0, None)
    return c


def scipy_bdf(nr=17, nz=26, rtol=1e-4):
    r, z = np.linspace(0, R, nr + 1), np.linspace(0, L, nz + 1)
    dr, dz = r[1], z[1]
    rf = np.concatenate([[0], (r[1:] + r[:-1]) / 2, [R]])
    zf = np.concatenate([[0], (z[1:] + z[:-1]) / 2, [L]])
    end, tall = np.pi * (rf[1:] ** 2 - rf[:-1] ** 2), np.diff(zf)
    volume = end[:, None] * tall
    wall, side = 2 * np.pi * rf[1:-1][:, None] * tall, 2 * np.pi * R * tall
    n = (nr + 1) * (nz + 1)
    kiln_s = KILN[:, 0] * 3600

    def rise(time_s, y):
        t = y.reshape(nr + 1, nz + 1)
        around = np.interp(time_s, kiln_s, KILN[:, 1])
        q = np.zeros_like(t)
        flow = wall * conductivity((t[1:] + t[:-1]) / 2) * (t[1:] - t[:-1]) / dr
        q[:-1] += flow
        q[1:] -= flow
        flow = end[:, None] * conductivity((t[:, 1:] + t[:, :-1]) / 2) * (t[:, 1:] - t[:, :-1]) / dz
        q[:, :-1] += flow
        q[:, 1:] -= flow
        q[-1] += side * H_SURFACE * (around - t[-1])
        q[:, -1] += end * H_SURFACE * (around - t[:, -1])
        return (q / (RHO * volume * capacity(t))).ravel()

    pattern, index = lil_matrix((n, n)), np.arange(n).reshape(nr + 1, nz + 1)
    for a, b in ((index[1:], index[:-1]), (index[:, 1:], index[:, :-1])):
        pattern[a.ravel(), b.ravel()] = 1
        pattern[b.ravel(), a.ravel()] = 1
    pattern.setdiag(1)
    pattern = csr_matrix(pattern)
    times = np.arange(0, kiln_s[-1] + 1e-6, EVERY)
    centre, y = np.full(len(times), T0), np.full(n, T0)
    begun = time.perf_counter()
    for a, b in zip(kiln_s[:-1], kiln_s[1:]):
        due = times[(times > a + 1e-9) & (times <= b + 1e-9)]
        found = solve_ivp(rise, (a, b), y, method="BDF", t_eval=due, rtol=rtol, atol=rtol * 10, jac_sparsity=pattern, max_step=600.0, first_step=1.0)
        assert found.success, found.message
        centre[np.rint(due / EVERY).astype(int)] = found.y[0]
        y = found.y[:, -1]
    return time.perf_counter() - begun, centre


def ours(binary):
    with tempfile.TemporaryDirectory() as folder:
        path = os.path.join(folder, "core")
        subprocess.run([binary, "--beside", path], check=True)
        lines = open(path).read().split()
    return float(lines[0]), np.array(lines[1:], float)


def main():
    here = os.path.dirname(os.path.abspath(__file__))
    binary = sys.argv[1]
    reference = sys.argv[2] if len(sys.argv) > 2 else os.path.join(here, "..", "heat", "data", "flask_102x152_bcA.csv")
    rounds = int(sys.argv[3]) if len(sys.argv) > 3 else 3
    exact = np.array([float(row["T_centre_C"]) for row in csv.DictReader(open(reference))])
    runs = []
    # In turns, so that what else the machine does falls on both.
    for _ in range(rounds):
        runs.append((scipy_bdf(), ours(binary)))
    scipy_s, our_s = (statistics.median(run[side][0] for run in runs) for side in (0, 1))
    for name, side, seconds in (("scipy BDF 17x26, rtol 1e-4", 0, scipy_s), ("ours", 1, our_s)):
        off = np.abs(runs[-1][side][1] - exact)
        print(f"{name}: {seconds * 1e3:.2f} ms, centre off the reference by at most {off.max():.2f} degC, mean {off.mean():.4f}")
    ratios = sorted(run[0][0] / run[1][0] for run in runs)
    print(f"ratio {scipy_s / our_s:.0f} (rounds from {ratios[0]:.0f} to {ratios[-1]:.0f})")


if __name__ == "__main__":
    main()
