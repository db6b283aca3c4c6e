#!/usr/bin/python3
"""Writes school-statistics.json: quantiles, intervals, differences and least squares within clusters, by scipy and numpy.

Run by hand with Debian's python3-scipy, not by the tests: /usr/bin/python3 tests/reference/school.py
"""

import datetime
import itertools
import json
import math
import pathlib
import random

import numpy
import scipy
from scipy.optimize import brentq
from scipy.special import betaincinv
from scipy.stats import binomtest, mannwhitneyu, norm, t, ttest_ind

CONFIDENCES = [0.95, 1 - 0.05 / 6]


def t_quantile(probability, df):
    """scipy.stats.t.ppf is right to about 1e-9 only (its distribution function at 6.885 for 0.975 of 1.37 is off by
    3e-11); the inverse of the incomplete beta function is right to the last digits, and both have to agree."""
    x = betaincinv(df / 2, 0.5, 2 * min(probability, 1 - probability))
    quantile = math.copysign(math.sqrt(df * (1 - x) / x), probability - 0.5)
    assert math.isclose(quantile, t.ppf(probability, df), rel_tol=1e-8, abs_tol=1e-8)
    return quantile


def t_quantiles():
    for df in [1, 1.37, 2, 2.5, 3, 4.9, 7, 10, 13.61, 19, 28.4, 50, 99.5, 250, 1000]:
        for probability in [0.5, 0.6, 0.75, 0.9, 0.975, 0.99, 0.995, 1 - 0.05 / 24, 0.999, 0.25, 0.025]:
            yield {"df": df, "probability": probability, "quantile": t_quantile(probability, df)}


def welch(chance):
    """scipy tells the statistic and its probability; the interval follows from them, and that they fit is checked."""
    for _ in range(40):
        sizes = chance.randint(2, 30), chance.randint(2, 30)
        spread = chance.uniform(0.01, 2), chance.uniform(0.01, 2)
        first, second = ([round(chance.gauss(5 * k, s), 3) for _ in range(n)] for k, (n, s) in enumerate(zip(sizes, spread)))
        answer = ttest_ind(first, second, equal_var=False)
        difference = float(numpy.mean(first) - numpy.mean(second))
        error = difference / float(answer.statistic)
        parts = [numpy.var(values, ddof=1) / len(values) for values in (first, second)]
        df = float(sum(parts) ** 2 / sum(part**2 / (n - 1) for part, n in zip(parts, sizes)))
        assert math.isclose(2 * t.sf(abs(answer.statistic), df), answer.pvalue, rel_tol=1e-9)
        reaches = [t_quantile((1 + c) / 2, df) * error for c in CONFIDENCES]
        intervals = [{"low": difference - r, "high": difference + r, "confidence": c} for c, r in zip(CONFIDENCES, reaches)]
        yield {"first": first, "second": second, "difference": difference, "df": df, "intervals": intervals}


