#!/usr/bin/env python3
"""The other side of tests/bench/mesh.rs: a general mesh library on the same file.

usage: mesh_peer.py FILE    prints one line of JSON; exit code 3 when the library is not installed.
Times loading (corners welded) plus watertight test, volume, area and count of bodies; importing the library is not counted."""
import json
import sys
import time

try:
    import trimesh
except ImportError:
    sys.exit(3)

start = time.perf_counter()
mesh = trimesh.load(sys.argv[1], force="mesh", process=True)
volume, area, watertight = float(mesh.volume), float(mesh.area), bool(mesh.is_watertight)
without_bodies = time.perf_counter() - start
bodies = int(mesh.body_count)
with_bodies = time.perf_counter() - start
print(json.dumps(dict(version=trimesh.__version__, seconds=without_bodies, seconds_with_bodies=with_bodies,
                      volume=volume, area=area, watertight=watertight, bodies=bodies)))
