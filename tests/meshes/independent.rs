//! Files written by `tests/tools/pattern_files.py`, which knows the formats by itself and works out what they must measure.

use crate::files::{folder, json, near};
use pourbook::mesh::{Format, Limits, measure_file, read_file};

#[test]
fn files_of_another_writer_measure_what_it_says() {
    let expected = json("formats/expected.json");
    let expected = expected.as_object().unwrap();
    assert!(expected.len() >= 8);
    for (name, figures) in expected {
        let path = folder().join("formats").join(name);
        let found = measure_file(&path, &Limits::default()).unwrap_or_else(|error| panic!("{name}: {error}"));
        assert_eq!(u64::from(found.triangles), figures["triangles"].as_u64().unwrap(), "{name}");
        assert!(found.watertight, "{name}: {:?}", found.problems);
        // Corners are rounded to 32 bits.
        near(found.volume_mm3.unwrap(), figures["volume_mm3"].as_f64().unwrap(), 1e-6, name);
        for axis in 0..3 {
            let bounds = [(found.low_mm[axis], &figures["low_mm"][axis]), (found.high_mm[axis], &figures["high_mm"][axis])];
            for (side, wanted) in bounds {
                let wanted = wanted.as_f64().unwrap();
                assert!((side - wanted).abs() <= 1e-6 * wanted.abs().max(1.0), "{name}: {side} is not {wanted}");
            }
        }
    }
}

#[test]
fn the_l_has_the_volume_and_area_worked_by_hand() {
    for (name, format) in
        [("l.obj", Format::Obj), ("l_ascii.ply", Format::PlyAscii), ("l_big.ply", Format::PlyBinary), ("l_stored.3mf", Format::ThreeMf)]
    {
        let path = folder().join("formats").join(name);
        assert_eq!(read_file(&path, &Limits::default()).unwrap().format(), format);
        let found = measure_file(&path, &Limits::default()).unwrap();
        assert!(found.problems.is_empty(), "{name}: {:?}", found.problems);
        // (9 − 4) · 2, and 2 · 5 + 12 · 2.
        near(found.volume_mm3.unwrap(), 10.0, 1e-12, name);
        near(found.area_mm2, 34.0, 1e-12, name);
    }
}
