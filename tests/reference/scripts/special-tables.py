#!/usr/bin/python3
"""Values of the laws and special functions to 60 digits (Python 3, mpmath 1.2.1), for the tests of statistics/special and statistics/laws.

Arguments are doubles, taken exactly; results are printed with 17 digits. Tails that cancel are computed with as many
extra digits as they lose. Writes tests/reference/special/*.json, one table a file: columns, then rows.

    cd tests/reference/scripts && /usr/bin/python3 special-tables.py
"""
import json
import os

from mpmath import erfc, exp, expm1, log, log1p, loggamma, mp, mpf, pi, quad, sqrt

mp.dps = 60
OUT = os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "special")
WHERE = "tests/reference/scripts/special-tables.py"


def number(v):
    """A double, or None where it would not be a normal one."""
    x = float(v)
    return None if abs(x) != 0 and abs(x) < 1e-307 or abs(x) == float("inf") else x


def write(name, columns, rows, note):
    lines = ",\n    ".join(json.dumps([c if isinstance(c, float) else number(c) for c in r]) for r in rows)
    with open(os.path.join(OUT, name + ".json"), "w") as f:
        f.write('{\n  "source": "mpmath 1.2.1, 60 digits, %s",\n  "note": %s,\n  "columns": %s,\n  "rows": [\n    %s\n  ]\n}\n'
                % (WHERE, json.dumps(note), json.dumps(columns), lines))
    print(name, len(rows))


def laplace(x):
    """Mills ratio of the normal law for large x."""
    t = mpf(0)
    for k in range(400, 0, -1):
        t = k / (x + t)
    return 1 / (x + t)


def mills(x):
    return laplace(x) if x > 40 else sqrt(pi / 2) * exp(x * x / 2) * erfc(x / sqrt(2))


def normal(z):
    z = mpf(z)
    with mp.workdps(60):
        log_pdf = -z * z / 2 - log(2 * pi) / 2
        tail = log_pdf + log(mills(abs(z)))
        other = log1p(-exp(tail))
        log_cdf, log_sf = (tail, other) if z < 0 else (other, tail)
        g = exp(log_pdf - log_cdf)
        with mp.workdps(120):
            return log_pdf, -z, mpf(-1), log_cdf, log_sf, g, -g * (z + g)


def logistic(z):
    z = mpf(z)
    with mp.workdps(60 + int(abs(z) / 2) + 5):
        cdf, sf = 1 / (1 + exp(-z)), 1 / (1 + exp(z))
        return log(cdf * sf), sf - cdf, -2 * cdf * sf, log(cdf), log(sf), sf, -cdf * sf


def smallest(z):
    z = mpf(z)
    with mp.workdps(60 + int(abs(z) / 2) + 5):
        w = exp(z)
        g = w / expm1(w) if w < 5000 else mpf(0)
        log_cdf = log1p(-exp(-w)) if w > 1 else log(-expm1(-w))
        return z - w, 1 - w, -w, log_cdf, -w, g, g * (1 - w - g)


COLUMNS = ["z", "pdf", "cdf", "sf", "logPdf", "dLogPdf", "d2LogPdf", "logCdf", "logSf", "dLogCdf", "d2LogCdf"]


def table(name, law, points, note):
    rows = []
    for z in points:
        lp, d, d2, lc, ls, g, h = law(z)
        rows.append([float(z), exp(lp), exp(lc), exp(ls), lp, d, d2, lc, ls, g, h])
    write(name, COLUMNS, rows, note)


body = sorted({round(x, 6) for x in [i / 4 + 0.0137 * (i % 7) for i in range(-40, 41)]} | {-1e-9, 1e-9, -0.5, 0.5, 0.0, 1.0, -1.0})
far = [10.7, 12.3, 15.1, 18.9, 22.2, 26.6, 30.3, 33.3, 35.7, 36.9, 37.0, 50.0, 137.7, 1e3, 12345.6, 1e6, 3e9]
both = sorted([-x for x in far] + body + far)
table("normal", normal, both, "null where the value is no normal double")
table("logistic", logistic, sorted([-x for x in far[:14]] + [-700.0, 700.0] + body + far[:14]), "null where the value is no normal double")
table("smallest-extreme-value", smallest,
      sorted([-1000.0, -700.0, -300.0, -100.0, -50.0, -37.0, -31.0, -29.9, -20.0, -15.5] + body + [6.4, 6.5, 6.55, 20.0, 700.0]),
      "null where the value is no normal double")

