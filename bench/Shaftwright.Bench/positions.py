"""The positions of LinkageBench by SciPy's fsolve: same six equations, same points, residual in plain floats, tolerance 1e-12.
Prints seconds a position (best of five grids) and the sum of the wheel centre's y, to be held against ours. The grid goes round
travel 0: from all unknowns 0 fsolve's own differences are too small, and it gives up there."""
import math
import time
import warnings

from scipy.optimize import fsolve

# At 1e-12 it often says that it cannot get closer.
warnings.simplefilter("ignore", RuntimeWarning)

WHEEL = (0.0, 680.0, 290.0)
RODS = [  # chassis, carrier, moved by the rack
    ((150.0, 320.0, 200.0), (0.0, 620.0, 190.0), 0.0),
    ((-150.0, 325.0, 205.0), (0.0, 620.0, 190.0), 0.0),
    ((120.0, 350.0, 400.0), (-10.0, 600.0, 420.0), 0.0),
    ((-120.0, 355.0, 395.0), (-10.0, 600.0, 420.0), 0.0),
    ((-120.0, 300.0, 260.0), (-130.0, 600.0, 260.0), 1.0),
]
SET = [
    (c, tuple(o - w for o, w in zip(p, WHEEL)), math.dist(c, p), r) for c, p, r in RODS
]


def residual(u, travel, rack):
    x, y, z, rx, ry, rz = u.tolist()
    rx, ry, rz = rx / 300, ry / 300, rz / 300
    h = math.sqrt(rx * rx + ry * ry + rz * rz) / 2
    s = math.sin(h) / (2 * h) if h > 1e-9 else 0.5
    w, a, b, c = math.cos(h), rx * s, ry * s, rz * s
    wx, wy, wz = WHEEL[0] + x, WHEEL[1] + y, WHEEL[2] + z
    f = []
    for p, (ax, ay, az), length, r in SET:
        tx, ty, tz = 2 * (b * az - c * ay), 2 * (c * ax - a * az), 2 * (a * ay - b * ax)
        dx = wx + ax + w * tx + b * tz - c * ty - p[0]
        dy = wy + ay + w * ty + c * tx - a * tz - p[1] - r * rack
        dz = wz + az + w * tz + a * ty - b * tx - p[2]
        f.append(math.sqrt(dx * dx + dy * dy + dz * dz) - length)
    f.append(z - travel)
    return f


def grid():
    u, total = [0.0] * 6, 0.0
    for i in range(21):
        for j in range(9):
            rack = -40 + 10.0 * (j if i % 2 == 0 else 8 - j)
            u = fsolve(residual, u, (-68 + 7.0 * i, rack), xtol=1e-12)
            total += WHEEL[1] + u[1]
    return total


best = math.inf
for _ in range(5):
    begun = time.perf_counter()
    total = grid()
    best = min(best, time.perf_counter() - begun)
print(f"{best / 189:.9f} {total:.9f}")
