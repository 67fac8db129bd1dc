//! Any bytes as an OBJ.
#![no_main]

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| pourbook_fuzz::obj::check(bytes));
