//! What must hold for whatever bytes Pourbook is given. Each module is one target of `run.sh`; a check that fails panics, which the fuzzer
//! takes for a crash and keeps the bytes of.

pub mod document;
pub mod entry;
pub mod log;
pub mod mesh;
pub mod obj;
pub mod ply;
pub mod stock;
pub mod threemf;

/// Panics where `holds` in a build with planted bugs. The fuzzer that does not get here within seconds explores nothing.
fn planted(holds: bool) {
    assert!(!(cfg!(feature = "planted") && holds), "planted bug found");
}
