#!/usr/bin/env python3
"""Reference numbers for tests/learned/reference.rs, from scipy, numpy and statsmodels.

Run: python3 tests/tools/learned_reference.py > tests/learned/data/learned_reference.json
"""
import json
import sys

import numpy as np
import scipy
import statsmodels
import statsmodels.api as sm
from scipy import stats
from statsmodels.stats.multitest import multipletests
from statsmodels.stats.proportion import proportion_confint


def series(rng, jobs, kind):
    """Values in jobs: (job, day, value), several a job, days and values of many kinds."""
    rows = []
    for job in range(jobs):
        start = int(rng.integers(0, 1100)) + 19000
        level = {"density": 1.11, "loss": 0.012, "minutes": 43.0, "coarse": 2.0}[kind]
        spread = {"density": 0.02, "loss": 0.004, "minutes": 9.0, "coarse": 0.4}[kind]
        effect = rng.normal(0.0, spread)
        for _ in range(int(rng.integers(1, 5))):
            value = level + effect + rng.normal(0.0, spread / 3) + 1e-5 * (start - 19000) * level
            if kind == "coarse":
                value = round(value, 1)
            rows.append((job, start + int(rng.integers(0, 3)), float(value)))
    return rows


def learned(rows):
    jobs = {}
    for job, day, value in rows:
        jobs.setdefault(job, []).append((day, value))
    day = np.array([np.mean([d for d, _ in of]) for of in jobs.values()])
    value = np.array([np.mean([v for _, v in of]) for of in jobs.values()])
    n = len(value)
    out = {"rows": rows, "observations": len(rows), "jobs": n, "mean": value.mean(), "median": float(np.median(value))}
    if n >= 2:
        s = value.std(ddof=1)
        out["deviation"] = s
        out["mean_interval"] = list(stats.t.interval(0.95, n - 1, loc=value.mean(), scale=stats.sem(value)))
        # statsmodels' prediction of an intercept-only model is the prediction interval.
        fit = sm.OLS(value, np.ones(n)).fit()
        frame = fit.get_prediction(np.ones(1)).conf_int(obs=True, alpha=0.05)
        out["next_job"] = [float(frame[0][0]), float(frame[0][1])]
    if n >= 3:
        x = (day - day.mean()) / 30.0
        fit = sm.OLS(value, sm.add_constant(x)).fit()
        out["slope"] = float(fit.params[1])
        out["slope_interval"] = [float(v) for v in fit.conf_int(0.05)[1]]
        out["theil_sen"] = float(stats.theilslopes(value, x)[0])
    # Iglewicz & Hoaglin's score from scipy's median absolute deviation.
    mad = stats.median_abs_deviation(value)
    if n >= 5 and mad > 0:
        score = 0.6745 * (value - np.median(value)) / mad
        out["outliers"] = [[job, float(z)] for job, z in zip(jobs, score) if abs(z) > 3.5]
    return {k: (float(v) if isinstance(v, np.floating) else v) for k, v in out.items()}


def main():
    rng = np.random.default_rng(20240229)
    lists = [learned(series(rng, jobs, kind)) for kind in ["density", "loss", "minutes", "coarse"] for jobs in [2, 3, 4, 5, 8, 13, 40, 150, 600]]
    shares = []
    for hits, of in [(0, 1), (1, 1), (0, 12), (1, 12), (12, 12), (3, 40), (39, 40), (17, 600), (600, 600), (1, 6000), (240, 6000), (3000, 6000),
                     (50_000, 100_000), (7, 100_000), (99_999, 100_000)]:
        for level in [0.95, 0.99]:
            low, high = proportion_confint(hits, of, alpha=1 - level, method="beta")
            shares.append([hits, of, level, float(np.nan_to_num(low, nan=0.0)), float(np.nan_to_num(high, nan=1.0))])
    tables = []
    for table in [(1, 9, 11, 3), (3, 1, 1, 3), (0, 10, 0, 10), (5, 0, 0, 5), (8, 92, 30, 870), (60, 440, 220, 5280), (2, 498, 240, 5260), (0, 30, 40, 900),
                  (10, 10, 10, 10), (1, 0, 30, 60), (400, 4600, 3000, 47000), (7, 12, 0, 5)]:
        tables.append([*table, float(stats.fisher_exact([[table[0], table[1]], [table[2], table[3]]], alternative="two-sided").pvalue)])
    for _ in range(300):
        of, other = int(rng.integers(1, 400)), int(rng.integers(1, 3000))
        bad, other_bad = int(rng.binomial(of, rng.uniform(0, 0.5))), int(rng.binomial(other, rng.uniform(0, 0.3)))
        p = stats.fisher_exact([[bad, of - bad], [other_bad, other - other_bad]]).pvalue
        tables.append([bad, of - bad, other_bad, other - other_bad, float(p)])
    chances = []
    for count in [1, 2, 5, 12]:
        p = np.round(rng.uniform(0, 1, count) ** 4, 6)
        if count == 5:
            p[3] = p[1]
        chances.append([p.tolist(), multipletests(p, method="holm")[1].tolist()])
    json.dump({"made_with": {"scipy": scipy.__version__, "numpy": np.__version__, "statsmodels": statsmodels.__version__}, "lists": lists,
               "clopper_pearson": shares, "fisher": tables, "holm": chances}, sys.stdout, separators=(",", ":"))


main()
