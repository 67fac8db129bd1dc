//! Parts that touch, overlap, or lie in each other.

use crate::files::{keys, near};
use crate::shapes::{ball, block, moved, stl, torus, turned};
use pourbook::mesh::{Limits, Measure, Triangle, measure_bytes};

fn all(parts: &[Vec<Triangle>]) -> Measure {
    measure_bytes(&stl(&parts.concat()), &Limits::default()).unwrap()
}

fn cube(low: f32, high: f32) -> Vec<Triangle> {
    block([low; 3], [high; 3])
}

#[test]
fn parts_that_only_touch_are_no_overlap() {
    let first = block([0.0; 3], [4.0; 3]);
    // On a whole face with the same corners, on part of a face, along an edge, at a corner.
    for (low, high) in
        [([4.0, 0.0, 0.0], [8.0, 4.0, 4.0]), ([4.0, 1.0, 1.0], [8.0, 3.0, 3.0]), ([4.0, 4.0, 0.0], [8.0, 8.0, 4.0]), ([4.0; 3], [8.0; 3])]
    {
        let found = all(&[first.clone(), block(low, high)]);
        let second: f32 = (0..3).map(|k| high[k] - low[k]).product();
        assert_eq!(found.shells.len(), 2, "{low:?}");
        near(found.volume_mm3.unwrap(), 64.0 + f64::from(second), 1e-12, "sum");
        assert!(!found.problems.iter().any(|p| p.leaves_no_volume()), "{:?}", found.problems);
    }
    // Inside a cavity, resting on its wall.
    let found = all(&[cube(0.0, 10.0), turned(&cube(2.0, 8.0)), block([2.0, 3.0, 3.0], [5.0, 6.0, 6.0])]);
    near(found.volume_mm3.unwrap(), 1000.0 - 216.0 + 27.0, 1e-12, "cube in cavity");
    near(found.fills_mm3.unwrap(), 1000.0, 1e-12, "pours solid");
}

#[test]
fn overlap_with_every_edge_in_line_is_still_found() {
    // Faces lie in the same planes and edges cross edges: no edge passes clean through a triangle.
    for by in [[1.0, 0.0, 0.0], [2.0, 0.0, 0.0], [2.0, 2.0, 0.0], [0.5, 1.0, 0.0], [2.0, 2.0, 2.0]] {
        let found = all(&[block([0.0; 3], [4.0; 3]), moved(&block([0.0; 3], [4.0; 3]), by)]);
        let both: f64 = by.iter().map(|shift| 4.0 - shift).product();
        near(found.fills_mm3.unwrap(), 128.0 - both, 1e-6, "united");
        assert_eq!(found.volume_mm3, found.fills_mm3);
        assert!(keys(&found).contains(&"overlapping-shells"), "{by:?}: {:?}", found.problems);
    }
    // A bar through a cube, flush at both ends.
    let found = all(&[cube(0.0, 4.0), block([1.0, 1.0, 0.0], [3.0, 3.0, 4.0])]);
    assert_eq!(keys(&found), ["nested-same-winding"], "{:?}", found.problems);
    near(found.volume_mm3.unwrap(), 64.0, 1e-12, "flush bar adds nothing");
}

#[test]
fn boxes_that_overlap_prove_nothing() {
    // A ball in the hole of a ring, and two rings linked like a chain.
    let ring = torus(8.0, 1.0, 48, 16);
    let found = all(&[ring.clone(), ball(6.0, 16, 24)]);
    assert!(found.problems.is_empty() && found.volume_mm3.is_some(), "{:?}", found.problems);
    let linked: Vec<Triangle> = ring.iter().map(|t| t.map(|[x, y, z]| [x + 8.0, -z, y])).collect();
    let found = all(&[ring, linked]);
    assert!(found.problems.is_empty() && found.shells.len() == 2, "{:?}", found.problems);
}

