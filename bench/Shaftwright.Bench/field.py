"""The torsion field of FieldRun by SciPy: nine-node elements on the nodes of nodes.txt, assembled at once with NumPy, solved by SuperLU
in the ordering for symmetric patterns. Prints the best seconds of three and the stiffness, to be held against ours."""
import time

import numpy as np
from scipy.sparse import coo_matrix
from scipy.sparse.linalg import splu

with open("nodes.txt") as file:
    columns, rows = map(int, file.readline().split())
    z, r = np.loadtxt(file).T

x, w = np.polynomial.legendre.leggauss(3)
value = lambda t: np.array([t * (t - 1) / 2, 1 - t * t, t * (t + 1) / 2])
slope = lambda t: np.array([t - 0.5, -2 * t, t + 0.5])
points = [(a, b, wa * wb) for a, wa in zip(x, w) for b, wb in zip(x, w)]


def solve():
    along, across = (columns - 1) // 2, (rows - 1) // 2
    a, b = np.meshgrid(np.arange(along), np.arange(across), indexing="ij")
    first = (2 * a * rows + 2 * b).ravel()
    node = np.stack([first + i * rows + j for i in range(3) for j in range(3)], 1)
    zn, rn = z[node], r[node]
    k = np.zeros((len(node), 9, 9))
    for s, t, weight in points:
        n = np.outer(value(s), value(t)).ravel()
        ns = np.outer(slope(s), value(t)).ravel()
        nt = np.outer(value(s), slope(t)).ravel()
        zs, zt, rs, rt = zn @ ns, zn @ nt, rn @ ns, rn @ nt
        area = zs * rt - zt * rs
        dz = np.outer(rt, ns) - np.outer(rs, nt)
        dr = np.outer(zs, nt) - np.outer(zt, ns)
        scale = weight * (rn @ n) ** 3 / area
        k += scale[:, None, None] * (dz[:, :, None] * dz[:, None, :] + dr[:, :, None] * dr[:, None, :])
    i = np.repeat(node, 9, 1).ravel()
    j = np.tile(node, (1, 9)).ravel()
    matrix = coo_matrix((k.ravel(), (i, j)), shape=(len(z), len(z))).tocsc()
    free = slice(rows, len(z) - rows)
    far = slice(len(z) - rows, len(z))
    right = -np.asarray(matrix[free, far].sum(1)).ravel()
    factor = splu(matrix[free, free], permc_spec="MMD_AT_PLUS_A", diag_pivot_thresh=0.0, options={"SymmetricMode": True})
    angle = factor.solve(right)
    return matrix[far, far].sum() - right @ angle


best = np.inf
for _ in range(3):
    begun = time.perf_counter()
    stiffness = solve()
    best = min(best, time.perf_counter() - begun)
print(f"best {best:.6f} {stiffness:.9f}")
