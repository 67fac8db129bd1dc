//! How far solids are apart: by hand, by another library, by trying every corner and edge, and never too far.
#![allow(
    missing_docs,
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::print_stdout,
    reason = "a test may stop where it stands, and prints its table"
)]

mod stand;

use pourbook::calc::solid::{Block, Point, Rod, Solid, apart};
use serde_json::Value;

const SQUARE: [Point; 3] = [[1.0, 0.0, 0.0], [0.0, 1.0, 0.0], [0.0, 0.0, 1.0]];

fn block(centre: Point, half: Point) -> Block {
    Block { centre, axes: SQUARE, half }
}

fn boxed(centre: Point, half: Point) -> Solid {
    Solid::Block(block(centre, half))
}

fn rod(from: Point, to: Point, radius: f64) -> Solid {
    Solid::Rod(Rod { ends: [from, to], radius })
}

/// Turned by so many degrees about the third way.
fn askew(centre: Point, half: Point, degrees: f64) -> Solid {
    let (sin, cos) = degrees.to_radians().sin_cos();
    Solid::Block(Block { centre, axes: [[cos, sin, 0.0], [-sin, cos, 0.0], [0.0, 0.0, 1.0]], half })
}

#[test]
fn distances_worked_by_hand() {
    let die = boxed([0.0; 3], [1.0; 3]);
    let rows: [(&str, Solid, Solid, f64); 11] = [
        ("face to face", die.clone(), boxed([5.0, 0.0, 0.0], [1.0; 3]), 3.0),
        ("edge to edge, 3-4-5", die.clone(), boxed([5.0, 6.0, 0.0], [1.0; 3]), 5.0),
        ("corner to corner, 2-3-6", die.clone(), boxed([4.0, 5.0, 8.0], [1.0; 3]), 7.0),
        ("edge to face", die.clone(), askew([1.0 + 2.0_f64.sqrt() + 0.5, 0.0, 0.0], [1.0; 3], 45.0), 0.5),
        ("crossed edges", askew([0.0; 3], [1.0; 3], 45.0), turned_up([2.0 * 2.0_f64.sqrt() + 0.25, 0.0, 0.0]), 0.25),
        ("faces that touch", die.clone(), boxed([2.0, 0.3, -0.2], [1.0; 3]), 0.0),
        ("corners that touch", die.clone(), boxed([2.0, 2.0, 2.0], [1.0; 3]), 0.0),
        ("rod beside a box", die.clone(), rod([3.0, -9.0, 0.5], [3.0, 9.0, 0.5], 0.75), 1.25),
        ("round end to corner, 2-3-6", die.clone(), rod([3.0, 4.0, 7.0], [9.0, 9.0, 20.0], 2.0), 5.0),
        ("skew rods", rod([-9.0, 0.0, 0.0], [9.0, 0.0, 0.0], 1.0), rod([0.0, -9.0, 4.0], [0.0, 9.0, 4.0], 0.5), 2.5),
        ("rods end to end", rod([0.0; 3], [0.0, 0.0, 4.0], 1.0), rod([0.0, 0.0, 9.0], [0.0, 0.0, 12.0], 1.5), 2.5),
    ];
    for (name, one, other, truth) in rows {
        for found in [apart(&one, &other), apart(&other, &one)] {
            assert!((found.at_least_mm - truth).abs() < 1e-12, "{name}: {found:?}");
            assert!(found.at_least_mm <= truth + 1e-15 && found.at_most_mm >= found.at_least_mm, "{name}: {found:?}");
        }
    }
}

/// A die that stands on an edge, the edge towards the first way and across the third.
fn turned_up(centre: Point) -> Solid {
    let half = 0.5_f64.sqrt();
    Solid::Block(Block { centre, axes: [[half, 0.0, half], [-half, 0.0, half], [0.0, 1.0, 0.0]], half: [1.0; 3] })
}

#[test]
fn solids_in_each_other_are_never_apart() {
    let die = boxed([0.0; 3], [1.0; 3]);
    for (name, other, deep) in [
        ("the same", die.clone(), -2.0),
        ("a corner in", boxed([1.5, 1.6, 1.7], [1.0; 3]), -0.3),
        ("wholly inside", boxed([0.25, 0.0, 0.0], [0.25; 3]), -1.0),
        ("a rod through it", rod([-9.0, 0.0, 0.0], [9.0, 0.0, 0.0], 0.5), -1.5),
        ("a rod that grazes it", rod([-9.0, 1.25, 0.0], [9.0, 1.25, 0.0], 0.5), -0.25),
    ] {
        let found = apart(&die, &other);
        assert!((found.at_least_mm - deep).abs() < 1e-9 && found.at_most_mm == 0.0, "{name}: {found:?}");
    }
    let hull = Solid::Hull(block([0.0; 3], [1.0; 3]).corners().to_vec());
    assert!(apart(&hull, &boxed([0.5, 0.0, 0.0], [1.0; 3])).at_least_mm <= 0.0);
}

