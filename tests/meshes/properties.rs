//! What must hold for every mesh.

use crate::files::{bytes, keys, near};
use crate::shapes::{ball, mapped, moved, stl, torus};
use pourbook::mesh::{Limits, Measure, Triangle, measure_bytes, read};
use proptest::prelude::*;

fn of(triangles: &[Triangle]) -> Measure {
    measure_bytes(&stl(triangles), &Limits::default()).unwrap()
}

/// A closed shape of one or two parts.
fn shape() -> impl Strategy<Value = Vec<Triangle>> {
    let sides = (3_usize..12, 3_usize..12);
    prop_oneof![
        (sides.clone(), 2.0..9.0_f64).prop_map(|((n, m), r)| ball(r, n, m)),
        (sides.clone(), 3.0..9.0_f64).prop_map(|((n, m), r)| torus(r, 1.0, n, m)),
        (sides, 3.0..9.0_f64).prop_map(|((n, m), r)| [torus(r, 1.0, n, m), moved(&ball(2.0, m, n), [30.0, 1.0, 2.0])].concat()),
    ]
}

fn shuffled(triangles: &[Triangle], mut seed: u64) -> Vec<Triangle> {
    let mut next = move || {
        seed = seed.wrapping_mul(6364136223846793005).wrapping_add(1442695040888963407);
        (seed >> 33) as usize
    };
    let mut out = triangles.to_vec();
    for at in (1..out.len()).rev() {
        out.swap(at, next() % (at + 1));
    }
    out.iter_mut().for_each(|t| t.rotate_left(next() % 3));
    out
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn scaling_goes_with_the_cube(shape in shape(), exponent in -2..4_i32) {
        // A power of two scales 32-bit corners without rounding.
        let s = 2.0_f64.powi(exponent);
        let (one, other) = (of(&shape), of(&mapped(&shape, |p| p.map(|x| s * x))));
        near(other.volume_mm3.unwrap(), s.powi(3) * one.volume_mm3.unwrap(), 1e-12, "volume");
        near(other.area_mm2, s.powi(2) * one.area_mm2, 1e-12, "area");
    }

    #[test]
    fn order_changes_nothing(shape in shape(), seed: u64) {
        let (one, other) = (of(&shape), of(&shuffled(&shape, seed)));
        near(other.volume_mm3.unwrap(), one.volume_mm3.unwrap(), 1e-12, "volume");
        near(other.area_mm2, one.area_mm2, 1e-12, "area");
        prop_assert_eq!(other.problems, one.problems);
        prop_assert_eq!((other.size_mm, other.watertight, other.shells.len()), (one.size_mm, one.watertight, one.shells.len()));
        for (a, b) in other.shells.iter().zip(&one.shells) {
            prop_assert_eq!((a.triangles, a.low_mm, a.high_mm), (b.triangles, b.low_mm, b.high_mm));
        }
    }

    #[test]
    fn moving_leaves_the_volume(shape in shape(), by in prop::array::uniform3(-200.0..200.0_f64)) {
        // Rounded to a step all moved numbers have, so that moving rounds nothing.
        let coarse = mapped(&shape, |p| p.map(|x| (x * 1024.0).round() / 1024.0));
        let by = by.map(|x| x.round());
        let (one, other) = (of(&coarse), of(&moved(&coarse, by)));
        prop_assert!(one.volume_mm3.is_some());
        near(other.volume_mm3.unwrap(), one.volume_mm3.unwrap(), 1e-11, "volume");
        near(other.area_mm2, one.area_mm2, 1e-12, "area");
    }

    #[test]
    fn a_missing_triangle_is_reported(shape in shape(), pick: prop::sample::Index) {
        let mut open = shape.clone();
        open.remove(pick.index(shape.len()));
        let found = of(&open);
        prop_assert_eq!(keys(&found), ["open"]);
        prop_assert_eq!((found.volume_mm3, found.fills_mm3, found.watertight), (None, None, false));
        prop_assert_eq!(found.problems[0], pourbook::mesh::Problem::Open { edges: 3 });
    }

    #[test]
    fn a_flipped_triangle_is_reported(shape in shape(), pick: prop::sample::Index) {
        let mut mixed = shape.clone();
        mixed[pick.index(shape.len())].swap(0, 1);
        let found = of(&mixed);
        prop_assert_eq!(&found.problems[..], [pourbook::mesh::Problem::MixedWinding { edges: 3 }]);
        prop_assert_eq!((found.volume_mm3, found.watertight, found.winding_agrees), (None, true, false));
    }

    #[test]
    fn balls_apart_and_through_each_other(
        radii in (1.0..5.0_f64, 1.0..5.0_f64), toward in prop::array::uniform3(-1.0..1.0_f64), gap in prop_oneof![-0.95..-0.2_f64, 0.02..0.5_f64],
    ) {
        let length = toward.iter().map(|x| x * x).sum::<f64>().sqrt();
        prop_assume!(length > 0.1);
        // The facets of the balls stay between 0.95 and 1 times the radius.
        let away = (radii.0 + radii.1) * (1.0 + gap * 0.5);
        let by = toward.map(|x| x / length * away);
        let found = of(&[ball(radii.0, 24, 24), moved(&ball(radii.1, 24, 24), by)].concat());
        let inside = away + radii.0.min(radii.1) < 0.95 * radii.0.max(radii.1);
        let may_be_inside = away + radii.0.min(radii.1) < 1.05 * radii.0.max(radii.1);
        prop_assume!(inside == may_be_inside);
        let wanted: &[&str] = if gap > 0.0 { &[] } else if inside { &["nested-same-winding"] } else { &["overlapping-shells"] };
        prop_assert_eq!(&keys(&found)[..], wanted, "{:?} {} {:?}", radii, away, found.problems);
    }

    #[test]
    fn balls_that_touch_at_a_pole(radius in 1.0..5.0_f32, other in 1.0..5.0_f32) {
        // The poles are corners of both and lie at the same point.
        let lower = ball(f64::from(radius), 12, 16);
        let upper: Vec<Triangle> = ball(f64::from(other), 12, 16);
        let lift = f64::from(radius) + f64::from(other);
        let upper = mapped(&upper, |p| if p[2] == -f64::from(other) { [0.0, 0.0, f64::from(radius)] } else { [p[0], p[1], p[2] + lift] });
        let found = of(&[lower, upper].concat());
        prop_assert!(found.problems.is_empty() && found.shells.len() == 2, "{:?}", found.problems);
    }

    #[test]
    fn noise_never_panics(noise in prop::collection::vec(any::<u8>(), 0..2000), solid: bool) {
        let start: &[u8] = if solid { b"solid \nfacet normal 0 0 1 outer loop vertex 0 0 0 vertex 1 0 0 " } else { b"" };
        let _ = measure_bytes(&[start, &noise].concat(), &Limits::default());
    }

    #[test]
    fn noise_of_the_right_length_never_panics(noise in prop::collection::vec(any::<u8>(), 0..40 * 50)) {
        let count = noise.len() / 50;
        let whole = [&[7_u8; 80][..], &(count as u32).to_le_bytes(), &noise[..50 * count]].concat();
        let _ = measure_bytes(&whole, &Limits::default());
    }

    #[test]
    fn corners_from_few_points_never_panic(picks in prop::collection::vec(prop::array::uniform3(prop::array::uniform3(-1..2_i8)), 1..60), scale in -40..30_i32) {
        let triangles: Vec<Triangle> = picks.iter().map(|t| t.map(|c| c.map(|x| f32::from(x) * 2.0_f32.powi(scale)))).collect();
        let found = of(&triangles);
        prop_assert_eq!(found.volume_mm3.is_some(), found.fills_mm3.is_some());
        prop_assert!(found.volume_mm3.is_some() || !found.problems.is_empty());
    }

    #[test]
    fn changed_files_never_panic(at in prop::collection::vec((any::<prop::sample::Index>(), any::<u8>()), 1..8), which in 0..4_usize, cut: prop::sample::Index, cutting: bool) {
        let name = ["synthetic/cube_10.stl", "synthetic/cube_10_ascii.stl", "format/ascii_scientific.stl", "synthetic/cubes_sharing_edge.stl"][which];
        let mut bytes = bytes(name);
        for (index, byte) in at {
            let place = index.index(bytes.len());
            bytes[place] = byte;
        }
        if cutting {
            bytes.truncate(cut.index(bytes.len()));
        }
        if let Ok(soup) = read(&bytes, &Limits::default()) {
            prop_assert!(soup.triangles().len() * 30 < bytes.len());
            let _ = pourbook::mesh::measure(&soup);
        }
    }
}
