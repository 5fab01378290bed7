"""Times scipy's curve_fit on the benchmark series: analytic jacobian, scaled, start from the data.

    dotnet run -c Release --project benchmarks/OilCondition.Benchmarks -- series > series.csv
    python3 benchmarks/peers/decay_scipy.py series.csv

'failed' counts fits that gave up, left the box (k <= 0 or floor < 0), or ended more than 0.1 % above the least sum of squares found by
a dense grid of k with the other two parts solved out, inside the box k >= 1/64 of the span, floor >= 0.
"""
import csv
import statistics
import sys
import time

import numpy as np
import scipy
from scipy.optimize import OptimizeWarning, curve_fit
import warnings

warnings.simplefilter("ignore", OptimizeWarning)
warnings.simplefilter("ignore", RuntimeWarning)


def model(t, floor, amplitude, k):
    return floor + amplitude * np.exp(-k * t)


def jacobian(t, floor, amplitude, k):
    e = np.exp(-k * t)
    return np.column_stack((np.ones_like(t), e, -amplitude * t * e))


def least_squares_of_a_grid(t, y):
    k = np.exp(np.linspace(np.log(1 / 64), np.log(12 / t[1]), 3000))[:, None]
    e = np.exp(-k * t)
    ec = e - e.mean(axis=1, keepdims=True)
    amplitude = (ec @ y) / (ec * ec).sum(axis=1)
    floor = y.mean() - amplitude * e.mean(axis=1)
    bounded = floor < 0
    amplitude = np.where(bounded, (e @ y) / (e * e).sum(axis=1), amplitude)
    floor = np.where(bounded, 0, floor)
    return ((y - floor[:, None] - amplitude[:, None] * e) ** 2).sum(axis=1).min()


series = {}
with open(sys.argv[1], newline="") as file:
    for row in csv.DictReader(file):
        key = (row["kind"], int(row["count"]), int(row["series"]))
        series.setdefault(key, []).append((float(row["time"]), float(row["value"])))

print("numpy", np.__version__, "scipy", scipy.__version__)
for kind in ("ordinary", "mixed"):
    for count in (12, 50, 200):
        data = []
        for (k, n, _), points in series.items():
            if n == count and k == kind:
                t, y = np.array(points).T
                data.append((t / t[-1], y / y.max()))
        grid = [least_squares_of_a_grid(t, y) for t, y in data]
        for method, bounds in (("lm", None), ("trf", ([0, -np.inf, 0], [np.inf, np.inf, np.inf]))):
            rounds, failed = [], 0
            for _ in range(3):
                failed = 0
                spent = 0.0
                for (t, y), least in zip(data, grid):
                    keywords = {} if bounds is None else {"bounds": bounds}
                    begin = time.perf_counter()
                    try:
                        p, _ = curve_fit(
                            model, t, y, p0=(max(y[-1], 0.01), y[0] - y[-1], 1), jac=jacobian, method=method, **keywords
                        )
                    except (RuntimeError, ValueError):
                        p = None
                    spent += time.perf_counter() - begin
                    failed += p is None or p[2] <= 0 or p[0] < 0 or ((y - model(t, *p)) ** 2).sum() > 1.001 * least + 1e-12
                rounds.append(spent / len(data) * 1e6)
            print(f"{kind} n={count} {method}: {statistics.median(rounds):.0f} us a fit, {failed} of {len(data)} failed")
