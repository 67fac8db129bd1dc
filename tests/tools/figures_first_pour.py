#!/usr/bin/env python3
"""Works out the figures of sample-jobs/first-pour.ron from published rules, without the program.

    python3 tests/tools/figures_first_pour.py            writes tests/tools/first_pour_expected.json
    python3 tests/tools/figures_first_pour.py --check    compares it with what stands there

Standard library only: its own reader of RON, its own reader of STL. What the caster typed is read from first-pour.ron and studio.ron.
Numbers of the shelf are written down again below with their sources, and held against the copies the job carries, so that a changed
shelf is noticed here and not silently followed. Weighed grams and money are decimals, given in the JSON as text; the rest are numbers.
"""

import json
import math
import struct
import sys
from datetime import datetime, timedelta, timezone
from decimal import ROUND_CEILING, ROUND_HALF_UP, Decimal
from fractions import Fraction
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
SAMPLES = ROOT / "sample-jobs"
EXPECTED = ROOT / "tests/tools/first_pour_expected.json"


# ---- RON: as much of it as the two files hold. Named brackets give ("Name", value); numbers stay text until asked for. ----


class Ron:
    def __init__(self, text):
        self.text, self.at = text, 0

    def skip(self):
        while self.at < len(self.text) and self.text[self.at].isspace():
            self.at += 1

    def peek(self):
        self.skip()
        return self.text[self.at]

    def take(self, sign):
        if self.peek() != sign:
            raise ValueError(f"{sign!r} expected at {self.text[self.at:self.at + 30]!r}")
        self.at += 1

    def word(self):
        self.skip()
        start = self.at
        while self.text[self.at].isalnum() or self.text[self.at] in "_.+-":
            self.at += 1
        return self.text[start : self.at]

    def value(self):
        sign = self.peek()
        if sign == '"':
            return self.string()
        if sign == "(":
            return self.bracket(")")
        if sign == "[":
            return self.bracket("]")
        if sign == "{":
            return self.bracket("}")
        word = self.word()
        if self.at < len(self.text) and self.peek() == "(":
            return (word, self.bracket(")"))
        return {"true": True, "false": False}.get(word, word)

    def string(self):
        end = self.at + 1
        while self.text[end] != '"':
            end += 2 if self.text[end] == "\\" else 1
        inside, self.at = self.text[self.at : end + 1], end + 1
        # RON also escapes the apostrophe; the rest is as in JSON.
        return json.loads(inside.replace("\\'", "'"))

    def bracket(self, close):
        self.at += 1
        names, values = [], []
        while self.peek() != close:
            start = self.at
            first = self.value()
            if self.peek() == ":":
                self.take(":")
                names.append(first)
                first = self.value()
            values.append(first)
            if self.at == start:
                raise ValueError(f"stuck at {self.text[start:start + 30]!r}")
            if self.peek() == ",":
                self.take(",")
        self.at += 1
        if names:
            return dict(zip(names, values, strict=True))
        return values


def read_ron(path):
    return Ron(path.read_text(encoding="utf-8")).value()


job = read_ron(SAMPLES / "first-pour.ron")
studio = read_ron(SAMPLES / "studio.ron")


def by_id(items, key):
    return {item["id"]: item for item in items}[key]


# ---- The shelf, written down again. ----

DENSITY_STERLING = 10.36  # g/cm³; supply-house article on metal for wax trees; 1/ρ = Σ w/ρ gives 10.357 with Ag 10.49, Cu 8.96
SHRINK_STERLING = 0.01  # linear; supply-house article
LOSS_STERLING = 0.01  # share of the charge; from memory
LIQUID_STERLING = 9.21  # g/cm³ just above the liquidus; from memory
LIQUIDUS_STERLING = 893.0  # °C; supply-house article
METAL_THIN = (949.0, 982.0)  # °C, thin sections; trade article
MOULD_THIN = (566.0, 621.0)  # °C, thin sections; trade article
FINENESS_STERLING = Decimal(925)  # ‰; the mark
DENSITY_RESIN = 1.12  # g/cm³; from memory
SHRINK_RESIN = 0.0  # the printer's own calibration stands for it; common practice
DENSITY_SPRUE_WAX = 0.92  # g/cm³; from memory
FLASK_DIAMETER, FLASK_HEIGHT = 3 * 25.4, 4 * 25.4  # mm; 3 × 4 in, an inch is 25.4 mm exactly (1959)
DOME_CM3, DOME_MM = 12.8, 15.2  # base for 3 in flasks: spherical cap 0.28 Ø radius and 0.20 Ø high; a shape from memory
DENSITY_POWDER = 2.55  # g/cm³; computed back from the porosity of set moulds
DENSITY_WATER = 0.998  # g/cm³ at 21 °C; IAPWS, from memory
RISE = 3.0  # slurry rises to two or three times its volume; common practice, the higher end rules
MIX_STEPS = (4.0, 1.5, 1.0, 1.5)  # min: mix, bowl under vacuum, pour, flask under vacuum; trade article
BEFORE_GLOSS_OFF = 0.5  # min; common practice, the lower end
SET_MIN = 2 * 60.0  # min a flask stands before heat, at least; common practice
KILN_BANDS = ((300.0, 400.0, 40.0), (600.0, 300.0, 90.0), (1100.0, 200.0, 150.0))  # up to °C, rise and fall K/h, loaded; from memory
KILN_HOT_ZONE = 10.0  # K; from memory
TABLE_ROW = (((149.0, 3.0), (300.0, 2.0), (482.0, 2.0), (732.0, 4.0)), 1.5)  # °C and h, soak h; the studio's own table, flasks to 89×102
CRUCIBLE_USABLE = 55.0  # cm³; from memory
ISO_WITHIN = 0.1  # mm; how far charts and sticks differ, from memory
ISO_54_BORE = 54 / math.pi  # ISO 8653: the size is the inner circumference in mm
SOLIDUS_STERLING = 802.0  # °C; from memory
LATENT_STERLING, CP_LIQUID_STERLING, CP_SOLID_STERLING = 118.0, 0.324, 0.298  # kJ/kg, kJ/(kg·K); computed from the elements, from memory
TENSION_STERLING = 0.95  # N/m; from memory
K_MOULD = 0.5  # W/(m·K) dry; a law for porous ceramics
CP_MOULD = ((25.0, 0.85), (200.0, 0.97), (400.0, 1.1), (800.0, 1.12))  # °C, kJ/(kg·K); from memory
GAUGE_KPA = 85.0  # 25 inHg at the casting table; casters' forum
VACUUM_SHARE = 0.5  # of the gauge that reaches the pattern; common practice, no source
DISCHARGE = 0.8  # of a short round choke; from memory
GRAVITY = 9.80665  # m/s²; by definition
WALL_NEEDED_RESIN = 10.0  # only a finding rests on it; published


