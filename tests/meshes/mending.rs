//! What mending makes of faulty files, against the solids they were made from.

use crate::files::{bytes, json, near};
use crate::shapes::{ball, block, moved, stl, torus, turned};
use pourbook::mesh::{Change, Limits, Mended, Problem, Triangle, as_stl, faulty_edges, measure_bytes, mend, read};
use proptest::prelude::*;

fn mended(triangles: &[Triangle]) -> Option<Mended> {
    mend(&read(&stl(triangles), &Limits::default()).unwrap())
}

fn of_file(name: &str) -> Mended {
    mend(&read(&bytes(&format!("synthetic/{name}")), &Limits::default()).unwrap()).unwrap_or_else(|| panic!("{name}: not mended"))
}

#[test]
fn reference_files_come_to_the_volume_of_their_solid() {
    let closed = json("closed_form.json");
    for (name, wanted) in [
        ("cube_one_facet_missing.stl", 1000.0),
        ("cube_one_facet_missing_offset.stl", 1000.0),
        ("cube_duplicates_degenerates.stl", 1000.0),
        ("mixed_winding_band.stl", closed["mixed_winding_band.stl"]["faceted_volume"].as_f64().unwrap()),
        ("inside_out_band.stl", closed["inside_out_band.stl"]["faceted_volume"].as_f64().unwrap()),
    ] {
        let mended = of_file(name);
        near(mended.measure.volume_mm3.unwrap(), wanted, 1e-6, name);
        assert!(mended.measure.watertight && mended.measure.winding_agrees, "{name}");
        assert!(mended.measure.problems.is_empty(), "{name}: {:?}", mended.measure.problems);
    }
}

#[test]
fn each_change_is_told() {
    let changes = |name| of_file(name).changes;
    assert_eq!(changes("cube_one_facet_missing.stl"), [Change::Closed { holes: 1, triangles: 1, area_mm2: 50.0 }]);
    assert!(matches!(changes("inside_out_band.stl")[..], [Change::InsideOut { triangles: 2304 }]));
    assert!(matches!(changes("mixed_winding_band.stl")[..], [Change::Turned { .. }, ..]));
    assert!(changes("cube_duplicates_degenerates.stl").iter().any(|change| matches!(change, Change::Repeats { triangles: 3 })));
}

#[test]
fn nothing_is_mended_where_nothing_is_wrong_or_nothing_helps() {
    assert!(mended(&block([0.0; 3], [10.0; 3])).is_none());
    // A hollow: its inner wall faces inward, and that is right.
    let hollow = [block([0.0; 3], [10.0; 3]), turned(&block([2.0; 3], [8.0; 3]))].concat();
    assert!(mended(&hollow).is_none());
    // A band with a half twist has no outside.
    assert!(mended(&twisted(24)).is_none());
    // One triangle alone: its rim is filled by its own back, which encloses nothing.
    assert!(mended(&[[[0.0; 3], [10.0, 0.0, 0.0], [0.0, 10.0, 0.0]]]).is_none());
}

/// A band joined to itself after a half turn.
fn twisted(steps: u32) -> Vec<Triangle> {
    let point = |k: u32, side: f64| {
        let (around, half) =
            (std::f64::consts::TAU * f64::from(k) / f64::from(steps), std::f64::consts::PI * f64::from(k) / f64::from(steps));
        let out = 10.0 + side * half.cos();
        [(out * around.cos()) as f32, (out * around.sin()) as f32, (side * half.sin()) as f32]
    };
    (0..steps)
        .flat_map(|k| {
            let last = k + 1 == steps;
            let (a, b) = (point(k, -2.0), point(k, 2.0));
            // The ends meet crosswise, in the very same points.
            let (c, d) = if last { (point(0, 2.0), point(0, -2.0)) } else { (point(k + 1, -2.0), point(k + 1, 2.0)) };
            [[a, b, c], [b, d, c]]
        })
        .collect()
}

