//! Any text as an entry of any kind.
#![no_main]

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| pourbook_fuzz::entry::check(bytes));
