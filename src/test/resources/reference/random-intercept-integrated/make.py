"""Random-intercept logistic regression by maximum likelihood, with the integral over each intercept on
a grid of 8001 points, computed independently of the program. Reads the data of lesnoff-2004 and
synthetic-patches-120 beside this folder, and those in case.json, whose fits it writes anew. Rerun:
python3 make.py (numpy, scipy)."""
import json
import numpy as np
from scipy.optimize import minimize
from scipy.special import expit, gammaln, log_expit

U = np.linspace(-10, 10, 8001)
LN_W = -0.5 * U * U - 0.5 * np.log(2 * np.pi) + np.log(U[1] - U[0])


class Data:
    def __init__(self, terms, x, events, trials, group, before=(), after=()):
        self.terms, self.x = terms, np.array(x, float)
        self.y, self.m = np.array(events, float), np.array(trials, float)
        self.groups = sorted(set(group))
        self.g = np.array([self.groups.index(k) for k in group])
        self.gap = self.x[list(after)] - self.x[list(before)]
        self.constant = (gammaln(self.m + 1) - gammaln(self.y + 1) - gammaln(self.m - self.y + 1)).sum()

    def value_and_slope(self, beta, s):
        """Log-likelihood, and its slope by Fisher's identity, along the coefficients and s."""
        z = (self.x @ beta)[:, None] + s * U
        ln = self.y[:, None] * log_expit(z) + (self.m - self.y)[:, None] * log_expit(-z)
        r = self.y[:, None] - self.m[:, None] * expit(z)
        total, slope = self.constant, np.zeros(len(beta) + 1)
        for k in range(len(self.groups)):
            rows = self.g == k
            h = ln[rows].sum(0) + LN_W
            top = h.max()
            p = np.exp(h - top)
            total += top + np.log(p.sum())
            p /= p.sum()
            slope[:-1] += (r[rows] @ p) @ self.x[rows]
            slope[-1] += (r[rows] * U).sum(0) @ p
        for d in self.gap:  # two looks at one patch: L(b) - L(a) = L(b) L(-a) (1 - exp(-(b - a)))
            w = d @ beta
            if w <= 0:
                return -np.inf, slope
            total += np.log(-np.expm1(-w))
            slope[:-1] += d / np.expm1(w)
        return total, slope

    def aghq(self, beta, s, points):
        """The same with Gauss-Hermite points about each mode."""
        t, w = np.polynomial.hermite_e.hermegauss(points)
        eta, total = self.x @ beta, self.constant
        for k in range(len(self.groups)):
            rows = self.g == k
            f = lambda u: (self.y[rows, None] * log_expit(eta[rows, None] + s * u)
                           + (self.m - self.y)[rows, None] * log_expit(-eta[rows, None] - s * u)).sum(0) - u * u / 2
            u = U[np.argmax(f(U))]
            for _ in range(50):
                p = expit(eta[rows] + s * u)
                bend = 1 + s * s * (self.m[rows] * p * (1 - p)).sum()
                u += np.clip((s * (self.y[rows] - self.m[rows] * p).sum() - u) / bend, -0.5, 0.5)
            scale = bend ** -0.5
            h = f(u + scale * t) + t * t / 2
            total += h.max() + np.log((w * np.exp(h - h.max())).sum() * scale / np.sqrt(2 * np.pi))
        for d in self.gap:
            total += np.log(-np.expm1(-(d @ beta)))
        return total

    def best(self, start, at=None):
        """The maximum, over all arguments or with s fixed; columns are centred for the search."""
        middle = np.r_[0, self.x[:, 1:].mean(0)]
        scale = np.r_[1, self.x[:, 1:].std(0)]
        lift = np.diag(1 / scale)
        lift[0, :] -= middle / scale
        free = len(start) if at is None else len(start) - 1

        def both(v):
            s = v[-1] if at is None else at
            value, slope = self.value_and_slope(lift @ v[:len(middle)], s)
            slope = np.r_[lift.T @ slope[:-1], slope[-1]][:free]
            return -value, -slope

        v = np.linalg.solve(lift, start[:len(middle)])
        v = np.r_[v, start[-1]][:free]
        v = minimize(lambda w: both(w)[0] if np.isfinite(both(w)[0]) else 1e10, v, method="Nelder-Mead",
                     options=dict(maxiter=4000, maxfev=6000, xatol=1e-6, fatol=1e-9)).x
        for _ in range(60):  # Newton, bends by differences of the slopes
            bend = np.array([(both(v + e)[1] - both(v - e)[1]) / 2e-5 for e in 1e-5 * np.eye(free)])
            bend = 0.5 * (bend + bend.T)
            move = -np.linalg.solve(bend, both(v)[1])
            move *= min(1, 0.5 / abs(move).max())
            v = v + move
            if abs(move).max() < 1e-11:
                break
        covariance = np.linalg.inv(bend)
        full = np.eye(free)
        full[:len(middle), :len(middle)] = lift
        errors = np.sqrt(np.diag(full @ covariance @ full.T))
        return lift @ v[:len(middle)], (v[-1] if at is None else at), -both(v)[0], errors, abs(both(v)[1]).max()


