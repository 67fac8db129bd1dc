//! Solids that pass through each other: what they fill together, against closed forms and exact inclusion and exclusion.

use crate::files::{keys, near};
use crate::shapes::{ball, block, mapped, moved, stl, torus, turned};
use pourbook::mesh::{Limits, Measure, Problem, Triangle, measure_bytes};
use proptest::prelude::*;
use std::f64::consts::PI;

fn all(parts: &[Vec<Triangle>]) -> Measure {
    measure_bytes(&stl(&parts.concat()), &Limits::default()).unwrap()
}

/// A round bar along an axis.
pub fn bar(axis: usize, radius: f64, half_length: f64, sides: usize) -> Vec<Triangle> {
    let at = |k: usize, end: f64| -> [f32; 3] {
        let angle = 2.0 * PI * (k % sides) as f64 / sides as f64;
        let [x, y, z] = [radius * angle.cos(), radius * angle.sin(), end];
        let mut point = [0.0; 3];
        (point[axis], point[(axis + 1) % 3], point[(axis + 2) % 3]) = (z as f32, x as f32, y as f32);
        point
    };
    let middle = |end: f64| -> [f32; 3] { std::array::from_fn(|k| if k == axis { end as f32 } else { 0.0 }) };
    (0..sides)
        .flat_map(|k| {
            let (a, b) = (-half_length, half_length);
            [
                [at(k, a), at(k + 1, a), at(k + 1, b)],
                [at(k, a), at(k + 1, b), at(k, b)],
                [middle(a), at(k + 1, a), at(k, a)],
                [middle(b), at(k, b), at(k + 1, b)],
            ]
        })
        .collect()
}

/// A turn by three angles, as a matrix.
pub fn turn(angles: [f64; 3]) -> impl Fn([f64; 3]) -> [f64; 3] {
    move |[x, y, z]| {
        let (s, c) = angles[0].sin_cos();
        let [x, y, z] = [c * x - s * y, s * x + c * y, z];
        let (s, c) = angles[1].sin_cos();
        let [x, y, z] = [x, c * y - s * z, s * y + c * z];
        let (s, c) = angles[2].sin_cos();
        [c * x + s * z, y, c * z - s * x]
    }
}

#[test]
fn two_balls_share_a_lens() {
    // Two balls of radius r, centres d apart, share π (4r + d)(2r − d)² / 12.
    // Facets lie up to 2e-4 of the radius too deep, which counts for more the flatter the lens.
    for (radius, apart, near_share) in [(5.0, 6.0, 1e-3), (5.0, 9.5, 4e-3), (5.0, 1.0, 1e-3)] {
        let one = ball(radius, 180, 360);
        let plain = all(std::slice::from_ref(&one)).volume_mm3.unwrap();
        let found = all(&[one.clone(), moved(&one, [apart, 0.0, 0.0])]);
        let lens = PI * (4.0 * radius + apart) * (2.0 * radius - apart).powi(2) / 12.0;
        near(2.0 * plain - found.fills_mm3.unwrap(), lens, near_share, "lens");
        near(found.fills_mm3.unwrap(), 2.0 * 4.0 / 3.0 * PI * radius.powi(3) - lens, 3e-4, "union");
        assert_eq!(keys(&found), ["overlapping-shells"]);
    }
}

#[test]
fn two_crossing_bars_share_what_archimedes_found() {
    // Bars of radius r that cross at right angles share 16 r³ / 3; facets of 256 sides take 2e-4 of it.
    let (radius, half) = (1.5, 8.0);
    let found = all(&[bar(0, radius, half, 256), bar(1, radius, half, 256)]);
    let plain = found.plain_sum_mm3.unwrap();
    near(plain - found.fills_mm3.unwrap(), 16.0 * radius.powi(3) / 3.0, 4e-4, "shared");
    // Three bars share 8 (2 − √2) r³, and each two 16 r³ / 3 (inclusion and exclusion).
    let found = all(&[bar(0, radius, half, 256), bar(1, radius, half, 256), bar(2, radius, half, 256)]);
    let shared = 3.0 * 16.0 / 3.0 * radius.powi(3) - 8.0 * (2.0 - 2.0_f64.sqrt()) * radius.powi(3);
    near(found.plain_sum_mm3.unwrap() - found.fills_mm3.unwrap(), shared, 4e-4, "shared by three");
    let Some(Problem::OverlappingShells { pairs: 3, union: Some(union), .. }) = found.problems.first() else {
        panic!("{:?}", found.problems)
    };
    assert!(union.cuts > 100 && union.doubt_mm3 < 1e-4 * union.volume_mm3, "{union:?}");
}