fn point(value: &Value) -> Point {
    let part = |at: usize| value[at].as_f64().unwrap();
    [part(0), part(1), part(2)]
}

fn points(value: &Value) -> Vec<Point> {
    value.as_array().unwrap().iter().map(point).collect()
}

fn solid(value: &Value) -> Solid {
    match value["kind"].as_str().unwrap() {
        "block" => {
            let axes = points(&value["axes"]);
            Solid::Block(Block { centre: point(&value["centre"]), axes: [axes[0], axes[1], axes[2]], half: point(&value["half"]) })
        }
        "rod" => {
            let ends = points(&value["ends"]);
            Solid::Rod(Rod { ends: [ends[0], ends[1]], radius: value["radius"].as_f64().unwrap() })
        }
        _ => Solid::Hull(points(&value["points"])),
    }
}

/// Distances by the Flexible Collision Library (python-fcl 0.7.0.11, FCL 0.7), written by `tests/tools/solids_by_fcl.py`.
#[test]
fn another_library_finds_the_same() {
    let pairs: Value = serde_json::from_str(include_str!("fcl.json")).unwrap();
    let (mut worst, mut compared) = (0.0_f64, 0);
    for (at, pair) in pairs.as_array().unwrap().iter().enumerate() {
        let found = apart(&solid(&pair["one"]), &solid(&pair["other"]));
        let theirs = pair["apart_mm"].as_f64().unwrap();
        let off = (found.at_least_mm - theirs).abs();
        assert!(off < 0.01, "pair {at}: {} and {theirs}: {pair}", found.at_least_mm);
        (worst, compared) = (worst.max(off), compared + 1);
    }
    println!("{compared} pairs, at most {worst:.1e} mm from FCL");
    assert_eq!(compared, 120);
}

/// Random numbers of a fixed beginning, from 0 to 1.
struct Dice(u64);

impl Dice {
    fn roll(&mut self) -> f64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 11) as f64 / (1_u64 << 53) as f64
    }

    fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.roll()
    }

    fn way(&mut self) -> Point {
        loop {
            let way = [0, 1, 2].map(|_| self.between(-1.0, 1.0));
            let long = dot(way, way).sqrt();
            if (0.1..1.0).contains(&long) {
                return way.map(|x| x / long);
            }
        }
    }

    fn block(&mut self, size: f64) -> Block {
        let first = self.way();
        let second = loop {
            let way = cross(first, self.way());
            let long = dot(way, way).sqrt();
            if long > 0.1 {
                break way.map(|x| x / long);
            }
        };
        let half = [0, 1, 2].map(|_| size * 10.0_f64.powf(self.between(-1.5, 0.0)));
        Block { centre: [0, 1, 2].map(|_| size * self.between(-0.9, 0.9)), axes: [first, second, cross(first, second)], half }
    }
}

fn dot(a: Point, b: Point) -> f64 {
    a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}

fn cross(a: Point, b: Point) -> Point {
    [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]]
}

fn minus(a: Point, b: Point) -> Point {
    [0, 1, 2].map(|k| a[k] - b[k])
}

/// From a point to a box: the part of the way that is outside of it.
fn to_box(point: Point, block: &Block) -> f64 {
    let off = minus(point, block.centre);
    (0..3).map(|axis| (dot(off, block.axes[axis]).abs() - block.half[axis]).max(0.0).powi(2)).sum::<f64>().sqrt()
}

/// The twelve edges.
fn edges(block: &Block) -> Vec<[Point; 2]> {
    let corners = block.corners();
    let pairs = (0..8_usize).flat_map(|a| (0..3).map(move |axis| (a, a | 1 << axis))).filter(|(a, b)| a != b);
    pairs.map(|(a, b)| [corners[a], corners[b]]).collect()
}

/// Two line segments: the nearest of their lines where that lies in both, else from an end to the other segment.
fn segments(one: [Point; 2], other: [Point; 2]) -> f64 {
    let (u, v, w) = (minus(one[1], one[0]), minus(other[1], other[0]), minus(one[0], other[0]));
    let (a, b, c, d, e) = (dot(u, u), dot(u, v), dot(v, v), dot(u, w), dot(v, w));
    let det = a * c - b * b;
    let mut best = f64::INFINITY;
    if det > 1e-12 * a * c {
        let (s, t) = ((b * e - c * d) / det, (a * e - b * d) / det);
        if (0.0..=1.0).contains(&s) && (0.0..=1.0).contains(&t) {
            let gap = [0, 1, 2].map(|k| w[k] + s * u[k] - t * v[k]);
            best = dot(gap, gap).sqrt();
        }
    }
    let to_segment = |point: Point, [from, to]: [Point; 2]| {
        let way = minus(to, from);
        let share = (dot(minus(point, from), way) / dot(way, way)).clamp(0.0, 1.0);
        let gap = [0, 1, 2].map(|k| point[k] - from[k] - share * way[k]);
        dot(gap, gap).sqrt()
    };
    let ends = one.iter().map(|end| to_segment(*end, other)).chain(other.iter().map(|end| to_segment(*end, one)));
    ends.fold(best, f64::min)
}

