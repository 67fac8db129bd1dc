#!/usr/bin/env python3
"""A straight line by least squares in exact fractions, for tests/outside/lines.rs.

Slope and offset are solved from the normal equations (sums, not distances from means, so another way than the program's); the
standard errors are roots of exact fractions, taken to forty digits. Formulas: any textbook of statistics.
"""

from decimal import Decimal, getcontext
from fractions import Fraction as F

getcontext().prec = 40

ROWS = [("5", "5.02"), ("10", "9.99"), ("20", "19.93"), ("40", "39.88")]
WANTED = F("17.2")


def root(square):
    return (Decimal(square.numerator) / Decimal(square.denominator)).sqrt()


x = [F(a) for a, _ in ROWS]
y = [F(b) for _, b in ROWS]
n = len(ROWS)
sx, sy = sum(x), sum(y)
sxx, sxy = sum(a * a for a in x), sum(a * b for a, b in zip(x, y))
det = n * sxx - sx * sx
slope = (n * sxy - sx * sy) / det
offset = (sxx * sy - sx * sxy) / det
variance = sum((b - offset - slope * a) ** 2 for a, b in zip(x, y)) / (n - 2)
about_mean = det / F(n)
drawn = (WANTED - offset) / slope
for name, value in [
    ("slope", Decimal(slope.numerator) / Decimal(slope.denominator)),
    ("offset", Decimal(offset.numerator) / Decimal(offset.denominator)),
    ("spread", root(variance)),
    ("error of the slope", root(variance * n / det)),
    ("error of the offset", root(variance * sxx / det)),
    ("drawn for 17.2", Decimal(drawn.numerator) / Decimal(drawn.denominator)),
    ("error of what is drawn", root(variance / slope**2 * (1 + F(1, n) + (WANTED - sy / n) ** 2 / (slope**2 * about_mean)))),
]:
    print(f'    ("{name}", {value:.15g}),')
