# The same lives in numpy: every array as long as there are lives. Centre crack, Forman, one cycle over and over.
import json
import sys
import time

import numpy as np

q = json.load(sys.stdin)
factors = np.fromfile(q["factors"]).reshape(-1, 3)
begun = time.perf_counter()
worked = time.process_time()
count = len(factors)
np.random.default_rng(q["seed"]).standard_normal((count, 3))  # its own draws cost as much; those of the other side are used
rate, stress, tough = factors.T
W, Y, K, TH = q["width"], q["yield"], q["toughness"], q["thickness"]
longest = 0.8 * W / 2
k1 = lambda c: np.sqrt(np.pi * c / 1000) / np.sqrt(np.cos(np.pi * c / W))

# Feddersen's tangent of each life.
L = np.exp(np.log(1e-6) * (1 - np.arange(281) / 280)) * 0.999 * longest
F = K / k1(L)
start = Y * (1 - 2 * L[0] / W)
slope = np.empty(count)
touch = np.empty(count)
for a in range(0, count, 20000):
    b = slice(a, a + 20000)
    S = (tough[b, None] * F - start) / L
    least = S.argmin(1)
    i = np.clip(least, 1, len(L) - 2)
    r = np.arange(len(i))
    s0, s1, s2 = S[r, i - 1], S[r, i], S[r, i + 1]
    bend = s0 - 2 * s1 + s2
    u = (s0 - s2) / (2 * bend)
    slope[b] = s1 - (s0 - s2) ** 2 / (8 * bend)
    touches = L[i] * np.exp(np.abs(u) * np.log(L[np.where(u < 0, i - 1, i + 1)] / L[i]))
    touch[b] = np.where(least == i, touches, 0)

sq = (tough * K / Y) ** 2 * 1000
zone = sq / (np.clip(6.7 - 1.5 / TH * sq, 2, 6) * np.pi)


def strength(c):
    f = tough * K / np.maximum(k1(c), k1(c + np.minimum(zone, (longest - c) / 2)))
    f = np.minimum(f, Y * (1 - 2 * c / W))
    return np.where(c < touch, np.minimum(f, start + slope * c), f)


low = np.full(count, q["first"])
high = np.full(count, longest)
for _ in range(40):
    mid = (low + high) / 2
    holds = (strength(mid) > stress * q["limit"]) & (stress * q["max"] * k1(mid) < q["kc"])
    low, high = np.where(holds, mid, low), np.where(holds, high, mid)
end = np.where(strength(np.full(count, q["first"])) > stress * q["limit"], high, q["first"])

# Simpson in ln c, 64 panels, the sum kept at each of their ends.
R = q["min"] / q["max"]
P = 64
step = np.log(end / q["first"]) / P


def slow(lnc):
    c = np.exp(lnc)
    top = stress * q["max"] * k1(c)
    top = np.minimum(top, q["kc"] * (1 - 1e-12))
    return c / (q["per_hour"] * rate * q["c"] * ((1 - R) * top) ** q["n"] / ((1 - R) * (q["kc"] - top)))


at = np.full(count, np.log(q["first"]))
hours = np.zeros((P + 1, count))
left = slow(at)
for p in range(P):
    right = slow(at + step)
    hours[p + 1] = hours[p] + step / 6 * (left + 4 * slow(at + step / 2) + right)
    at = at + step
    left = right
life = hours[-1]

# Looks before the end: the size then, straight in ln c within a panel.
slant = np.log(9) / np.log(q["a90"] / q["a50"])
missed = np.ones(count)
n = 0
cols = np.arange(count)
while True:
    look = q["first_h"] + n * q["repeat_h"]
    live = life > look
    if not live.any() or n > 10000:
        break
    p = np.clip((hours < look).sum(0) - 1, 0, P - 1)
    h0, h1 = hours[p, cols], hours[p + 1, cols]
    lnc = np.log(q["first"]) + step * (p + (look - h0) / np.where(h1 > h0, h1 - h0, 1))
    missed = np.where(live, missed / (1 + np.exp(slant * (lnc - np.log(q["a50"])))), missed)
    n += 1
weight = 1 - q["most"] * (1 - missed)
out = {
    "percentiles": [float(x) for x in np.quantile(life, q["shares"], method="inverted_cdf")],
    "passed": [float(weight[life <= q["first_h"] + k * q["repeat_h"]].sum() / count) for k in range(8)],
}
out["seconds"] = time.perf_counter() - begun
out["processor"] = time.process_time() - worked
out["numpy"] = np.__version__
print(json.dumps(out))