/// Two boxes that do not lie in each other are nearest at a corner and a face, or at two edges. Nothing where no plane parts them.
fn by_corners_and_edges(one: &Block, other: &Block) -> Option<f64> {
    let ways = one.axes.into_iter().chain(other.axes).chain(one.axes.iter().flat_map(|a| other.axes.iter().map(|b| cross(*a, *b))));
    let parted = ways.filter(|way| dot(*way, *way) > 1e-18).any(|way| {
        let reach = |block: &Block| (0..3).map(|axis| (dot(block.axes[axis], way) * block.half[axis]).abs()).sum::<f64>();
        dot(minus(one.centre, other.centre), way).abs() > reach(one) + reach(other)
    });
    let corners = one.corners().map(|corner| to_box(corner, other)).into_iter().chain(other.corners().map(|corner| to_box(corner, one)));
    let crossed = edges(one).into_iter().flat_map(|a| edges(other).into_iter().map(move |b| segments(a, b)));
    parted.then(|| corners.chain(crossed).fold(f64::INFINITY, f64::min))
}

#[test]
fn never_farther_apart_than_they_are() {
    let mut dice = Dice(20);
    let (mut apart_pairs, mut touching) = (0, 0);
    for round in 0..20_000 {
        // A bead beside a flask, and everything between.
        let size = 10.0_f64.powf(dice.between(-3.0, 3.0));
        let smaller = size * 10.0_f64.powf(dice.between(-2.0, 0.0));
        let (one, mut other) = (dice.block(size), dice.block(smaller));
        if round % 4 == 0 {
            // Brought so near that they all but touch.
            if let Some(gap) = by_corners_and_edges(&one, &other) {
                let found = apart(&Solid::Block(one), &Solid::Block(other));
                let way = minus(found.places[0], found.places[1]);
                let long = dot(way, way).sqrt().max(f64::MIN_POSITIVE);
                (0..3).for_each(|k| other.centre[k] += way[k] / long * gap * (1.0 - 1e-9));
            }
        }
        let found = apart(&Solid::Block(one), &Solid::Block(other));
        match by_corners_and_edges(&one, &other) {
            Some(truth) => {
                assert!(found.at_least_mm <= truth + 1e-13 * size, "{round}: {found:?} and truly {truth}\n{one:?}\n{other:?}");
                assert!(found.at_least_mm >= truth - 1e-9 * size, "{round}: {found:?} and truly {truth}\n{one:?}\n{other:?}");
                assert!((found.at_most_mm - truth).abs() < 1e-6 * size, "{round}: {found:?} and truly {truth}");
                apart_pairs += 1;
            }
            None => {
                assert!(found.at_least_mm <= 1e-13 * size, "{round}: {found:?}");
                touching += 1;
            }
        }
    }
    assert!(apart_pairs > 5000 && touching > 1000, "{apart_pairs} {touching}");
}

#[test]
fn a_hull_is_as_its_box() {
    let mut dice = Dice(7);
    for _ in 0..3000 {
        let (one, other) = (dice.block(10.0), dice.block(10.0));
        let [as_box, as_hull] = [Solid::Block(one), Solid::Hull(one.corners().to_vec())].map(|solid| apart(&solid, &Solid::Block(other)));
        if as_box.at_least_mm > 0.0 {
            assert!((as_box.at_least_mm - as_hull.at_least_mm).abs() < 1e-8, "{as_box:?} {as_hull:?}");
        } else {
            assert!(as_hull.at_least_mm <= 0.0);
        }
    }
}

#[test]
fn reach_and_heights() {
    assert_eq!(boxed([3.0, 0.0, 5.0], [1.0, 3.0, 2.0]).reach(), 5.0);
    assert_eq!(boxed([3.0, 0.0, 5.0], [1.0, 3.0, 2.0]).heights(), [3.0, 7.0]);
    assert_eq!(rod([3.0, 4.0, 0.0], [0.0, 0.0, 9.0], 1.5).reach(), 6.5);
    assert_eq!(rod([3.0, 4.0, 0.0], [0.0, 0.0, 9.0], 1.5).heights(), [-1.5, 10.5]);
    assert!(!boxed([f64::NAN, 0.0, 0.0], [1.0; 3]).is_sound() && !Solid::Hull(Vec::new()).is_sound());
    assert!(boxed([0.0; 3], [1.0; 3]).is_sound() && !rod([0.0; 3], [1.0; 3], -1.0).is_sound());
}