def held_against_the_copies():
    """Stops where the job's copies of the shelf say something else than what stands above."""
    copies = {copy["entry"][1][0]["id"]: copy["entry"][1][0] for copy in job["shelf"]}

    def same(entry, field, *numbers):
        found = copies[entry]
        for part in field.split("."):
            found = found[part]
        found = found if isinstance(found, list) else [found]
        got = tuple(float(number) for number in found[: len(numbers)])
        assert got == numbers, f"{entry}.{field}: the job's copy says {got}, this script {numbers}"

    same("silver-925", "density_g_cm3", DENSITY_STERLING)
    same("silver-925", "linear_shrink", SHRINK_STERLING)
    same("silver-925", "melt_loss", LOSS_STERLING)
    same("silver-925", "thermal.liquid_density_g_cm3", LIQUID_STERLING)
    same("silver-925", "liquidus_c", LIQUIDUS_STERLING)
    same("silver-925", "solidus_c", SOLIDUS_STERLING)
    same("silver-925", "thermal.latent_kj_kg", LATENT_STERLING)
    same("silver-925", "thermal.cp_liquid_kj_kg_k", CP_LIQUID_STERLING)
    same("silver-925", "thermal.cp_solid_kj_kg_k", CP_SOLID_STERLING)
    same("silver-925", "thermal.surface_tension_n_m", TENSION_STERLING)
    same("powder-gypsum-resin", "thermal.k_dry_w_m_k", K_MOULD)
    points = copies["powder-gypsum-resin"]["thermal"]["cp_dry_kj_kg_k"][0]
    assert tuple(tuple(map(float, point)) for point in points) == CP_MOULD, points
    assert float(copies["silver-925"]["fineness"]["permille"]) == float(FINENESS_STERLING)
    thin = [pour for pour in copies["silver-925"]["pour"] if pour["section"] == "Thin"][0]
    assert tuple(map(float, thin["metal_c"][:2])) == METAL_THIN and tuple(map(float, thin["mould_c"][:2])) == MOULD_THIN
    same("resin-castable", "density_g_cm3", DENSITY_RESIN)
    same("resin-castable", "linear_shrink", SHRINK_RESIN)
    same("resin-castable", "wall_clearance_mm", WALL_NEEDED_RESIN)
    same("wax-sprue", "density_g_cm3", DENSITY_SPRUE_WAX)
    same("base-76", "dome_cm3", DOME_CM3)
    same("base-76", "dome_height_mm", DOME_MM)
    assert math.isclose(float(copies["flask-76x102"]["inner_diameter_mm"]), FLASK_DIAMETER)
    assert math.isclose(float(copies["flask-76x102"]["height_mm"]), FLASK_HEIGHT)
    same("powder-gypsum-resin", "density_g_cm3", DENSITY_POWDER)
    same("powder-gypsum-resin", "liquid_density_g_cm3", DENSITY_WATER)
    same("powder-gypsum-resin", "slurry_rise", 2.0, RISE)
    for field, minutes in zip(("mix_min", "bowl_vacuum_min", "pour_min", "flask_vacuum_min"), MIX_STEPS, strict=True):
        same("powder-gypsum-resin", field, minutes)
    same("powder-gypsum-resin", "finish_before_gloss_off_min", BEFORE_GLOSS_OFF)
    same("powder-gypsum-resin", "set_h", SET_MIN / 60)
    bands = tuple((float(b["up_to_c"]), float(b["rise_k_h"]), float(b["fall_k_h"])) for b in copies["kiln-studio"]["bands"])
    assert bands == KILN_BANDS, bands
    same("kiln-studio", "hot_zone_k", KILN_HOT_ZONE)
    same("crucible-graphite-small", "usable_cm3", CRUCIBLE_USABLE)
    fits = [row for row in copies["stages-resin-wax-sprues"]["rows"]
            if float(row["up_to_diameter_mm"]) >= FLASK_DIAMETER and float(row["up_to_height_mm"]) >= FLASK_HEIGHT][0]
    assert tuple(tuple(map(float, stage)) for stage in fits["stages"]) == TABLE_ROW[0] and float(fits["soak_h"]) == TABLE_ROW[1]
    scale = copies["ring-iso"]
    assert scale["rule"] == "Circumference", scale["rule"]


