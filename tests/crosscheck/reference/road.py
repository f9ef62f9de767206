# SPDX-License-Identifier: MIT
"""Road, people and hearing (independent reading, used only for tests). SI units.

ISO 8608:2016 (road), ISO 2631-1:1997 with the parameters of ISO 8041 (weightings Wk and Wd), IEC 61672-1:2013
Annex E (weighting A).
"""
import math

import numpy as np

CLASSES = {c: 16e-6 * 4.0 ** i for i, c in enumerate("ABCDEFGH")}


def weight(f, f3, q4, step):
    """|W| of ISO 2631-1: band limits 0.4 and 100 Hz, transition at f3, upward step for Wk."""
    s = 2j * np.pi * f
    w1, w2, w3 = (2 * np.pi * x for x in (0.4, 100.0, f3))
    h = s ** 2 / (s ** 2 + math.sqrt(2) * w1 * s + w1 ** 2)
    h = h * w2 ** 2 / (s ** 2 + math.sqrt(2) * w2 * s + w2 ** 2)
    h = h * (1 + s / w3) / (1 + s / (q4 * w3) + (s / w3) ** 2)
    if step:
        (f5, q5), (f6, q6) = step
        w5, w6 = 2 * np.pi * f5, 2 * np.pi * f6
        h = h * (s ** 2 + s * w5 / q5 + w5 ** 2) / (s ** 2 + s * w6 / q6 + w6 ** 2)
    return np.abs(h)


def weight_k(f):
    """Vertical."""
    return weight(f, 12.5, 0.63, ((2.37, 0.91), (3.35, 0.91)))


def weight_d(f):
    """Fore-aft."""
    return weight(f, 2.0, 0.63, None)


def weight_a(f):
    """A weighting as a factor, 1 at 1000 Hz: the four corners of IEC 61672-1."""
    fr2, fl2, fh2, fa2 = 1000.0 ** 2, 10 ** 3.0, 10 ** 7.8, 10 ** 4.9
    d = math.sqrt(0.5)
    b = (fr2 + fl2 * fh2 / fr2 - d * (fl2 + fh2)) / (1 - d)
    c = fl2 * fh2
    f1, f4 = (math.sqrt((-b + sign * math.sqrt(b * b - 4 * c)) / 2) for sign in (-1, 1))
    f2, f3 = ((3 + sign * math.sqrt(5)) / 2 * math.sqrt(fa2) for sign in (-1, 1))

    def plain(x):
        return (f4 ** 2 * x ** 4 / ((x ** 2 + f1 ** 2) * np.sqrt(x ** 2 + f2 ** 2)
                                    * np.sqrt(x ** 2 + f3 ** 2) * (x ** 2 + f4 ** 2)))
    if f1 > f4:
        f1, f4 = f4, f1
    return plain(f) / plain(1000.0)


def road(ride, f):
    """Spectrum of the profile under the tyre (m^2/Hz), averaged over the contact length."""
    gd = ride["roughness_m3"] if "roughness_m3" in ride else CLASSES[ride["road_class"]]
    v = ride["speed_km_h"] / 3.6
    length = ride.get("contact_length_mm", 120.0) * 1e-3
    return gd * (f / v / 0.1) ** -2 / v * np.sinc(f * length / v) ** 2