def published(folder, events, trials, group, terms):
    columns = json.load(open("../%s/case.json" % folder))["data"]["columns"]
    n = len(columns[group])
    x = [[1 if t == "(Intercept)" else columns[t][i] if t in columns
          else int(any(t == c + columns[c][i] for c in columns if t.startswith(c))) for t in terms] for i in range(n)]
    return Data(terms, x, columns[events], columns[trials] if trials else [1] * n, columns[group])


def ours(event):
    t = json.load(open("case.json"))["data"][event]
    x = list(zip([1] * len(t["shown"]), t["ln_dose"], t["ln_fluence_over_f0"], t["ln_passes"]))
    return Data(["(Intercept)", "ln_dose", "ln_fluence_over_f0", "ln_passes"], x, t["shown"], [1] * len(x), t["board"],
                t["before"], t["after"])


def fit(name, data, start):
    beta, s, value, errors, slope = data.best(np.array(start))
    check = data.aghq(beta, s, 99)
    assert abs(check - value) < 1e-7, (check, value)
    print(name, beta, s, value, slope)
    return dict(id=name, expected=dict(
        terms=data.terms, coef=list(beta), random_intercept_sd=abs(s), loglik_with_constants=value,
        aic=2 * (len(beta) + 1 - value), se_full_hessian=list(errors[:-1]), se_log_sd_full_hessian=errors[-1] / abs(s)))


def profile(data, deviations, start):
    """The maximum over the coefficients with the deviation fixed."""
    points, beta = [], np.array(start)
    for s in deviations:
        beta, _, value, _, slope = data.best(np.r_[beta, s], s)
        print(s, beta, value, slope, "off by, 25 adaptive points:", data.aghq(beta, s, 25) - value,
              "Laplace:", data.aghq(beta, s, 1) - value)
        points.append(dict(random_intercept_sd=s, coef=list(beta), loglik=value))
    return dict(id="removal", expected=dict(points=points))


def written(value, depth=0):
    """JSON with a line for each key, lists of numbers on one."""
    if isinstance(value, dict):
        lines = [" " * (depth + 1) + json.dumps(k) + ": " + written(v, depth + 1) for k, v in value.items()]
        return "{\n" + ",\n".join(lines) + "\n" + " " * depth + "}"
    if isinstance(value, list) and value and isinstance(value[0], dict):
        return "[" + ", ".join(written(v, depth) for v in value) + "]"
    return json.dumps(value)


if __name__ == "__main__":
    period = ["(Intercept)", "period2", "period3", "period4"]
    patches = ["(Intercept)", "familyB", "familyC", "log10_fluence", "log10_pulses"]
    fits = [
        fit("lesnoff-2004", published("lesnoff-2004", "incidence", "size", "herd", period), [-1.4, -1, -1.1, -1.6, 0.65]),
        fit("synthetic-patches-120", published("synthetic-patches-120", "charred", None, "board", patches),
            [-5.4, 1.6, 3.4, 7.5, 1.4, 1.55]),
        fit("onset", ours("onset"), [-35, 9.5, 3.5, 6.2, 0.9]),
        profile(ours("removal"), [1, 2, 4, 8, 16], [-27, 13, 6.2, 10.1]),
    ]
    case = dict(json.load(open("case.json")), fits=fits)
    open("case.json", "w").write(written(case) + "\n")