# ---- What the caster and the studio said. ----


def grams(weighing):
    """Net grams of a weighing, a decimal."""
    kind, what = weighing
    return Decimal(what[0]) if kind == "Net" else Decimal(what["weight"]) - Decimal(what["tare"])


patterns = {pattern["id"]: pattern for pattern in job["patterns"]}
lines = [line for order in job["orders"] for line in order["lines"]]
tree, flask, load, melt = job["trees"][0], job["flasks"][0], job["burnouts"][0], job["melts"][0]
ALTITUDE = float(studio["site"]["altitude_m"])
WATER_C = float(studio["site"]["water_c"])
BOWL = float(studio["bowl_cm3"])
STEP = Decimal(studio["balance_step"])
OFFSET = float([item for item in studio["equipment"] if item.get("entry") == load["kiln"]][0]["offset_k"])
GLOSS_OFF = float([lot for lot in studio["materials"] if lot["label"] == flask["powder_lot"]][0]["gloss_off_min"])
RATIO, SPILL = float(flask["ratio"]), float(flask["spill_share"])

figures = []


def put(place, rule, value, why):
    """Notes a figure down and hands it back."""
    exact = isinstance(value, Decimal)
    text = f"{value.normalize():f}" if exact else value
    figures.append({"place": place, "rule": rule, "value": text, "why": why})
    return value


def half_up(value, places):
    return Decimal(repr(value) if isinstance(value, float) else value).quantize(Decimal(1).scaleb(-places), ROUND_HALF_UP)


# ---- The place. ----

# IAPWS Industrial Formulation 1997, region 4, equation 30, coefficients of its table 34.
IF97_N = (1167.0521452767, -724213.16703206, -17.073846940092, 12020.82470247, -3232555.0322333, 14.91510861353, -4823.2657361591,
          405113.40542057, -0.23855557567849, 650.17534844798)


def saturation_kpa(kelvin):
    theta = kelvin + IF97_N[8] / (kelvin - IF97_N[9])
    a = theta**2 + IF97_N[0] * theta + IF97_N[1]
    b = IF97_N[2] * theta**2 + IF97_N[3] * theta + IF97_N[4]
    c = IF97_N[5] * theta**2 + IF97_N[6] * theta + IF97_N[7]
    return 1000 * (2 * c / (-b + math.sqrt(b * b - 4 * a * c))) ** 4


# Table 35 of the same release: verification values in MPa.
for kelvin, mpa in ((300, 0.353658941e-2), (500, 0.263889776e1), (600, 0.123443146e2)):
    assert math.isclose(saturation_kpa(kelvin), 1000 * mpa, rel_tol=2e-9), kelvin

# The standard atmosphere: 101.325 kPa, 288.15 K, 6.5 K/km, exponent g·M/(R*·L) with g 9.80665 m/s², M 28.9644 kg/kmol,
# R* 8314.32 J/(kmol·K), to six decimals as printed (ISO 2533, U.S. Standard Atmosphere 1976; from memory).
EXPONENT = round(9.80665 * 28.9644 / (8314.32 * 0.0065), 6)
barometer = put("job", "vacuum.barometer", 101.325 * (1 - 0.0065 * ALTITUDE / 288.15) ** EXPONENT, "standard atmosphere at the studio's height")

# ---- Patterns. ----


def read_stl(path):
    """Corners of a binary STL as exact fractions."""
    data = path.read_bytes()
    (count,) = struct.unpack_from("<I", data, 80)
    assert len(data) == 84 + 50 * count
    for at in range(count):
        numbers = struct.unpack_from("<9f", data, 84 + 50 * at + 12)
        yield [tuple(Fraction(number) for number in numbers[i : i + 3]) for i in (0, 3, 6)]


