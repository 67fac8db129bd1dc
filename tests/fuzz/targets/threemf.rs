//! Any bytes as a 3MF package or the XML of one.
#![no_main]

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| pourbook_fuzz::threemf::check(bytes));
