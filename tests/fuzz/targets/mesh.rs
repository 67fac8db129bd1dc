//! Any bytes as a pattern file.
#![no_main]

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| pourbook_fuzz::mesh::check(bytes));
