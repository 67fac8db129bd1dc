"""Writes small pattern files in OBJ, PLY and 3MF with nothing but the standard library, and what they must measure.

    python3 tests/tools/pattern_files.py [--check]

The solid is an L: an outline of six corners, 3 x 3 with a square of 2 x 2 taken out, 2 high. Volume (9 - 4) * 2 = 10 and area 2 * 5 + 12 * 2 = 34
by hand. It stands off the origin and has no symmetry that would hide an exchanged axis. Files and expected.json go to
tests/outside/meshes/formats; --check only compares.
"""

import io
import json
import pathlib
import struct
import sys
import zipfile

OUTLINE = [(0, 0), (3, 0), (3, 1), (1, 1), (1, 3), (0, 3)]
SHIFT = (1.5, -2.25, 0.5)
CORNERS = [(x + SHIFT[0], y + SHIFT[1], z + SHIFT[2]) for z in (0, 2) for x, y in OUTLINE]
N = len(OUTLINE)
SIDES = [(k, (k + 1) % N, N + (k + 1) % N, N + k) for k in range(N)]
FACES = [tuple(reversed(range(N))), tuple(range(N, 2 * N))] + SIDES
# Cut by hand, for 3MF: the L is a lying and a standing block.
TOP = [(0, 1, 2), (0, 2, 3), (0, 3, 5), (3, 4, 5)]
TRIANGLES = (
    [(c, b, a) for a, b, c in TOP]
    + [(a + N, b + N, c + N) for a, b, c in TOP]
    + [t for a, b, c, d in SIDES for t in ((a, b, c), (a, c, d))]
)


def obj(end="\n", backward=False):
    lines = ["# an L", "o l", "vn 0 0 1", "vt 0 0"]
    lines += ["v %r %r %r" % corner for corner in CORNERS]
    for at, face in enumerate(FACES):
        lines.append("g face%d" % at)
        numbers = [k - len(CORNERS) if backward else k + 1 for k in face]
        lines.append("f " + " ".join("%d/1/1" % k if at % 2 else "%d//1" % k for k in numbers))
    return (end.join(lines) + end).encode()


def ply(kind):
    name, order = {"ascii": ("ascii", ""), "little": ("binary_little_endian", "<"), "big": ("binary_big_endian", ">")}[kind]
    head = "ply\nformat %s 1.0\ncomment an L\nelement vertex %d\nproperty double z\nproperty uchar red\nproperty float x\nproperty short y4\nproperty float y\n" % (name, len(CORNERS))
    head += "element face %d\nproperty list uchar ushort vertex_indices\nproperty int flags\nend_header\n" % len(FACES)
    body = b""
    for x, y, z in CORNERS:
        if order:
            body += struct.pack(order + "dBfhf", z, 200, x, -4, y)
        else:
            body += ("%r 200 %r -4 %r\n" % (z, x, y)).encode()
    for face in FACES:
        if order:
            body += struct.pack(order + "B%dHi" % len(face), len(face), *face, -1)
        else:
            body += (" ".join(map(str, [len(face), *face, -1])) + "\n").encode()
    return head.encode() + body


CORE = "http://schemas.microsoft.com/3dmanufacturing/core/2015/02"
RELATIONSHIPS = """<?xml version="1.0" encoding="UTF-8"?>
<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Target="/3D/model.model" Id="r" Type="http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel"/></Relationships>"""


def mesh():
    corners = "".join('<vertex x="%r" y="%r" z="%r"/>\n' % corner for corner in CORNERS)
    triangles = "".join('<triangle v1="%d" v2="%d" v3="%d"/>\n' % triangle for triangle in TRIANGLES)
    return "<mesh><vertices>%s</vertices><triangles>%s</triangles></mesh>" % (corners, triangles)


def model(unit, objects, items):
    return '<?xml version="1.0" encoding="UTF-8"?>\n<model unit="%s" xmlns="%s"><resources>%s</resources><build>%s</build></model>' % (unit, CORE, objects, items)