def measure(path):
    """Volume in mm³ by signed tetrahedra (divergence theorem), area in mm², sides of the box in mm, longest first."""
    volume_6, areas, lows, highs = Fraction(0), [], [Fraction(10**9)] * 3, [Fraction(-(10**9))] * 3
    for a, b, c in read_stl(path):
        volume_6 += a[0] * (b[1] * c[2] - b[2] * c[1]) + a[1] * (b[2] * c[0] - b[0] * c[2]) + a[2] * (b[0] * c[1] - b[1] * c[0])
        p, q = [y - x for x, y in zip(a, b)], [y - x for x, y in zip(a, c)]
        cross = (p[1] * q[2] - p[2] * q[1], p[2] * q[0] - p[0] * q[2], p[0] * q[1] - p[1] * q[0])
        areas.append(math.sqrt(sum(x * x for x in cross)) / 2)
        for corner in (a, b, c):
            lows = [min(pair) for pair in zip(lows, corner)]
            highs = [max(pair) for pair in zip(highs, corner)]
    sides = sorted((float(high - low) for low, high in zip(lows, highs)), reverse=True)
    return float(volume_6 / 6), math.fsum(areas), sides


volume_mm3, area_mm2, limpet_sides = measure(SAMPLES / patterns["1"]["file"]["path"])
assert patterns["1"]["file"]["unit"] == "Millimetre" if "unit" in patterns["1"]["file"] else True
charge_volume = {"1": put("pattern/1", "pattern.volume-of-file", volume_mm3 / 1000, "sum of signed tetrahedra, one closed shell, scale 1")}
put("pattern/1", "pattern.area", area_mm2, "sum of the triangles")
put("pattern/1", "pattern.modulus", volume_mm3 / area_mm2, "volume over area")
for side in limpet_sides:
    put("pattern/1", "pattern.size", side, "box of the file, longest side along the sprue")
put("pattern/1", "pattern.weight-from-volume", charge_volume["1"] * DENSITY_RESIN, "density times volume")
weights = {key: grams(patterns[key]["weighed"]) for key in ("2", "3")}
put("pattern/3", "weigh.net", weights["3"], "gross less tare")
for key in ("2", "3"):
    charge_volume[key] = put(f"pattern/{key}", "pattern.volume-from-weight", float(weights[key]) / DENSITY_RESIN, "mass over density")
sides = {key: [float(patterns[key]["extents_mm"][side]) for side in ("along", "across", "deep")] for key in ("2", "3")}
sides["1"] = limpet_sides

# ---- Prices. A troy ounce is 31.1034768 g exactly (1959). Money is kept to a ten-thousandth, half up. ----

price = [price for price in studio["prices"] if price["of"] == "Ag"][0]
assert price["per"] == "TroyOunce"
fine_per_gram = put("studio", "price.per-gram", half_up(Decimal(price["amount"]) / Decimal("31.1034768"), 4), "an ounce's price over its grams")
premium = Decimal(studio["money"]["metal_premium"])
per_gram = put("studio", "price.alloy-per-gram", half_up(fine_per_gram * FINENESS_STERLING / 1000 * (1 + premium), 4), "fine metal in a gram, with the premium")

# ---- Lines. ----

for line in lines:
    place, volume = f"line/{line['id']}", charge_volume[line["pattern"]]
    put(place, "piece.metal", volume * DENSITY_STERLING, "volume times density")
    rough = put(place, "piece.rough-weight", volume * DENSITY_STERLING * (1 - SHRINK_STERLING) ** 3, "shrunk by 1 % every way")
    rough_all = put(place, "line.rough-weight", half_up(rough, 2) * int(line["quantity"]), "rounded, then times the pieces")
    line["cost"] = put(place, "line.metal-cost", half_up(rough_all * per_gram, 2), "grams times the price of a gram, to the cent")
    if "size" in line:
        assert line["size"] == ("Ring", {"scale": "ring-iso", "size": "54"})
        put(place, "size.circumference", math.pi * ISO_54_BORE, "ISO 8653")
        put(place, "size.within-sizes", ISO_WITHIN / (1 / math.pi), "the charts' spread over a size of 1 mm of circumference")
        put(place, "size.cast-bore", ISO_54_BORE, "finishing opens nothing yet")
        put(place, "size.on-pattern", ISO_54_BORE / (1 - SHRINK_STERLING), "larger by what the metal shrinks")
        on_print = put(place, "size.on-print", ISO_54_BORE / ((1 - SHRINK_RESIN) * (1 - SHRINK_STERLING)), "larger by what shrinks")
        put(place, "size.typed", on_print, "the printer prints true until it is calibrated")
        put(place, "size.typed-within", ISO_WITHIN / ((1 - SHRINK_RESIN) * (1 - SHRINK_STERLING)), "the charts' spread goes along")

# ---- The studio's samples weighed in water. ----

for sample in studio["water_weighings"]:
    dry, sinker, both = (Decimal(sample[key]) for key in ("dry", "sinker_in_water", "both_in_water"))
    t = float(sample["water_c"])
    # Tanaka et al. 2001, equation 1: kg/m³ of air-free water at 101.325 kPa.
    water = 999.974950 * (1 - (t - 3.983035) ** 2 * (t + 301.797) / (522528.9 * (t + 69.34881))) / 1000
    put("studio", "weighing.water-density", water, "Tanaka et al. 2001")
    displaced = put("studio", "weighing.displaced", dry + sinker - both, "Archimedes")
    density = put("studio", "weighing.density", float(dry) * water / float(displaced), "mass over the volume of the water")
    half = float(STEP) / 2
    within = density * half * (abs(1 / float(dry) - 1 / float(displaced)) + 2 / float(displaced))
    put("studio", "weighing.within", within, "half a step in each reading, all to the bad side")
    put("studio", "weighing.within-share", within / density, "a share")
    assert sample["material"] == "resin-castable"
    put("studio", "weighing.off-shelf", abs(density - DENSITY_RESIN) / DENSITY_RESIN, "from the shelf's")

