//! Any bytes as a PLY.
#![no_main]

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| pourbook_fuzz::ply::check(bytes));
