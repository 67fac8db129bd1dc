"""Measures every reference file with the program and prints the figures beside their truth, as one Markdown table.

    python3 tests/tools/beside_truth.py target/debug/pourbook

The truth is that of tests/outside/meshes (its README.md says where it comes from): the exact signed volume of the stored triangles where the
file is sound, the closed form of the faceted shape where something is left out or turned first, the union by manifold3d where solids overlap.
"""

import json
import pathlib
import subprocess
import sys

MESHES = pathlib.Path(__file__).resolve().parents[1] / "outside" / "meshes"


def load(name):
    return json.loads((MESHES / name).read_text(encoding="utf-8"))


def measured(program, path):
    run = subprocess.run([program, "measure", "--walls", "--json", str(path)], capture_output=True, text=True)
    try:
        found = json.loads(run.stdout)
    except ValueError:
        return None, run.stderr.strip()
    found = found[0] if isinstance(found, list) else found.get("files", [found])[0]
    return found, run.stderr.strip()


def truth_of(path, stored, closed):
    """Volume and where it comes from, nothing where the file has none."""
    name = path.name
    if "one_facet_missing" in name or "mixed_winding" in name:
        return None, "no volume: open, or wound both ways"
    if "overlapping" in name:
        return stored["manifold3d"]["union_volume"], "union, manifold3d"
    if "nested_same" in name:
        # Its outer solid alone.
        return max(stored["topology_own"]["shell_signed_volumes"]), "outer shell"
    if any(word in name for word in ("duplicates", "unwelded", "inside_out")):
        return closed["faceted_volume"], "closed form"
    return stored["exact_signed_volume_of_stored_triangles"], "exact, stored triangles"


def row(name, program, path, truth, source, shells, wall):
    found, said = measured(program, path)
    if found is None or found["triangles"] is None:
        words = found["problems"][0] if found else said
        return [name, "refused", "", "", source, "", "", words]
    volume = found["volume_mm3"]
    apart = "" if volume is None or not truth else "%.1e" % abs(volume / truth - 1.0)
    walls = found.get("walls") or {}
    thin = (walls.get("thinnest") or {}).get("thickness_mm")
    keys = ", ".join(problem.split(":")[0] for problem in found.get("problems", []))
    show = lambda number: "none" if number is None else "%.9g" % number
    thin = "" if thin is None or wall is None else "%.4f / %.2f" % (thin, wall)
    return [name, show(volume), show(truth), apart, source, "%s / %s" % (found["shells"], shells), thin, keys]


def main():
    program = sys.argv[1]
    closed, stored = load("closed_form.json"), load("mesh_truth.json")
    rows = []
    for key, truth in sorted(stored.items()):
        path, form = MESHES / key, closed[pathlib.PurePath(key).name]
        volume, source = truth_of(path, truth, form)
        rows.append(row(path.name, program, path, volume, source, form["shells"], form.get("wall_thickness_true")))
    for folder in ("format", "formats"):
        for name, expected in sorted(load(folder + "/expected.json").items()):
            volume = expected.get("volume_mm3")
            source = "by hand" if volume else "expected: " + expected["expect"]
            rows.append(row(name, program, MESHES / folder / name, volume, source, "", None))
    heads = ["file", "volume, mm³", "truth, mm³", "apart", "truth by", "shells / truth", "wall / truth, mm", "said of it"]
    for cells in [heads, ["---"] * len(heads)] + rows:
        print("| " + " | ".join(str(cell) for cell in cells) + " |")


main()