# ---- What each client is offered: the metal, finishing at the price of an hour with the margin, tax once on the whole. ----

hour, margin, tax_share = (Decimal(studio["money"][key]) for key in ("hour", "margin", "tax"))
clients = {}
for order in job["orders"]:
    clients.setdefault(order["client"], []).append(order)
for orders in clients.values():
    net = Decimal(0)
    for line in (line for order in orders for line in order["lines"]):
        place = f"line/{line['id']}"
        minutes = Decimal(line["finishing_min"]) * int(line["quantity"])
        put(place, "quote.minutes-all", float(minutes), "each piece takes its own time")
        work = put(place, "quote.work", half_up(minutes * hour / 60 * (1 + margin), 2), "an hour's price and the margin, to the cent")
        put(place, "quote.line-other", work, "nothing else is asked for")
        net += put(place, "quote.line-sum", line["cost"] + work, "metal and work")
    place = f"order/{orders[0]['id']}"
    put(place, "quote.net", net, "all lines")
    tax = put(place, "quote.tax", half_up(net * tax_share, 2), "rounded once")
    put(place, "quote.total", net + tax, "with tax")

# ---- The tree: two materials, weighed apart. ----

parts = [(grams(part["weight"]), {"resin-castable": DENSITY_RESIN, "wax-sprue": DENSITY_SPRUE_WAX}[part["material"]]) for part in tree["weighed"]]
put("tree/1/row/2", "weigh.net", parts[1][0], "gross less tare")
volumes = [put(f"tree/1/row/{row}", "tree.part-volume", float(weight) / density, "mass over density") for row, (weight, density) in enumerate(parts, 1)]
tree_volume = put("tree/1", "tree.volume", sum(volumes), "both parts")

# The same from its parts, as a check on the scale: patterns, round sprues, and a twentieth for the welds.
built, row = [], 0
for row, hung in enumerate(tree["pieces"], 1):
    line = by_id(lines, hung["line"])
    built.append(put(f"tree/1/row/{row}", "tree.pieces-volume", charge_volume[line["pattern"]] * int(line["quantity"]), "one pattern times the pieces"))
for row, rod in enumerate([{**tree["main_sprue"], "count": "1"}, *tree["sprues"]], row + 1):
    rods = math.pi / 4 * float(rod["diameter_mm"]) ** 2 * float(rod["length_mm"]) * int(rod["count"]) / 1000
    built.append(put(f"tree/1/row/{row}", "tree.sprue-volume", rods, "round rods"))
put("tree/1", "tree.volume", sum(built), "all its parts")
computed_volume = put("tree/1", "tree.welded-volume", sum(built) * 1.05, "with welds and fillets")
put("tree/1", "tree.difference", abs(tree_volume - computed_volume) / computed_volume, "share of what its parts come to")

# Its outside: a box at the end of every sprue, the far corner of it. Angle between sprue and main sprue.
main, run = tree["main_sprue"], tree["sprues"][0]
main_mm, length_mm = float(main["diameter_mm"]), float(main["length_mm"])
feed, angle = float(run["length_mm"]), math.radians(float(run["angle_deg"]))
reaches, tops = [], []
tiers = max(int(hung.get("tier", 0)) for hung in tree["pieces"])
for row, hung in enumerate(tree["pieces"], 1):
    along, across, deep = sides[by_id(lines, hung["line"])["pattern"]]
    out = main_mm / 2 + (feed + along) * math.sin(angle) + across / 2 * math.cos(angle)
    reaches.append(put(f"tree/1/row/{row}", "tree.reach", math.hypot(out, deep / 2), "outermost corner of the piece's box"))
    rise = put(f"tree/1/row/{row}", "tree.rise", (feed + along) * math.cos(angle) + across / 2 * math.sin(angle), "highest corner of the piece's box")
    # Tiers are spread evenly over the main sprue; without one a piece may be joined at its very end.
    joint = length_mm * int(hung["tier"]) / tiers if hung.get("tier") else length_mm
    tops.append(put(f"tree/1/row/{row}", "tree.piece-top", DOME_MM + joint + rise, "dome, joint, rise"))
put("tree/1", "tree.widest-reach", max(reaches), "the widest rules")
tops.append(put("tree/1", "tree.trunk-top", DOME_MM + length_mm, "dome, main sprue"))
tree_mm = put("tree/1", "tree.diameter", 2 * max(reaches), "twice the reach")
tree_high = put("tree/1", "tree.height", max(tops), "the highest rules")

# ---- Metal. The volume is conserved: metal = pattern × density of metal / density of pattern. ----

