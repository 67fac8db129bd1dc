//! Any bytes as a job and as a studio.
#![no_main]

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| pourbook_fuzz::document::check(bytes));
