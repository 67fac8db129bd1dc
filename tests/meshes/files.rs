//! The fixtures.

use pourbook::mesh::{Limits, Measure, measure_file};
use serde_json::Value;
use std::path::PathBuf;

pub fn folder() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("tests/outside/meshes")
}

pub fn json(name: &str) -> Value {
    serde_json::from_slice(&std::fs::read(folder().join(name)).unwrap()).unwrap()
}

pub fn bytes(name: &str) -> Vec<u8> {
    std::fs::read(folder().join(name)).unwrap()
}

pub fn measured(name: &str) -> Measure {
    measure_file(&folder().join(name), &Limits::default()).unwrap()
}

pub fn keys(measure: &Measure) -> Vec<&'static str> {
    measure.problems.iter().map(|p| p.key()).collect()
}

#[track_caller]
pub fn near(found: f64, wanted: f64, relative: f64, what: &str) {
    assert!((found - wanted).abs() <= relative * wanted.abs(), "{what}: {found} is not {wanted} within {relative}");
}