metals = [put(f"tree/1/row/{row}", "flask.metal-from-weight", float(weight) * DENSITY_STERLING / density, "same volume, other density")
          for row, (weight, density) in enumerate(parts, 1)]
tree_metal = put("flask/1", "flask.tree-metal", sum(metals), "both parts")
button = put("flask/1", "flask.button", max(float(flask["button"]["least"]), float(flask["button"]["share"]) * tree_metal), "one a flask, the greater of the two")
charge = put("flask/1", "flask.charge", (tree_metal + button + float(flask["reserve"])) / (1 - LOSS_STERLING), "what is lost is put in beforehand")
weighed_charge = put("flask/1", "flask.charge-on-balance", (Decimal(repr(charge)) / STEP).to_integral_value(ROUND_CEILING) * STEP, "up to the next 0.01 g")
put("flask/1", "flask.button-volume", button / DENSITY_STERLING, "mass over density")

# When the button no longer glows. It stands in the bowl that the base's dome left, a spherical cap turned mouth up; its heat goes out by its
# face, as the fourth power of its temperature, until 525 °C.
bowl, high = DOME_CM3 * 1000, DOME_MM
rim2 = (6 * bowl / (math.pi * high) - high * high) / 3
sphere = (rim2 + high * high) / (2 * high)
volume = button / DENSITY_STERLING * 1000
low, top_x = 0.0, high
for _ in range(200):
    x = (low + top_x) / 2
    if math.pi * x * x * (3 * sphere - x) / 3 < volume:
        low = x
    else:
        top_x = x
depth = put("flask/1", "quench.button-depth", volume / (math.pi * x * (2 * sphere - x)), "volume over its face")

# ---- Investment. ----

inside = put("flask/1", "flask.volume", math.pi / 4 * FLASK_DIAMETER**2 * (FLASK_HEIGHT + float(flask["collar_mm"])) / 1000, "a cylinder")
slurry = put("flask/1", "mix.slurry", (inside - tree_volume - DOME_CM3) * (1 + SPILL), "what the flask holds, and a tenth to spill")
# Volumes add up: a gram of powder and w grams of water fill 1/ρp + w/ρw.
each = put("flask/1", "mix.powder-in-slurry", 1 / (1 / DENSITY_POWDER + RATIO / DENSITY_WATER), "volumes add up")
put("flask/1", "mix.slurry-density", each * (1 + RATIO), "a gram of powder brings w grams of water")
powder = put("flask/1", "mix.powder", slurry * each, "volume times powder in it")
powder_weighed = put("flask/1", "mix.powder-weighed", Decimal(math.ceil(powder)), "up to the next gram")
water = put("flask/1", "mix.water", float(powder_weighed) * RATIO, "by weight")
mixes = put("flask/1", "mix.mixes", float(math.ceil(slurry * RISE / BOWL)), "risen slurry in the studio's bowl")
put("flask/1", "mix.powder-of-mix", float(powder_weighed) / mixes, "equal mixes")
put("flask/1", "mix.water-of-mix", water / mixes, "equal mixes")
put("flask/1", "mix.bowl-over", sum(MIX_STEPS[:2]), "mix, bowl")
put("flask/1", "mix.pour-over", sum(MIX_STEPS[:3]), "mix, bowl, pour")
clock = put("flask/1", "mix.clock", sum(MIX_STEPS), "mix, bowl, pour, flask")
put("flask/1", "mix.finish-by", GLOSS_OFF - BEFORE_GLOSS_OFF, "the lot's own gloss-off")
saturation = put("flask/1", "vacuum.saturation", saturation_kpa(WATER_C + 273.15), "IAPWS-IF97")
put("flask/1", "vacuum.gauge-to-boil", barometer - saturation, "a gauge reads the difference")
put("flask/1", "flask.wall-clearance", (FLASK_DIAMETER - tree_mm) / 2, "half of what is left")
put("flask/1", "flask.top-clearance", FLASK_HEIGHT - tree_high, "what is left above")

# ---- Pour: thin rings rule, the middle of their ranges. ----

assert patterns["1"]["section"] == "Thin" and all(pattern["section"] in ("Thin", "Medium", "Heavy") for pattern in patterns.values())
metal_c = put("flask/1", "pour.metal", sum(METAL_THIN) / 2, "middle of the range")
mould_c = put("flask/1", "pour.mould", sum(MOULD_THIN) / 2, "middle of the range")
put("flask/1", "pour.superheat", metal_c - LIQUIDUS_STERLING, "over the liquidus")

# ---- How the metal gets in: its own weight and half of the gauge, through the narrower of main sprue and feed sprues together. ----

assert flask.get("drive", "Vacuum") == "Vacuum" and "vacuum_kpa" not in flask
section = {}
for name, diameter, count in [("main", main_mm, 1)] + [(number, float(run["diameter_mm"]), int(run["count"])) for number, run in enumerate(tree["sprues"])]:
    section[name] = put("tree/1", "fill.rod-section", math.pi * (diameter / 2) ** 2 * count, "round rods")
