"""Distances of boxes, rods and hulls by the Flexible Collision Library, for tests/solid.

    pip install python-fcl numpy scipy && python3 tests/tools/solids_by_fcl.py > tests/solid/fcl.json

Boxes go in as boxes, rods as capsules, hulls by their faces. Random, of a
fixed beginning; lengths of a caster's tree, in mm. Only pairs that do not touch are kept: how deep solids lie in each other is another question.
"""

import json

import fcl
import numpy
from scipy.spatial import ConvexHull

DICE = numpy.random.default_rng(20261126)


def turn():
    q = DICE.normal(size=4)
    q /= numpy.linalg.norm(q)
    w, x, y, z = q
    return numpy.array(
        [
            [1 - 2 * (y * y + z * z), 2 * (x * y - z * w), 2 * (x * z + y * w)],
            [2 * (x * y + z * w), 1 - 2 * (x * x + z * z), 2 * (y * z - x * w)],
            [2 * (x * z - y * w), 2 * (y * z + x * w), 1 - 2 * (x * x + y * y)],
        ]
    )


def box():
    axes, half, centre = turn(), DICE.uniform(0.2, 12, 3), DICE.uniform(-25, 25, 3)
    return dict(kind="block", centre=centre, axes=axes.T, half=half), fcl.CollisionObject(fcl.Box(*(2 * half)), fcl.Transform(axes, centre))


def hull():
    points = DICE.normal(size=(24, 3)) * DICE.uniform(1, 8, 3) + DICE.uniform(-25, 25, 3)
    found = ConvexHull(points)
    faces = []
    for corners, plane in zip(found.simplices, found.equations):
        a, b, c = points[corners]
        outward = numpy.dot(numpy.cross(b - a, c - a), plane[:3]) > 0
        faces += [3, *(corners if outward else corners[::-1])]
    shape = fcl.Convex(points, len(found.simplices), numpy.array(faces))
    return dict(kind="hull", points=points), fcl.CollisionObject(shape, fcl.Transform())


def rod():
    ends, radius = DICE.uniform(-25, 25, (2, 3)), DICE.uniform(0.5, 4)
    way = ends[1] - ends[0]
    long = numpy.linalg.norm(way)
    z = way / long
    x = numpy.cross(z, [1.0, 0.3, 0.2])
    x /= numpy.linalg.norm(x)
    axes = numpy.column_stack([x, numpy.cross(z, x), z])
    capsule = fcl.Capsule(radius, long)
    return dict(kind="rod", ends=ends, radius=radius), fcl.CollisionObject(capsule, fcl.Transform(axes, ends.mean(axis=0)))


def plain(solid):
    return {key: value.tolist() if hasattr(value, "tolist") else value for key, value in solid.items()}


def main():
    kept = []
    makers = [(box, box), (box, hull), (hull, hull), (box, rod), (rod, rod), (hull, rod)]
    while len(kept) < 120:
        one, other = makers[len(kept) % len(makers)]
        (a, shape_a), (b, shape_b) = one(), other()
        found = fcl.DistanceResult()
        distance = fcl.distance(shape_a, shape_b, fcl.DistanceRequest(), found)
        if distance > 0.05:
            kept.append(dict(one=plain(a), other=plain(b), apart_mm=distance))
    print(json.dumps(kept))


main()
