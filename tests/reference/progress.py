#!/usr/bin/python3
"""Writes progress-slopes.json: slopes of Theil and Sen with their intervals, and normal quantiles, by scipy.

Run by hand with Debian's python3-scipy, not by the tests: /usr/bin/python3 tests/reference/progress.py
"""

import datetime
import json
import math
import pathlib
import random

import numpy
import scipy
from scipy.stats import norm, theilslopes

CONFIDENCES = [0.95, 1 - 0.05 / 5, 1 - 0.05 / 8]


def series(chance):
    """Values by lesson, some of them many times the same, some lessons left out."""
    for count in range(3, 25):
        lessons = sorted(chance.sample(range(count + 4), count))
        drift = chance.uniform(-0.05, 0.05)
        yield lessons, [0.4 + drift * x + chance.gauss(0, 0.1) for x in lessons]
        # Shares of a few approaches, and middle levels: many are equal.
        yield lessons, [chance.choice([0, 1 / 3, 0.5, 2 / 3, 1]) for _ in lessons]
        yield lessons, [chance.choice([2, 2.5, 3, 3.5, 4]) + (x > count / 2) for x in lessons]
    yield list(range(6)), [1.0] * 6
    yield list(range(12)), [0.02 * x for x in range(12)]


def ranks_inside(values, confidence):
    """Whether both ranks of Sen (1968), equation 2.6, are among the slopes; scipy brings in those that are not."""
    count = len(values)
    slopes = count * (count - 1) // 2
    ties = [values.count(value) for value in set(values)]
    part = lambda n: n * (n - 1) * (2 * n + 5)
    sigma = math.sqrt((part(count) - sum(map(part, ties))) / 18)
    reach = norm.ppf((1 + confidence) / 2) * sigma
    return numpy.round((slopes - reach) / 2) - 1 >= 0 and numpy.round((slopes + reach) / 2) < slopes


def case(lessons, values, confidence):
    answer = theilslopes(values, lessons, confidence)
    inside = bool(ranks_inside(values, confidence))
    interval = {"low": float(answer.low_slope), "high": float(answer.high_slope)} if inside else None
    return {
        "lessons": lessons,
        "values": values,
        "confidence": confidence,
        "slope": float(answer.slope),
        "interval": interval,
    }


def main():
    chance = random.Random("progress")
    cases = [case(x, y, level) for x, y in series(chance) for level in CONFIDENCES]
    probabilities = [0.5, 0.6, 0.9, 0.975, 0.995, 0.999, 1 - 1e-6, 0.25, 0.025, 1e-4]
    answer = {
        "about": "Slopes of Theil and Sen with their intervals (scipy.stats.theilslopes) and quantiles of the normal "
        "distribution (scipy.stats.norm.ppf). interval: null where a rank of Sen's is not among the slopes, told by "
        "this script from equation 2.6; scipy then gives the smallest or largest slope in its place.",
        "source": f"scipy {scipy.__version__}, numpy {numpy.__version__}, by tests/reference/progress.py",
        "date": datetime.date.today().isoformat(),
        "status": "computed",
        "slopes": cases,
        "quantiles": [{"probability": p, "quantile": float(norm.ppf(p))} for p in probabilities],
    }
    rows = lambda key: ",\n".join(f"  {json.dumps(row)}" for row in answer[key])
    head = ",\n".join(f' "{key}": {json.dumps(answer[key])}' for key in ["about", "source", "date", "status"])
    text = f'{{\n{head},\n "slopes": [\n{rows("slopes")}\n ],\n "quantiles": [\n{rows("quantiles")}\n ]\n}}\n'
    pathlib.Path(__file__).with_name("progress-slopes.json").write_text(text)


main()
