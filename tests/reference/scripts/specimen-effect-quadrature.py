# Gauss-Hermite rules by numpy, and single-specimen likelihoods by mpmath at 40 digits.
# Python 3.11, numpy 1.24, mpmath 1.2. Run: python3 specimen-effect-quadrature.py > ../specimen-effect/quadrature.json
import json
import mpmath as mp
import numpy as np

mp.mp.dps = 40
rules = []
for n in (1, 2, 5, 25, 60):
    x, w = np.polynomial.hermite.hermgauss(n)
    rules.append({"order": n, "nodes": list(x), "weights": list(w)})

def specimen(levels, signs, eta, b, theta):
    def f(u):
        p = mp.mpf(1)
        for y, s in zip(levels, signs):
            p *= mp.ncdf(s * (eta + b * y + theta * u))
        return p * mp.npdf(u)
    return mp.quad(f, [-12, -6, -4, -3, -2, -1.5, -1, -0.5, 0, 0.5, 1, 1.5, 2, 3, 4, 6, 12])

cases = []
series = ([350, 375, 400, 425, 450, 475, 500], [-1, -1, -1, -1, -1, -1, 1])
sites = ([440, 460, 480, 500, 520, 540], [-1, 1, -1, -1, 1, 1])
coarse = ([350, 400, 450, 500], [-1, -1, -1, 1])
for (levels, signs), share in [(series, .3), (series, .8), (series, .95), (sites, .5), (sites, .9), (coarse, .5), (coarse, .9), (coarse, .95)]:
    theta = mp.sqrt(mp.mpf(share) / (1 - mp.mpf(share)))
    b = mp.sqrt(1 + theta ** 2) / 40
    g = lambda e, bb, t: mp.log(specimen(levels, signs, e, bb, t))
    eta = -b * 500
    h = mp.mpf("1e-12")
    cases.append({"levels": levels, "signs": signs, "eta": float(eta), "b": float(b), "theta": float(theta),
                  "logLikelihood": float(g(mp.mpf(float(eta)), mp.mpf(float(b)), mp.mpf(float(theta)))),
                  "byEta": float(mp.diff(lambda e: g(e, b, theta), eta, h=h)),
                  "byB": float(mp.diff(lambda v: g(eta, v, theta), b, h=h)),
                  "byTheta": float(mp.diff(lambda t: g(eta, b, t), theta, h=h))})
print(json.dumps({"source": "tests/reference/scripts/specimen-effect-quadrature.py", "rules": rules, "cases": cases}, indent=0))
