//! Any bytes as shelf entries and as a studio's overlay.
#![no_main]

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| pourbook_fuzz::stock::check(bytes));