feeds = put("tree/1", "fill.feeds-section", sum(area for name, area in section.items() if name != "main"), "all runs")
choke = put("tree/1", "fill.choke", min(section["main"], feeds), "the narrower")
head_kpa = put("flask/1", "fill.head", LIQUID_STERLING * 1000 * GRAVITY * tree_high / 1000 / 1000, "ρgh")
vacuum_kpa = put("flask/1", "fill.vacuum", min(GAUGE_KPA, barometer) * VACUUM_SHARE, "half the gauge")
pressure = put("flask/1", "fill.pressure", head_kpa + vacuum_kpa, "both")
put("flask/1", "fill.detail", 2 * TENSION_STERLING / (pressure * 1000) * 1000, "2γ/p")
# The ring's wall was measured, 1.5 mm; an edge as thin has half of that as its radius.
thinnest = min(float(pattern["thinnest_mm"]) for pattern in patterns.values() if "thinnest_mm" in pattern)
put("flask/1", "fill.thin-radius", thinnest / 2, "half the wall")
put("flask/1", "fill.detail-pressure", 2 * TENSION_STERLING / (thinnest / 2), "2γ/r")
speeds = [put("flask/1", "fill.velocity", DISCHARGE * math.sqrt(2 * kpa * 1000 / (LIQUID_STERLING * 1000)), "Torricelli") for kpa in (pressure, vacuum_kpa)]
mean = put("flask/1", "fill.mean-velocity", sum(speeds) / 2, "the speed falls evenly while the tree fills")
put("flask/1", "fill.time", tree_volume * 1000 / (choke * mean * 1000), "volume over what goes through")

# ---- Freezing: Chvorinov's rule in its expanded form for a wall, the curved form for the ball in the heaviest place. ----

frozen_c = put("flask/1", "freeze.at", (SOLIDUS_STERLING + LIQUIDUS_STERLING) / 2, "the middle")
over = put("flask/1", "freeze.over", metal_c - frozen_c, "metal over that")
fall = put("flask/1", "freeze.fall", frozen_c - mould_c, "mould under that")
heat = put("flask/1", "freeze.heat", LATENT_STERLING + CP_LIQUID_STERLING * over, "latent and superheat")
(low_c, low_cp), (high_c, high_cp) = [pair for pair in zip(CP_MOULD, CP_MOULD[1:]) if pair[0][0] <= mould_c < pair[1][0]][0]
cp = low_cp + (high_cp - low_cp) * (mould_c - low_c) / (high_c - low_c)
spread = put("flask/1", "freeze.mould-diffusivity", K_MOULD / (each * 1000 * cp * 1000) * 1e6, "k/(ρc)")
ratio = put("flask/1", "freeze.lambda", each * cp * fall / (LIQUID_STERLING * heat), "heat of the mould over that of the metal")
flat = put("flask/1", "freeze.beta-flat", 2 * ratio / math.sqrt(math.pi), "flat")
# β = λ(2/√π + 1/(3β)), by going round until it stands.
curved = flat
for _ in range(200):
    curved = ratio * (2 / math.sqrt(math.pi) + 1 / (3 * curved))
put("flask/1", "freeze.beta-round", curved, "round")
ball = float(patterns["1"]["file"]["kept"]["walls"][2])
wall_modulus = put("flask/1", "freeze.wall-modulus", thinnest / 2, "a plate")
ball_modulus = put("flask/1", "freeze.ball-modulus", ball / 6, "a ball")
si = LIQUID_STERLING * 1000 * heat * 1000 / (2 / math.sqrt(math.pi) * math.sqrt(K_MOULD * each * 1000 * cp * 1000) * fall)
put("flask/1", "freeze.time", (si * wall_modulus / 1000) ** 2, "[ρ(L + cΔT)/(2/√π·√(kρc)·ΔT)]²·M²")
# Two faces of metal: one under oxide, one under flux.
for emissivity in (0.6, 0.3):
    kelvin, flux = frozen_c + 273.15, emissivity * 5.670374e-8
    held = DENSITY_STERLING * depth  # kg/m²
    until_frozen = held * heat * 1000 / (flux * kelvin**4)
    until_dark = held * CP_SOLID_STERLING * 1000 * (1 / (525 + 273.15) ** 3 - 1 / kelvin**3) / (3 * flux)
    put("flask/1", "quench.no-glow", (until_frozen + until_dark) / 60, "freezes, then cools to 525 °C")

put("flask/1", "freeze.time", (ball_modulus / 1000 / curved) ** 2 / (spread * 1e-6), "(M/β)²/α")

# ---- Burnout. ----


def ramp_parts(start, end):
    """Minutes in each band of the kiln, coolest band first."""
    low, high, minutes, floor = min(start, end), max(start, end), [], -math.inf
    for number, (up_to, rise, fall) in enumerate(KILN_BANDS):
        top = math.inf if number == len(KILN_BANDS) - 1 else up_to
        span = min(high, top) - max(low, floor)
        if span > 0:
            minutes.append(span / (rise if end > start else fall) * 60)
        floor = up_to
    return minutes


