#!/usr/bin/python3
"""Coefficients of the rational form in src/statistics/special/mills-ratio.ts (Python 3, mpmath 1.2.1, 60 digits).

E(x) = phi(x)/Q(x) - x, the hazard of the standard normal law less x, on [0, infinity), is interpolated by
P(x)/Q(x) of degrees 10 and 11 at the 22 Chebyshev points of t in x = k (1 + t)/(1 - t), k = 4.5; the linear system
is solved with 60 digits. Prints the coefficients in rising powers and the largest relative error on 2000 points.
"""
from mpmath import cos, erfc, exp, lu_solve, matrix, mp, mpf, nstr, pi, sqrt

mp.dps = 60
DEGREE, K = 11, mpf("4.5")


def excess(x):
    if x > 1000:  # Laplace's continued fraction, exact to 60 digits here
        t = mpf(0)
        for k in range(60, 0, -1):
            t = k / (x + t)
        return t
    return 1 / (sqrt(pi / 2) * exp(x * x / 2) * erfc(x / sqrt(2))) - x


points = 2 * DEGREE
a, b = matrix(points, points), matrix(points, 1)
for i in range(points):
    t = cos(pi * (2 * i + 1) / (2 * points))
    x = K * (1 + t) / (1 - t)
    scale = (1 + x / K) ** DEGREE
    for j in range(DEGREE):
        a[i, j] = x**j / scale
        a[i, DEGREE + j] = -excess(x) * x ** (j + 1) / scale
    b[i] = excess(x) / scale
solution = lu_solve(a, b)
p = [solution[j] for j in range(DEGREE)]
q = [mpf(1)] + [solution[DEGREE + j] for j in range(DEGREE)]
print("P", *[nstr(c, 20) for c in p], sep="\n  ")
print("Q", *[nstr(c, 20) for c in q], sep="\n  ")
worst = mpf(0)
for i in range(2000):
    t = cos(pi * (i + mpf("0.5")) / 2000)
    x = K * (1 + t) / (1 - t)
    r = sum(c * x**j for j, c in enumerate(p)) / sum(c * x**j for j, c in enumerate(q))
    worst = max(worst, abs(r / excess(x) - 1))
print("largest relative error", nstr(worst, 3))
