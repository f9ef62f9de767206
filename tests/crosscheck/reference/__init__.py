# SPDX-License-Identifier: MIT
"""An independent reading of the published model of the corner, used only for tests.

Nothing here is shared with the program: the potential of every bush is written down once, as
`design` prose defines it, and is differentiated by machine (second-order Taylor arithmetic, see
jets.py). The equilibrium is found by a general-purpose root finder (MINPACK through SciPy), the
shares by dense matrices. Two programs that agree this way agree about the physics, not the code.

Inside: N, mm, rad, N mm. Axes as in ISO 8855:2011 (x forward, y left, z up).
"""
