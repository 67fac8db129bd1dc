//! Any bytes as a kiln's log.
#![no_main]

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| pourbook_fuzz::log::check(bytes));