type Span = ([f64; 3], [f64; 3]);

/// The volume of boxes along the axes, by inclusion and exclusion.
fn union_of(boxes: &[Span]) -> f64 {
    (1..1_usize << boxes.len())
        .map(|subset| {
            let chosen = || (0..boxes.len()).filter(move |k| subset >> k & 1 == 1);
            let common: f64 = (0..3)
                .map(|axis| {
                    let low = chosen().map(|k| boxes[k].0[axis]).fold(f64::NEG_INFINITY, f64::max);
                    let high = chosen().map(|k| boxes[k].1[axis]).fold(f64::INFINITY, f64::min);
                    (high - low).max(0.0)
                })
                .product();
            if subset.count_ones() % 2 == 1 { common } else { -common }
        })
        .sum()
}

fn as_mesh((low, high): &Span) -> Vec<Triangle> {
    block(low.map(|x| x as f32), high.map(|x| x as f32))
}

fn any_box() -> impl Strategy<Value = Span> {
    (prop::array::uniform3(-6.0..6.0_f64), prop::array::uniform3(0.5..8.0_f64)).prop_map(|(low, size)| {
        let low = low.map(|x| (x * 16.0).round() / 16.0);
        (low, std::array::from_fn(|k| low[k] + (size[k] * 16.0).round() / 16.0))
    })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    #[test]
    fn boxes_turned_together(boxes in prop::collection::vec(any_box(), 2..5), angles in prop::array::uniform3(0.0..3.0_f64), is_turned: bool) {
        let turn = turn(angles);
        let parts: Vec<Vec<Triangle>> =
            boxes.iter().map(|one| mapped(&as_mesh(one), |p| if is_turned { turn(p) } else { p })).collect();
        let found = all(&parts);
        // Boxes along the axes may be one over again, whose triangles are left out.
        near(found.fills_mm3.unwrap(), union_of(&boxes), 2e-5, "union");
        near(found.volume_mm3.unwrap(), union_of(&boxes), 2e-5, "material");
    }

    #[test]
    fn a_part_wound_inside_out_is_turned(boxes in (any_box(), any_box()), angles in prop::array::uniform3(0.0..3.0_f64)) {
        let turn = turn(angles);
        let parts = [mapped(&as_mesh(&boxes.0), &turn), turned(&mapped(&as_mesh(&boxes.1), &turn))];
        let union = union_of(&[boxes.0, boxes.1]);
        let in_each_other = union <= 1.000_001 * union_of(&[boxes.0]).max(union_of(&[boxes.1]));
        prop_assume!(!in_each_other);
        near(all(&parts).fills_mm3.unwrap(), union, 2e-5, "union");
    }
}

#[test]
fn three_boxes_through_each_other() {
    let boxes = [([0.0; 3], [4.0; 3]), ([2.0, 1.0, 1.0], [6.0, 5.0, 5.0]), ([1.0, 2.0, -1.0], [5.0, 6.0, 3.0])];
    // By hand: 192 − (18 + 18 + 18) + 8 = 146; the pairs share 2·3·3, 3·2·3 and 3·3·2 mm³, all three 2·2·2.
    near(union_of(&boxes), 146.0, 1e-12, "inclusion and exclusion");
    let found = all(&boxes.map(|one| as_mesh(&one)));
    near(found.fills_mm3.unwrap(), 146.0, 2e-5, "union");
}