stages = [(target, hours * 60) for target, hours in TABLE_ROW[0]] + [(mould_c, TABLE_ROW[1] * 60)]
put("burnout/1", "burnout.soak-target", mould_c, "the only flask's mould")
at_c, including, besides = float(load["start_c"]), [], []
for number, (target, hours) in enumerate(stages, 1):
    place, pieces = f"burnout/1/stage/{number}", ramp_parts(at_c, target)
    for minutes in pieces:
        put(place, "stage.ramp-part", minutes, "difference over the kiln's rate in this band")
    ramp = put(place, "stage.ramp", sum(pieces), "all bands")
    including.append(put(place, "stage.minutes-including", max(hours, ramp), "the table's hours with the ramp in them"))
    besides.append(put(place, "stage.minutes-besides", hours + ramp, "the ramp, then the table's hours"))
    at_c = target
assert load["hours_include_ramps"] is False
put("burnout/1", "burnout.total-including", sum(including), "all stages")
put("burnout/1", "burnout.total-besides", sum(besides), "all stages")
total = put("burnout/1", "burnout.total", sum(besides), "the job says the ramps come on top")
top = put("burnout/1", "burnout.top", max(target for target, _ in stages), "highest stage")
put("burnout/1", "burnout.time-above-700", sum(hours for target, hours in stages if target >= 700), "holds at 700 °C and above")
put("burnout/1", "burnout.true-top", top + OFFSET + KILN_HOT_ZONE, "display, the kiln's offset, its hottest place")

# Moments are minutes since 1970-01-01 UTC. The studio's zone keeps Central European Time, UTC+1, from the last Sunday of October to the last
# of March (directive 2000/84/EC); the whole night from investing to the pour lies in it.
assert studio["site"]["zone"] == "Europe/Paris"
pour = datetime.fromisoformat(load["pour_at"]).replace(tzinfo=timezone(timedelta(hours=1)))
assert pour.month in (11, 12) or pour.month in (1, 2)
pour_min = pour.timestamp() / 60
start = put("burnout/1", "burnout.kiln-start", pour_min - total, "backwards from the pour")
end = start
for number, minutes in enumerate(besides, 1):
    end += minutes
    put(f"burnout/1/stage/{number}", "stage.end", end, "one after the other")
invested = put("flask/1", "flask.invested-by", start - SET_MIN, "two hours of rest before the kiln")
put("flask/1", "flask.mix-by", invested - clock, "the mixing clock before that")

# ---- Melt. ----

put("melt/1", "melt.charge", weighed_charge, "one flask")
molten = put("melt/1", "melt.molten-volume", float(weighed_charge) / LIQUID_STERLING, "mass over the liquid's density")
put("melt/1", "melt.crucible-most", CRUCIBLE_USABLE * LIQUID_STERLING, "what it may hold, of silver")
put("melt/1", "melt.crucible-fill", molten / CRUCIBLE_USABLE, "share of what it may hold")
fine = []
for draw in melt["charge"]:
    lot = by_id(studio["lots"], draw["lot"])
    fine.append(put("melt/1", "melt.fine-in-draw", float(Fraction(draw["grams"]) * Fraction(lot["fineness_permille"]) / 1000), "by the lot's papers"))
drawn = put("melt/1", "melt.drawn", sum(Decimal(draw["grams"]) for draw in melt["charge"]), "all draws")
put("melt/1", "melt.fine", sum(fine), "all draws")
put("melt/1", "melt.fineness", 1000 * sum(fine) / float(drawn), "fine metal over all metal")
put("melt/1", "melt.mark", max([925.0]), "the alloy's mark: nothing else is asked for")
# What clients brought stands in the studio, whatever the batch draws on: thousandths of what came in are fine metal.
for lot in studio["lots"]:
    if lot.get("owner"):
        came_in = put("studio", "lot.received", sum(Decimal(receipt["grams"]) for receipt in lot["receipts"]), "all receipts of a client's lot")
        put("studio", "lot.fine", float(Fraction(came_in) * Fraction(lot["fineness_permille"]) / 1000), "its thousandths")
back = put("melt/1", "melt.returns", sum(Decimal(draw["grams"]) for draw in melt["charge"] if by_id(studio["lots"], draw["lot"]).get("what") == "Scrap"), "own scrap among the draws")
put("melt/1", "melt.returns-share", float(back) / float(drawn), "scrap over all")
for draw in melt["charge"]:
    lot = by_id(studio["lots"], draw["lot"])
    put("melt/1", "lot.drawn", sum(Decimal(other["grams"]) for other in melt["charge"] if other["lot"] == draw["lot"]), "this job's draws")
    put("melt/1", "lot.received", sum(Decimal(receipt["grams"]) for receipt in lot["receipts"]), "all receipts")

held_against_the_copies()
text = json.dumps({"made_by": "tests/tools/figures_first_pour.py", "figures": figures}, indent=1, ensure_ascii=False) + "\n"
if "--check" in sys.argv:
    if EXPECTED.read_text(encoding="utf-8") != text:
        sys.exit("first_pour_expected.json differs from what the script works out")
else:
    EXPECTED.write_text(text, encoding="utf-8")
    print(len(figures), "figures")