# Quantiles: p is a double, or its logarithm is.
probabilities = [1e-300, 1e-200, 1e-100, 1e-50, 1e-20, 1e-16, 1e-12, 1e-8, 1e-5, 1e-3, 0.01, 0.025, 0.05, 0.0749, 0.0751, 0.1, 0.2,
                 0.3, 0.4, 0.49, 0.4999999, 0.5, 0.5000001, 0.51, 0.6, 0.632, 0.7, 0.8, 0.9, 0.925, 0.95, 0.99, 0.999, 1 - 1e-6,
                 1 - 1e-10, 1 - 1e-14, 1 - 2**-53]


def normal_quantile(log_p):
    """z from log p, p at or below one half, by Newton on the log scale."""
    z = -sqrt(-2 * log_p)
    for _ in range(80):
        r = mills(-z)
        step = (-z * z / 2 - log(2 * pi) / 2 + log(r) - log_p) * r
        z -= step
        if abs(step) < mpf(10) ** -50 * max(1, abs(z)):
            return z
    raise ValueError(log_p)


rows = []
for p in probabilities:
    q = mpf(p)
    n = -normal_quantile(log(1 - q)) if q > 0.5 else (mpf(0) if q == 0.5 else normal_quantile(log(q)))
    rows.append([p, n, log(q / (1 - q)), log(-log1p(-q)), log(-log(q))])
write("quantiles", ["p", "normal", "logistic", "smallest", "smallestOfSf"], rows, "smallestOfSf: z with S(z) = p")
rows = []
for l in [-1e12, -1e6, -12345.6, -1000.0, -701.0, -699.0, -300.0, -100.0, -41.0, -39.0, -25.1, -24.9, -10.0, -3.1, -2.9, -1.0, -0.1, -0.051, -0.049,
          -1e-3, -1e-9, -1e-20, -1e-100, -1e-300]:
    m = mpf(l)
    with mp.workdps(400 if -1e-40 < l else 80):
        other = log1p(-exp(m)) if m < -1 else log(-expm1(m))
    n = normal_quantile(m) if m < -log(mpf(2)) else -normal_quantile(other)
    rows.append([l, n, m - other, log(-other) if m > -2000 else m])
write("log-quantiles", ["logP", "normal", "logistic", "smallest"], rows, "z with log F(z) = logP")

rows = []
for index, law in enumerate([normal, logistic, smallest]):
    for lo, hi in [(-30.0, -29.5), (-8.0, -3.0), (-3.0, 2.0), (0.1, 0.9), (-0.2, 0.2), (-1.0, -1.0 + 2**-30), (1.25, 1.25 + 2**-12), (1.0, 1.25),
                   (2.5, 3.0), (4.0, 5.0), (-12.0, 4.5), (-0.5, -0.4375), (-20.0, -20 + 2**-8), (0.25, 0.25 + 2**-5), (-6.0, -5.9), (-0.01, 6.0)]:
        with mp.workdps(200):
            z = lambda x: -expm1(-exp(mpf(x))) if index == 2 else 1 / (1 + exp(-mpf(x))) if index == 1 else erfc(-mpf(x) / sqrt(2)) / 2
            rows.append([float(index), lo, hi, log(z(hi) - z(lo))])
write("intervals", ["law", "a", "b", "logProbability"], rows, "law: 0 normal, 1 logistic, 2 smallest extreme value")

rows = [[x, loggamma(mpf(x))] for x in [1e-300, 1e-20, 1e-5, 0.1, 0.3, 0.49, 0.5, 0.51, 0.9, 0.999, 1 - 1e-9, 1.0, 1 + 1e-9, 1.1, 1.46, 1.49, 1.51,
                                        1.9, 2 - 1e-9, 2.0, 2 + 1e-9, 2.4, 2.6, 3.0, 5.5, 9.9, 10.1, 15.9, 16.1, 57.3, 171.6, 1e3, 12345.6, 1e8, 1e100]]
write("log-gamma", ["x", "logGamma"], rows, "")


def incomplete_gamma(a, x):
    """Lower and upper logarithms from the series of P, with the digits that Q loses."""
    a, x = mpf(a), mpf(x)
    with mp.workdps(340):  # rows with Q below e^-600 are left out, so Q keeps 80 digits
        term = total = 1 / a
        n = 0
        while term > total * mpf(10) ** -(mp.dps + 5):
            n += 1
            term *= x / (a + n)
            total += term
        log_p = a * log(x) - x - loggamma(a) + log(total)
        return log_p, log1p(-exp(log_p))


rows = []
for a in [0.01, 0.5, 0.9, 1.0, 1.5, 3.5, 10.0, 31.7, 120.5, 1000.0, 20000.0]:
    for r in [1e-6, 0.03, 0.3, 0.8, 0.95, 1.0, 1.02, 1.3, 2.0, 5.0, 20.0]:
        x = float("%.6g" % (a * r + (0.1 * r if a < 1 else 0)))
        if a >= 1000 and not 0.7 < r < 1.4:
            continue
        lp, lq = incomplete_gamma(a, x)
        if lq > -600:
            rows.append([a, x, lp, lq])