#[test]
fn a_cavity_inside_one_of_two() {
    // A box of 10³ with a cavity of 4³, and a bar of 2 × 2 that takes none or a part of the cavity, as it lies.
    let (solid, cavity) = (block([0.0; 3], [10.0; 3]), turned(&block([3.0; 3], [7.0; 3])));
    for (bar, fills, left) in [
        // Away from the cavity.
        (block([0.5, 0.5, 8.0], [2.5, 2.5, 14.0]), 1000.0 + 2.0 * 2.0 * 4.0, 64.0),
        // Into it by two: 2·2·2 of it is solid.
        (block([4.0, 4.0, 5.0], [6.0, 6.0, 14.0]), 1000.0 + 2.0 * 2.0 * 4.0, 64.0 - 8.0),
        // Right through it.
        (block([4.0, 4.0, -1.0], [6.0, 6.0, 14.0]), 1000.0 + 2.0 * 2.0 * 5.0, 64.0 - 16.0),
    ] {
        let found = all(&[solid.clone(), cavity.clone(), bar]);
        near(found.fills_mm3.unwrap(), fills, 2e-5, "fills");
        near(found.volume_mm3.unwrap(), fills - left, 2e-5, "material");
        assert_eq!(keys(&found), ["sealed-void", "overlapping-shells"], "{:?}", found.problems);
        let Problem::SealedVoid { void_mm3, .. } = found.problems[0] else { panic!("{:?}", found.problems) };
        near(void_mm3, left, 1e-3, "the cavity that is left");
    }
    // A bar wholly in the box, through the wall of its cavity: nothing is added outside.
    let found = all(&[solid, cavity, block([4.0, 4.0, 1.0], [6.0, 6.0, 5.0])]);
    near(found.fills_mm3.unwrap(), 1000.0, 1e-12, "fills");
    near(found.volume_mm3.unwrap(), 1000.0 - 64.0 + 8.0, 2e-5, "material");
}

#[test]
fn parts_that_stand_apart_stay_exact() {
    let apart = moved(&ball(3.0, 24, 36), [40.0, 0.0, 0.0]);
    let alone = all(std::slice::from_ref(&apart)).volume_mm3.unwrap();
    let found = all(&[block([0.0; 3], [4.0; 3]), block([3.0, 1.0, 1.0], [6.0, 3.0, 3.0]), apart]);
    near(found.fills_mm3.unwrap(), 64.0 + 12.0 - 4.0 + alone, 1e-5, "union and a ball");
    // Linked rings do not touch, though their boxes do.
    let ring = torus(8.0, 1.0, 48, 16);
    let through: Vec<Triangle> = mapped(&ring, |[x, y, z]| [x + 8.0, -z, y]);
    assert!(all(&[ring, through]).problems.is_empty());
}

#[test]
fn long_wires_that_cross_once() {
    // Two wires a hundred times as long as thick share 16 r³ / 3 at their crossing.
    let (radius, half) = (0.4, 40.0);
    let found = all(&[bar(0, radius, half, 96), bar(1, radius, half, 96)]);
    near(found.plain_sum_mm3.unwrap() - found.fills_mm3.unwrap(), 16.0 * radius.powi(3) / 3.0, 3e-3, "shared");
}

#[test]
fn what_is_too_intricate_keeps_its_bounds() {
    // Hundreds of thin plates across hundreds of others: more crossings in a cut than are worth waiting for.
    let parts: Vec<Vec<Triangle>> = (0..1300)
        .map(|k| {
            let at = 0.05 * (k / 2) as f32;
            if k % 2 == 0 { block([at, -1.0, 0.0], [at + 0.02, 40.0, 1.0]) } else { block([-1.0, at, 0.1], [40.0, at + 0.02, 1.1]) }
        })
        .collect();
    let found = all(&parts);
    assert_eq!((found.volume_mm3, found.fills_mm3), (None, None), "{:?}", found.problems);
    let [Problem::OverlappingShells { union: None, at_most_mm3, .. }] = found.problems[..] else { panic!("{:?}", found.problems) };
    assert_eq!(found.fills_at_most_mm3, Some(at_most_mm3));
    assert!(found.problems[0].leaves_no_volume() && found.problems[0].to_string().contains("too intricately"));
}

/// Found by the fuzzer: one corner so far away that the gaps of the others were closed across the whole model. What is left crosses itself and
/// is turned inside out in places, and its cuts come to less than nothing.
#[test]
fn solids_turned_inside_out_fill_nothing_that_could_be_told() {
    let bytes = std::fs::read(concat!(env!("CARGO_MANIFEST_DIR"), "/tests/fuzz/found/mesh/union-less-than-nothing")).unwrap();
    let found = pourbook::mesh::measure_bytes(&bytes, &pourbook::mesh::Limits::default()).unwrap();
    let keys: Vec<&str> = found.problems.iter().map(pourbook::mesh::Problem::key).collect();
    assert!(keys.contains(&"absurd-size"), "{keys:?}");
    for volume in [found.volume_mm3, found.fills_mm3, found.fills_at_most_mm3].into_iter().flatten() {
        assert!(volume >= 0.0, "{found:?}");
    }
}
