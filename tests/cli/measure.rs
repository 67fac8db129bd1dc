//! `measure`.

use std::path::{Path, PathBuf};
use std::process::Command;

use serde_json::Value;

use crate::{run, told};

fn mesh(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/outside/meshes").join(name)
}

fn measured(name: &str) -> (i32, Value) {
    let (code, stdout, _) = told(&run("measure {} --json", &mesh(name)));
    (code, serde_json::from_str(&stdout).expect("JSON"))
}

#[test]
fn a_sound_file_has_all_its_figures() {
    let (code, json) = measured("synthetic/cube_10.stl");
    let cube = &json[0];
    assert_eq!(code, 0);
    assert_eq!((cube["triangles"].as_u64(), cube["shells"].as_u64(), cube["watertight"].as_bool()), (Some(12), Some(1), Some(true)));
    assert!((cube["volume_mm3"].as_f64().expect("a volume") - 1000.0).abs() < 1e-9);
    assert!((cube["area_mm2"].as_f64().expect("an area") - 600.0).abs() < 1e-9);
    assert_eq!(cube["size_mm"].as_array().expect("three sides").len(), 3);
    assert_eq!(cube["problems"].as_array().expect("a list").len(), 0);
    assert!(cube["file"].as_str().expect("a path").ends_with("cube_10.stl") && cube["format"].is_string());
}

#[test]
fn an_open_file_has_no_volume_and_says_why() {
    let (code, json) = measured("synthetic/cube_one_facet_missing_offset.stl");
    assert_eq!(code, 0, "it was read and measured");
    assert!(json[0]["volume_mm3"].is_null());
    assert!(json[0]["problems"][0].as_str().expect("a problem").starts_with("open"));
}

#[test]
fn a_bad_file_among_good_ones_is_said_and_the_good_ones_stand() {
    let files = ["synthetic/cube_10.stl", "format/binary_truncated.stl", "nowhere.stl", "synthetic/sphere_r6.stl"].map(mesh);
    let output = Command::new(env!("CARGO_BIN_EXE_pourbook")).arg("measure").args(&files).arg("--json").output().expect("it starts");
    let (code, stdout, stderr) = told(&output);
    let json: Value = serde_json::from_str(&stdout).expect("JSON");
    assert_eq!(code, 2);
    assert_eq!(json.as_array().expect("a list").len(), 4);
    assert!(json[0]["volume_mm3"].is_number() && json[1]["volume_mm3"].is_null() && json[3]["volume_mm3"].is_number());
    assert!(stderr.contains("binary_truncated.stl") && stderr.contains("nowhere.stl"), "{stderr}");
}

#[test]
fn as_text_it_names_the_file_and_its_faults() {
    let (code, stdout, _) = told(&run("measure {}", &mesh("synthetic/comfort_ring_hollow.stl")));
    assert_eq!(code, 0);
    assert!(stdout.contains("634.2") && stdout.contains("sealed-void"), "{stdout}");
}

#[test]
fn every_format_is_measured_alike() {
    for (name, format) in [("l.obj", "obj"), ("l_ascii.ply", "ply-ascii"), ("l_little.ply", "ply-binary"), ("l_stored.3mf", "3mf")] {
        let (code, json) = measured(&format!("formats/{name}"));
        assert_eq!((code, json[0]["format"].as_str()), (0, Some(format)));
        // An L of 3 × 3 less 2 × 2, 2 high.
        assert!((json[0]["volume_mm3"].as_f64().expect("a volume") - 10.0).abs() < 1e-9, "{name}");
    }
}

#[test]
fn walls_and_heavy_places_are_told_when_asked_for() {
    let (code, stdout, _) = told(&run("measure --walls {}", &mesh("synthetic/flat_band.stl")));
    assert_eq!(code, 0);
    // The wall of closed_form.json; facets take a little of it.
    assert!(stdout.contains("thinnest    1.80 mm at ") && stdout.contains("heavy place 1.80 mm across at "), "{stdout}");
    let (_, stdout, _) = told(&run("measure {}", &mesh("synthetic/flat_band.stl")));
    assert!(!stdout.contains("thinnest"), "{stdout}");
    let (_, stdout, _) = told(&run("measure --walls --json {}", &mesh("synthetic/sphere_r6.stl")));
    let json: Value = serde_json::from_str(&stdout).expect("JSON");
    let number = |value: &Value| value.as_f64().expect("a number");
    assert!((number(&json[0]["walls"]["typical"]["thickness_mm"]) - 12.0).abs() < 0.1);
    let heavy = &json[0]["walls"]["heavy_places"][0];
    assert!((number(&heavy["diameter_mm"]) - 12.0).abs() < 0.1 && (number(&heavy["modulus_mm"]) - 2.0).abs() < 0.06, "{heavy}");
    assert!(json[0]["overlap"].is_null());
}

#[test]
fn solids_through_each_other_have_their_union() {
    let (code, json) = measured("synthetic/overlapping_spheres.stl");
    assert_eq!(code, 0);
    // The union by manifold3d and the exact sum, both from mesh_truth.json.
    let overlap = &json[0]["overlap"];
    assert!((overlap["union_mm3"].as_f64().expect("a union") - 935.007_661_8).abs() < 1e-2, "{overlap}");
    assert!((overlap["added_up_mm3"].as_f64().expect("a sum") - 1_042.998_942_4).abs() < 1e-6, "{overlap}");
    assert!(json[0]["walls"].is_null());
}
