//! The pattern files: made again to the byte, small, and measured as their exact sums say.

use pourbook::mesh::{Limits, measure_bytes};

use crate::make_patterns::{all, differing, stl};

/// Cubed lattice steps to mm³, with the sixth of the tetrahedra.
const STEPS_6: f64 = 6.0 * 1024.0 * 1024.0 * 1024.0;

#[test]
fn the_files_are_what_the_generator_makes() {
    assert_eq!(differing(), Ok(Vec::new()), "run the tool make_patterns");
}

#[test]
fn the_files_are_small() {
    let sizes: Vec<usize> = all().iter().map(|drawn| stl(drawn).len()).collect();
    assert!(sizes.iter().all(|size| *size < 300_000), "{sizes:?}");
    assert!(sizes.iter().sum::<usize>() < 1_500_000, "{sizes:?}");
}

#[test]
fn shells_sum_to_what_the_mesh_layer_measures() {
    for drawn in all() {
        let measure = measure_bytes(&stl(&drawn), &Limits::default()).unwrap_or_else(|error| panic!("{}: {error}", drawn.name));
        // Whole numbers of the lattice: no rounding on this side.
        let exact = drawn.shells.iter().map(|shell| shell.volume_6()).sum::<i128>() as f64 / STEPS_6;
        let problems: Vec<&str> = measure.problems.iter().map(|problem| problem.key()).collect();
        let (meant, closed): (&[&str], bool) = match drawn.name {
            "hip-drop.stl" => (&["overlapping-shells"], true),
            "thorn-inches.stl" => (&["absurd-size"], true),
            "torn-leaf.stl" => (&["open"], false),
            "urchin-bead.stl" => (&["sealed-void"], true),
            _ => (&[], true),
        };
        assert_eq!(problems, meant, "{}", drawn.name);
        assert_eq!(measure.plain_sum_mm3.is_some(), closed, "{}", drawn.name);
        if let Some(sum) = measure.plain_sum_mm3 {
            assert!((sum - exact).abs() <= 1e-9 * exact, "{}: {sum}, exact {exact}", drawn.name);
        }
    }
}

#[test]
fn the_hollow_bead_pours_solid() {
    let bead = all().into_iter().find(|drawn| drawn.name == "urchin-bead.stl").expect("it is drawn");
    let measure = measure_bytes(&stl(&bead), &Limits::default()).expect("it is read");
    let outside = bead.shells[0].volume_6() as f64 / STEPS_6;
    let hollow = -bead.shells[1].volume_6() as f64 / STEPS_6;
    assert!(hollow > 200.0, "{hollow}");
    let fills = measure.fills_mm3.expect("it is closed");
    assert!((fills - outside).abs() <= 1e-9 * outside, "{fills}, {outside}");
    let material = measure.volume_mm3.expect("it is closed");
    assert!((material - (outside - hollow)).abs() <= 1e-9 * outside, "{material}");
}
