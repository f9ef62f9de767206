# SPDX-License-Identifier: MIT
"""Second-order forward differentiation of arrays (independent reading, used only for tests).

A Jet holds a batch of tensors together with their exact first and second derivatives with respect
to n local coordinates: v[batch, ...], g[batch, ..., n], h[batch, ..., n, n]. Only the handful of
operations that the bush potential needs are written; each is the plain chain or product rule.
"""
import numpy as np


class Jet:
    """Value, gradient and Hessian of a batch of scalars, or of vectors along axis 1."""

    def __init__(self, v, g, h):
        self.v, self.g, self.h = v, g, h

    @property
    def n(self):
        """Number of local coordinates."""
        return self.g.shape[-1]

    def __add__(self, o):
        return Jet(self.v + o.v, self.g + o.g, self.h + o.h)

    def __sub__(self, o):
        return Jet(self.v - o.v, self.g - o.g, self.h - o.h)

    def plus(self, constant):
        """Add an array that does not depend on the coordinates."""
        return Jet(self.v + constant, self.g, self.h)

    def times(self, constant):
        """Scale a batch of scalars by one constant each."""
        c = np.asarray(constant)
        return Jet(self.v * c, self.g * c[:, None], self.h * c[:, None, None])


def seed(values, first, n):
    """A batch of vectors that are themselves the coordinates first, first+1, ... of n."""
    b, m = values.shape
    g = np.zeros((b, m, n))
    for i in range(m):
        g[:, i, first + i] = 1.0
    return Jet(values, g, np.zeros((b, m, n, n)))


def linear(matrix, a):
    """matrix[b, i, j] a[b, j], with a constant matrix for each member of the batch."""
    b, m, n = a.g.shape
    h = np.matmul(matrix, a.h.reshape(b, m, n * n)).reshape(b, matrix.shape[1], n, n)
    return Jet(np.matmul(matrix, a.v[:, :, None])[:, :, 0], np.matmul(matrix, a.g), h)


def bilinear(tensor, a, c):
    """tensor[i, j, k] a[b, j] c[b, k]: every product of vectors that is needed is one of these."""
    b, _, n = a.g.shape
    left = np.einsum("ijk,bj->bik", tensor, a.v)     # acts on c
    right = np.einsum("ijk,bk->bij", tensor, c.v)    # acts on a
    from_c, from_a = linear(left, c), linear(right, a)
    tc = np.tensordot(tensor, c.g, axes=(2, 1))      # i j b m
    cross = np.matmul(a.g.transpose(0, 2, 1)[:, None], tc.transpose(2, 0, 1, 3))
    return Jet(from_c.v, from_c.g + from_a.g,
               from_c.h + from_a.h + cross + cross.transpose(0, 1, 3, 2))


def square(a):
    """The squared length of each vector: a batch of scalars."""
    g = 2.0 * np.einsum("bi,bim->bm", a.v, a.g)
    h = 2.0 * (np.matmul(a.g.transpose(0, 2, 1), a.g) + np.einsum("bi,bimn->bmn", a.v, a.h))
    return Jet(np.einsum("bi,bi->b", a.v, a.v), g, h)


def unary(s, f, f1, f2):
    """f(s) for a batch of scalars, given f and its two derivatives at s."""
    outer = s.g[:, :, None] * s.g[:, None, :]
    return Jet(f, f1[:, None] * s.g, f2[:, None, None] * outer + f1[:, None, None] * s.h)


def scale(s, a):
    """A batch of scalars times a batch of vectors."""
    g = s.v[:, None, None] * a.g + a.v[:, :, None] * s.g[:, None, :]
    cross = a.g[:, :, :, None] * s.g[:, None, None, :]
    h = (s.v[:, None, None, None] * a.h + a.v[:, :, None, None] * s.h[:, None]
         + cross + cross.transpose(0, 1, 3, 2))
    return Jet(s.v[:, None] * a.v, g, h)


def join(s, a):
    """Put a scalar in front of a vector."""
    return Jet(np.concatenate([s.v[:, None], a.v], 1), np.concatenate([s.g[:, None], a.g], 1),
               np.concatenate([s.h[:, None], a.h], 1))


def part(a, sl):
    """Some components of each vector."""
    return Jet(a.v[:, sl], a.g[:, sl], a.h[:, sl])


def stack(a, b):
    """Two batches as one, to be worked through together."""
    return Jet(*(np.concatenate(p) for p in ((a.v, b.v), (a.g, b.g), (a.h, b.h))))


def halves(a):
    """The two batches again."""
    m = a.v.shape[0] // 2
    return Jet(a.v[:m], a.g[:m], a.h[:m]), Jet(a.v[m:], a.g[m:], a.h[m:])


# --- rotations through unit quaternions (scalar first) ---------------------------------------