#[test]
fn depth_decides_what_is_solid() {
    // Solid, cavity, solid in the cavity, cavity in that.
    let nest = [cube(0.0, 10.0), turned(&cube(1.0, 9.0)), cube(2.0, 8.0), turned(&cube(3.0, 7.0))];
    let found = all(&nest);
    near(found.volume_mm3.unwrap(), 1000.0 - 512.0 + 216.0 - 64.0, 1e-12, "material");
    near(found.fills_mm3.unwrap(), 1000.0, 1e-12, "fills");
    assert_eq!(keys(&found), ["sealed-void"]);
    assert_eq!(found.shells.iter().filter(|s| s.is_void).count(), 2);
    // The same turned as a whole.
    let found = all(&nest.map(|part| turned(&part)));
    near(found.volume_mm3.unwrap(), 1000.0 - 512.0 + 216.0 - 64.0, 1e-12, "material");
    assert_eq!(keys(&found), ["inside-out", "sealed-void"]);
    // One of two separate parts turned.
    let found = all(&[cube(0.0, 10.0), turned(&cube(20.0, 22.0))]);
    near(found.volume_mm3.unwrap(), 1008.0, 1e-12, "both are solid");
    assert_eq!(keys(&found), ["inside-out"]);
}

#[test]
fn the_same_body_twice_counts_once() {
    let found = all(&[cube(0.0, 10.0), cube(0.0, 10.0)]);
    near(found.volume_mm3.unwrap(), 1000.0, 1e-12, "once");
    assert_eq!(keys(&found), ["duplicate-triangles"]);
}

#[test]
fn a_sliver_that_closes_a_seam_stays() {
    // One face of a cube is split at the middle of an edge, the neighbour is not; a triangle without area lies between.
    let mut cube = cube(0.0, 2.0);
    let (a, b, middle) = ([0.0, 0.0, 0.0], [2.0, 0.0, 0.0], [1.0, 0.0, 0.0]);
    let at = cube.iter().position(|t| (0..3).any(|k| t[k] == a && t[(k + 1) % 3] == b)).unwrap();
    let third = *cube[at].iter().find(|c| **c != a && **c != b).unwrap();
    cube.remove(at);
    cube.extend([[a, middle, third], [middle, b, third], [a, b, middle]]);
    let found = all(&[cube]);
    near(found.volume_mm3.unwrap(), 8.0, 1e-12, "closed");
    assert_eq!(keys(&found), ["degenerate-triangles"]);
}

#[test]
fn many_parts_are_settled() {
    // A thousand grains sunk into a plate, and a hundred beside it.
    let grain = ball(0.25, 4, 6);
    let mut parts = vec![block([0.0, 0.0, -1.0], [40.0, 40.0, 0.0])];
    for k in 0..1000 {
        parts.push(moved(&grain, [0.6 + 0.9 * f64::from(k % 40), 0.6 + 1.1 * f64::from(k / 40), 0.1]));
    }
    for k in 0..100 {
        parts.push(moved(&grain, [0.6 + 0.9 * f64::from(k % 40), 0.6 + 1.1 * f64::from(k / 40), 1.1]));
    }
    let found = all(&parts);
    assert_eq!(found.shells.len(), 1101);
    assert!(matches!(found.problems[..], [pourbook::mesh::Problem::OverlappingShells { pairs: 1000, .. }]), "{:?}", found.problems);
}

#[test]
fn triangles_shrunk_to_points_enclose_nothing() {
    let found = all(&[vec![[[1.0; 3]; 3], [[2.0; 3], [2.0; 3], [1.0; 3]]]]);
    assert_eq!((found.volume_mm3, found.fills_mm3, found.plain_sum_mm3, found.watertight), (None, None, None, false));
    assert!(keys(&found).contains(&"degenerate-triangles"));
    // A sheet that stands there from both sides is closed and encloses nothing.
    let sheet = vec![[[0.0; 3], [5.0, 0.0, 0.0], [0.0, 5.0, 1.0]]];
    let found = all(&[sheet.clone(), turned(&sheet)]);
    assert_eq!((found.volume_mm3, keys(&found)), (None, vec!["flat-shells"]));
}