write("incomplete-gamma", ["a", "x", "logLower", "logUpper"], rows, "logarithms of P and Q")


def below_mean(a, b, x):
    """log I_x(a, b) by the positive series of x^a y^b/(a B) 2F1(a + b, 1; a + 1; x)."""
    term = total = mpf(1)
    n = 0
    while term > total * mpf(10) ** -(mp.dps + 3):
        term *= (a + b + n) / (a + 1 + n) * x
        total += term
        n += 1
    return a * log(x) + b * log1p(-x) - log(a) - (loggamma(a) + loggamma(b) - loggamma(a + b)) + log(total)


def incomplete_beta(a, b, x):
    """Logarithms of both tails."""
    with mp.workdps(340):  # rows with a tail below e^-650 are left out
        a, b, x = mpf(a), mpf(b), mpf(x)
        if x * (a + b) < a:
            lower = below_mean(a, b, x)
            return lower, log1p(-exp(lower))
        upper = below_mean(b, a, 1 - x)
        return log1p(-exp(upper)), upper


rows = []
for a, b in [(0.5, 0.5), (0.5, 8.0), (12.5, 0.5), (1.0, 1.0), (2.0, 3.0), (4.0, 17.0), (30.5, 0.5), (100.0, 100.0), (3.0, 2000.0), (1500.0, 900.0)]:
    for x in [1e-12, 1e-3, 0.05, 0.3, 0.48, 0.6, 0.625, 0.9, 0.999]:
        lo, up = incomplete_beta(a, b, x)
        if lo > -650 and up > -650:
            rows.append([a, b, x, lo, up])
write("incomplete-beta", ["a", "b", "x", "logLower", "logUpper"], rows, "logarithms of I_x(a, b) and 1 - I_x(a, b); y is 1 - x of the double x")


# Noncentral t and studentized range by Gauss-Legendre / tanh-sinh quadrature over s, another rule than the code's.
mp.dps = 30


def spread_density(v, s):
    return exp(log(mpf(2)) + v / 2 * log(v / 2) - loggamma(v / 2) + (v - 1) * log(s) - v * s * s / 2)


def ncdf(z):
    return erfc(-z / sqrt(2)) / 2


def over_spread(v, f):
    top = 1 + 14 / sqrt(2 * v)
    cuts = [mpf(0)] + [top * i / 24 for i in range(1, 25)] + [top * 2]
    return quad(lambda s: spread_density(v, s) * f(s) if s > 0 else mpf(0), cuts)


rows = []
for v, d, t in [(5, 3.0, 7.0), (5, 3.0, -1.0), (19, 7.35, 10.0), (19, 7.35, 3.0), (9, 0.0, 2.262), (1, 1.0, 3.0), (2, 2.5, 40.0), (199, 23.3, 26.5),
                (59, -4.0, -2.0), (59, 4.0, 25.0), (29, 12.7, 12.7)]:
    v, D, T = mpf(v), mpf(d), mpf(t)
    rows.append([float(v), d, t, over_spread(v, lambda s: ncdf(T * s - D)), over_spread(v, lambda s: ncdf(D - T * s))])
write("noncentral-t", ["degrees", "shift", "t", "cdf", "sf"], rows, "quadrature with 30 digits")

mp.dps = 25


def range_beyond(k, w):
    """P(range of k > w), trapezoidal with a step at which 25 digits stand still."""
    h = mpf(1) / 12
    total = mpf(0)
    for i in range(-144, 144 + int(12 * w)):
        z = i * h
        total += exp(-z * z / 2) * (ncdf(z) ** (k - 1) - (ncdf(z) - ncdf(z - w)) ** (k - 1))
    return k * h * total / sqrt(2 * pi)


rows = []
for k, v, q in [(4, 16, 4.0), (3, 5, 8.0), (2, 10, 3.151), (8, 40, 6.5), (5, 4, 1.0)]:
    v = mpf(v)
    cuts = [0, mpf(1) / 4, mpf(1) / 2, mpf(3) / 4, 1, mpf(5) / 4, mpf(3) / 2, 2, 3, 5]
    upper = quad(lambda s: spread_density(v, s) * range_beyond(k, q * s), cuts, method="gauss-legendre", maxdegree=4)
    rows.append([float(k), float(v), q, upper])
write("studentized-range", ["groups", "degrees", "q", "sf"], rows, "nested quadrature with 25 digits")