#[test]
fn a_hollow_that_is_inside_out_is_turned_with_its_cavity() {
    let hollow = [block([0.0; 3], [10.0; 3]), turned(&block([2.0; 3], [8.0; 3]))].concat();
    let mended = mended(&turned(&hollow)).unwrap();
    assert_eq!(mended.changes, [Change::InsideOut { triangles: 24 }]);
    near(mended.measure.volume_mm3.unwrap(), 1000.0 - 216.0, 1e-12, "material");
    near(mended.measure.fills_mm3.unwrap(), 1000.0, 1e-12, "fills");
}

#[test]
fn what_is_written_reads_back_the_same() {
    let made = torus(10.0, 2.0, 24, 12);
    let soup = read(&as_stl(&made), &Limits::default()).unwrap();
    assert_eq!(soup.triangles(), made);
    let found = measure_bytes(&as_stl(&made), &Limits::default()).unwrap();
    near(found.volume_mm3.unwrap(), measure_bytes(&stl(&made), &Limits::default()).unwrap().volume_mm3.unwrap(), 1e-15, "volume");
}

#[test]
fn the_edges_drawn_are_the_edges_counted() {
    for name in [
        "cube_one_facet_missing.stl",
        "mixed_winding_band.stl",
        "torus_band.stl",
        "cube_duplicates_degenerates.stl",
        "cubes_sharing_edge.stl",
    ] {
        let bytes = bytes(&format!("synthetic/{name}"));
        let found = measure_bytes(&bytes, &Limits::default()).unwrap();
        let edges = faulty_edges(&read(&bytes, &Limits::default()).unwrap());
        let counted = |wanted: &str| {
            let of = |problem: &Problem| match *problem {
                Problem::Open { edges } | Problem::MixedWinding { edges } if problem.key() == wanted => edges as usize,
                _ => 0,
            };
            found.problems.iter().map(of).sum::<usize>()
        };
        assert_eq!((edges.open.len(), edges.mixed.len()), (counted("open"), counted("mixed-winding")), "{name}");
    }
    // The three edges round the facet that is missing, each ten long or its diagonal.
    let edges = faulty_edges(&read(&bytes("synthetic/cube_one_facet_missing.stl"), &Limits::default()).unwrap());
    let mut lengths: Vec<f64> =
        edges.open.iter().map(|[a, b]| (0..3).map(|axis| f64::from(a[axis] - b[axis]).powi(2)).sum::<f64>().sqrt()).collect();
    lengths.sort_by(f64::total_cmp);
    assert_eq!(lengths, [10.0, 10.0, 200.0_f64.sqrt()]);
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 64, failure_persistence: None, ..ProptestConfig::default() })]

    /// Whatever triangles are turned, and wherever a few are missing, the solid comes back: exactly where only turned, nearly where a smooth
    /// surface lost a patch.
    #[test]
    fn turned_and_missing_triangles_come_back(seed in any::<u64>(), missing in 0_usize..6, far in -50.0_f64..50.0) {
        let whole = [ball(6.0, 24, 48), moved(&torus(10.0, 2.0, 40, 20), [30.0, 0.0, 0.0])].concat();
        let whole = moved(&whole, [far, -far, 0.5 * far]);
        let wanted = measure_bytes(&stl(&whole), &Limits::default()).unwrap().volume_mm3.unwrap();
        let mut state = seed | 1;
        let mut random = move || { state ^= state << 13; state ^= state >> 7; state ^= state << 17; state };
        let mut faulty: Vec<Triangle> = whole.iter().map(|[a, b, c]| if random() % 5 == 0 { [*a, *c, *b] } else { [*a, *b, *c] }).collect();
        for _ in 0..missing {
            let at = (random() % faulty.len() as u64) as usize;
            faulty.swap_remove(at);
        }
        let mended = mended(&faulty).expect("it can be mended");
        prop_assert!(mended.measure.watertight && mended.measure.winding_agrees);
        let found = mended.measure.volume_mm3.unwrap();
        let allowed = if missing == 0 { 1e-12 } else { 2e-3 };
        prop_assert!((found / wanted - 1.0).abs() <= allowed, "{} of {}", found, wanted);
    }
}
