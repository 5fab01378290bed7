"""Times scipy's curve_fit on the benchmark series: analytic jacobian, scaled, start from the data.

    dotnet run -c Release --project benchmarks/OilCondition.Benchmarks -- series > series.csv
    python3 benchmarks/peers/decay_scipy.py series.csv
"""
import csv
import statistics
import sys
import time

import numpy as np
import scipy
from scipy.optimize import curve_fit


def model(t, floor, amplitude, k):
    return floor + amplitude * np.exp(-k * t)


def jacobian(t, floor, amplitude, k):
    e = np.exp(-k * t)
    return np.column_stack((np.ones_like(t), e, -amplitude * t * e))


series = {}
with open(sys.argv[1], newline="") as file:
    for row in csv.DictReader(file):
        key = (int(row["count"]), int(row["series"]))
        series.setdefault(key, []).append((float(row["time"]), float(row["value"])))

print("numpy", np.__version__, "scipy", scipy.__version__)
for count in (12, 50, 200):
    data = []
    for (n, _), points in series.items():
        if n == count:
            t, y = np.array(points).T
            data.append((t / t[-1], y / y.max()))
    for method, bounds in (("lm", None), ("trf", ([0, -np.inf, 0], [np.inf, np.inf, np.inf]))):
        rounds, failed = [], 0
        for _ in range(5):
            failed = 0
            begin = time.perf_counter()
            for t, y in data:
                keywords = {} if bounds is None else {"bounds": bounds}
                try:
                    curve_fit(model, t, y, p0=(max(y[-1], 0.01), y[0] - y[-1], 1), jac=jacobian, method=method, **keywords)
                except RuntimeError:
                    failed += 1
            rounds.append((time.perf_counter() - begin) / len(data) * 1e6)
        print(f"n={count} {method}: {statistics.median(rounds):.1f} us a fit, {failed} of {len(data)} failed")