def wilson():
    for trials in [1, 2, 5, 8, 20, 41, 300]:
        for hits in sorted({0, 1, trials // 3, trials // 2, trials - 1, trials}):
            for confidence in CONFIDENCES:
                interval = binomtest(hits, trials).proportion_ci(confidence, method="wilson")
                reach = float(norm.ppf((1 + confidence) / 2))
                yield {"hits": hits, "trials": trials, "reach": reach, "low": float(interval.low), "high": float(interval.high)}


def shares(chance):
    """A share over clusters, by leaving each of them out, with the interval of Wilson solved for its ends."""
    while True:
        sizes = [chance.randint(1, 20) for _ in range(chance.randint(2, 15))]
        hits = [sum(chance.random() < rate for _ in range(size)) for size, rate in zip(sizes, iter(chance.random, 2))]
        total, trials, count = sum(hits), sum(sizes), len(sizes)
        if total in (0, trials):
            continue
        share = total / trials
        without = [(total - h) / (trials - n) for h, n in zip(hits, sizes)]
        variance = (count - 1) / count * sum((one - share) ** 2 for one in without)
        effective = trials / max(1, variance * trials / (share * (1 - share)))
        reach = t_quantile(0.975, max(1, trials**2 / sum(n * n for n in sizes) - 1))
        off = lambda p: (share - p) ** 2 - reach**2 * p * (1 - p) / effective
        ends = {"low": brentq(off, 0, share, xtol=1e-14), "high": brentq(off, share, 1, xtol=1e-14)}
        yield {"clusters": [{"hits": h, "trials": n} for h, n in zip(hits, sizes)], "effectiveTrials": effective, **ends}


def superiority(chance):
    for _ in range(25):
        first, second = ([chance.randint(0, 12) / 4 for _ in range(chance.randint(1, 30))] for _ in range(2))
        u = float(mannwhitneyu(first, second).statistic)
        yield {"first": first, "second": second, "chance": u / len(first) / len(second)}


def quantiles(chance):
    for count in [1, 2, 3, 4, 7, 12, 25]:
        values = sorted(round(chance.gauss(0, 1), 3) for _ in range(count))
        for share in [0, 0.25, 0.5, 0.75, 0.9, 1]:
            yield {"sorted": values, "share": share, "quantile": float(numpy.quantile(values, share))}


def within(chance):
    """A column of zeros and ones for each cluster beside the others, in place of taking its mean away."""
    for case in range(30):
        sizes = [chance.randint(1, 12) for _ in range(chance.randint(3, 12))]
        clusters = [cluster for cluster, size in enumerate(sizes) for _ in range(size)]
        count = chance.randint(1, 4)
        columns = [[chance.choice([0, 1, 1, 3]) + (row / 8 if k == 1 else 0) for row in range(len(clusters))] for k in range(count)]
        level = [chance.gauss(0, 3) for _ in sizes]
        values = [round(level[c] + sum(col[i] for col in columns) * 0.3 + chance.gauss(0, 0.5), 3) for i, c in enumerate(clusters)]
        dummies = numpy.eye(len(sizes))[clusters]
        design = numpy.column_stack([*map(numpy.array, columns), dummies])
        df = len(values) - design.shape[1]
        if df < 1 or numpy.linalg.matrix_rank(design) < design.shape[1]:
            continue
        beta, *_ = numpy.linalg.lstsq(design, numpy.array(values), rcond=None)
        residuals = numpy.array(values) - design @ beta
        variance = float(residuals @ residuals / df)
        covariance = variance * numpy.linalg.inv(design.T @ design)
        weights = numpy.array([chance.uniform(-1, 1) for _ in columns])
        yield {
            "clusters": clusters,
            "columns": columns,
            "values": values,
            "coefficients": [float(b) for b in beta[:count]],
            "df": df,
            "weights": weights.tolist(),
            **contrast(design, residuals, clusters, numpy.concatenate([weights, numpy.zeros(len(sizes))]), covariance),
        }


def contrast(design, residuals, clusters, weights, covariance):
    """The variance of a sum of coefficients with independent residuals, and with those of a cluster alike."""
    rows = design @ numpy.linalg.inv(design.T @ design) @ weights
    groups = [numpy.array(clusters) == cluster for cluster in sorted(set(clusters))]
    equal = sum(rows**2) ** 2 / sum(sum(rows[group] ** 2) ** 2 for group in groups)
    alike = sum(float(rows[group] @ residuals[group]) ** 2 for group in groups) * equal / (equal - 1)
    return {"alone": float(weights @ covariance @ weights), "alike": float(alike), "equalClusters": float(equal)}


def main():
    chance = random.Random("school")
    tables = {
        "tQuantiles": list(t_quantiles()),
        "welch": list(welch(chance)),
        "wilson": list(wilson()),
        "shares": list(itertools.islice(shares(chance), 30)),
        "superiority": list(superiority(chance)),
        "quantiles": list(quantiles(chance)),
        "within": list(within(chance)),
    }
    head = {
        "about": "Quantiles of Student's t (scipy.special.betaincinv), differences of means (ttest_ind with unequal variances), "
        "intervals of shares (binomtest, wilson), shares over clusters by leaving each out (with brentq), the probability of superiority (mannwhitneyu, U over all pairs), "
        "quantiles of lists (numpy.quantile) and least squares with a column for each cluster (numpy.linalg.lstsq); "
        "variances of sums of coefficients and equal clusters written out in this script.",
        "source": f"scipy {scipy.__version__}, numpy {numpy.__version__}, by tests/reference/school.py",
        "date": datetime.date.today().isoformat(),
        "status": "computed",
    }
    lines = [f' "{key}": {json.dumps(value)}' for key, value in head.items()]
    for key, rows in tables.items():
        lines.append(f' "{key}": [\n' + ",\n".join(f"  {json.dumps(row)}" for row in rows) + "\n ]")
    text = "{\n" + ",\n".join(lines) + "\n}\n"
    pathlib.Path(__file__).with_name("school-statistics.json").write_text(text)


main()