def package(xml, method=zipfile.ZIP_DEFLATED):
    held = io.BytesIO()
    with zipfile.ZipFile(held, "w", method) as archive:
        for name, text in (("_rels/.rels", RELATIONSHIPS), ("3D/model.model", xml)):
            entry = zipfile.ZipInfo(name, (2020, 1, 1, 0, 0, 0))
            entry.compress_type = method
            archive.writestr(entry, text)
    return held.getvalue()


def measured(unit_mm, placed):
    """Volume and bounds of the L under transforms (rows of 4 x 3 in the order of the file), each a whole solid apart from the others."""
    volume, points = 0.0, []
    for m in placed:
        put = [tuple(sum(p[i] * m[3 * i + k] for i in range(3)) + m[9 + k] for k in range(3)) for p in CORNERS]
        put = [tuple(x * unit_mm for x in p) for p in put]
        points += put
        sixfold = 0.0
        for triangle in TRIANGLES:
            a, b, c = (put[k] for k in triangle)
            sixfold += a[0] * (b[1] * c[2] - b[2] * c[1]) - a[1] * (b[0] * c[2] - b[2] * c[0]) + a[2] * (b[0] * c[1] - b[1] * c[0])
        volume += abs(sixfold) / 6
    low = [min(p[k] for p in points) for k in range(3)]
    high = [max(p[k] for p in points) for k in range(3)]
    return {"volume_mm3": volume, "low_mm": low, "high_mm": high, "triangles": len(placed) * len(TRIANGLES)}


def after(inner, outer):
    """The transform that does the inner one first."""
    rows = [[sum(inner[3 * i + j] * outer[3 * j + k] for j in range(3)) for k in range(3)] for i in range(4)]
    rows[3] = [rows[3][k] + outer[9 + k] for k in range(3)]
    return [x for row in rows for x in row]


PLAIN = [1, 0, 0, 0, 1, 0, 0, 0, 1, 0, 0, 0]
TURN = [0, 1, 0, -1, 0, 0, 0, 0, 1, 20, 0, 0]
MIRROR = [-1, 0, 0, 0, 1, 0, 0, 0, 1, 0, -30, 0]
STRETCH = [2, 0, 0, 0, 0.5, 0, 0.25, 0, 3, 0, 40, 1.5]


def written(transform):
    return " ".join(map(repr, transform))


def files():
    one = '<object id="1" type="model">%s</object>' % mesh()
    item = '<item objectid="1"/>'
    pair = '<object id="2" type="model"><components><component objectid="1" transform="%s"/><component objectid="1" transform="%s"/></components></object>' % (written(TURN), written(MIRROR))
    items = item + '<item objectid="2" transform="%s"/>' % written(STRETCH) + '<item objectid="1" transform="%s"/>' % written([1, 0, 0, 0, 1, 0, 0, 0, 1, 100, 0, 0])
    together = [PLAIN, after(TURN, STRETCH), after(MIRROR, STRETCH), [1, 0, 0, 0, 1, 0, 0, 0, 1, 100, 0, 0]]
    plain = measured(1, [PLAIN])
    return {
        "l.obj": (obj(), plain),
        "l_crlf_backward.obj": (obj("\r\n", True), plain),
        "l_ascii.ply": (ply("ascii"), plain),
        "l_little.ply": (ply("little"), plain),
        "l_big.ply": (ply("big"), plain),
        "l_stored.3mf": (package(model("millimeter", one, item), zipfile.ZIP_STORED), plain),
        "l_inch.3mf": (package(model("inch", one, item)), measured(25.4, [PLAIN])),
        "l_together.3mf": (package(model("centimeter", one + pair, items)), measured(10, together)),
    }


def main():
    folder = pathlib.Path(__file__).parent.parent / "outside/meshes/formats"
    made = files()
    expected = json.dumps({name: figures for name, (_, figures) in made.items()}, indent=1) + "\n"
    if "--check" in sys.argv:
        wrong = [name for name, (data, _) in made.items() if not name.endswith("3mf") and (folder / name).read_bytes() != data]
        if (folder / "expected.json").read_text() != expected:
            wrong.append("expected.json")
        sys.exit("differs: %s" % ", ".join(wrong) if wrong else 0)
    folder.mkdir(exist_ok=True)
    for name, (data, _) in made.items():
        (folder / name).write_bytes(data)
    (folder / "expected.json").write_text(expected)


main()