def _hamilton(conjugate_first):
    """Tensor of the quaternion product, or of conj(p) q."""
    t = np.zeros((4, 4, 4))
    t[0, 0, 0] = 1.0
    for i in range(3):
        t[0, i + 1, i + 1] = -1.0
        t[i + 1, 0, i + 1] = t[i + 1, i + 1, 0] = 1.0
        j, k = (i + 1) % 3, (i + 2) % 3
        t[i + 1, j + 1, k + 1] = 1.0
        t[i + 1, k + 1, j + 1] = -1.0
    if conjugate_first:
        t[:, 1:, :] *= -1.0
    return t


def _rotation_tensor():
    """T[3i+j, k, l] with R_ij = T q_k q_l for a unit quaternion q."""
    t = np.zeros((3, 3, 4, 4))
    for i in range(3):
        t[i, i, 0, 0] += 1.0
        for k in range(3):
            t[i, i, k + 1, k + 1] += -1.0 if k != i else 1.0
        j, k = (i + 1) % 3, (i + 2) % 3
        for a, b, sign in ((i, j, -1.0), (j, i, 1.0)):
            t[a, b, i + 1, j + 1] += 1.0
            t[a, b, j + 1, i + 1] += 1.0
            t[a, b, 0, k + 1] += sign
            t[a, b, k + 1, 0] += sign
    return t.reshape(9, 4, 4)


CONJ_PRODUCT = _hamilton(True)
ROTATION = _rotation_tensor()
_MAT_VEC = np.zeros((3, 9, 3))    # R x, R stored by rows
_MAT_T_VEC = np.zeros((3, 9, 3))  # R^T x
for _i in range(3):
    for _j in range(3):
        _MAT_VEC[_i, 3 * _i + _j, _j] = 1.0
        _MAT_T_VEC[_j, 3 * _i + _j, _i] = 1.0


def _with_derivatives(coef):
    """A power series and its first two derivatives side by side, one column each."""
    der = np.polynomial.polynomial.polyder
    return np.column_stack([coef, np.append(der(coef), 0.0), np.append(der(coef, 2), [0.0, 0.0])])


def _poly(columns, s):
    """Value and two derivatives of a power series."""
    return np.polynomial.polynomial.polyval(s, columns)


def _series_half_sine():
    c, f = [], 1.0
    for n in range(12):
        f = f * (2 * n) * (2 * n + 1) if n else 1.0
        c.append(0.5 * (-0.25) ** n / f)
    return _with_derivatives(np.array(c))


def _series_arcsine():
    c, a = [], 1.0
    for n in range(18):
        if n:
            a *= (2 * n - 1) / (2 * n)
        c.append(2.0 * a / (2 * n + 1))
    return _with_derivatives(np.array(c))


_HALF_SINE, _ARCSINE = _series_half_sine(), _series_arcsine()


def half_sine(s):
    """sin(t/2)/t as a function of s = t^2, with two derivatives; smooth through zero."""
    t = np.sqrt(np.where(s > 1.0, s, 1.0))
    f0, g = np.cos(t / 2), np.sin(t / 2) / t
    g1 = (f0 / 2 - g) / (2 * t * t)
    g2 = (-g / 8 - 3 * g1) / (2 * t * t)
    near = _poly(_HALF_SINE, np.where(s > 1.0, 0.0, s))
    return [np.where(s > 1.0, a, b) for a, b in zip((g, g1, g2), near)]


def arcsine_ratio(s):
    """2 asin(x)/x as a function of s = x^2 < 1, with two derivatives."""
    far = s > 0.05
    sf = np.where(far, np.minimum(s, 1 - 1e-12), 0.5)
    x, c = np.sqrt(sf), 1 / np.sqrt(1 - sf)
    f = 2 * np.arcsin(x) / x
    f1 = (c - f / 2) / sf
    f2 = (c ** 3 / 2 - 1.5 * f1) / sf
    near = _poly(_ARCSINE, np.where(far, 0.0, s))
    return [np.where(far, a, b) for a, b in zip((f, f1, f2), near)]


def quaternion(r):
    """Unit quaternion of the rotation vector r."""
    s = square(r)
    g, g1, g2 = half_sine(s.v)
    cosine = unary(s, np.cos(np.sqrt(s.v) / 2), -g / 4, -g1 / 4)
    return join(cosine, scale(unary(s, g, g1, g2), r))


def rotation(q):
    """Rotation matrix (nine components by rows) of a unit quaternion."""
    return bilinear(ROTATION, q, q)


def rotate(mat, x):
    """R x."""
    return bilinear(_MAT_VEC, mat, x)


def rotate_back(mat, x):
    """R^T x."""
    return bilinear(_MAT_T_VEC, mat, x)


def rotate_constant(mat, x):
    """R x for one constant vector x a member of the batch."""
    m = np.zeros((x.shape[0], 3, 9))
    for i in range(3):
        m[:, i, 3 * i:3 * i + 3] = x
    return linear(m, mat)


def relative_log(qa, qb):
    """Rotation vector of R_A^T R_B, shorter way round."""
    q = bilinear(CONJ_PRODUCT, qa, qb)
    v = part(q, slice(1, 4))
    flip = np.where(q.v[:, 0] < 0, -1.0, 1.0)
    s = square(v)
    ratio = unary(s, *arcsine_ratio(s.v))
    return scale(ratio.times(flip), v)
