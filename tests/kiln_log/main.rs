//! Logs of kilns: every way of writing one that is understood, read back; and what is told about it.
#![allow(missing_docs, clippy::unwrap_used, reason = "a test may stop where it stands")]
#![allow(clippy::print_stdout, reason = "times are printed for who asks")]

mod curves;
mod faults;
mod fuzz_body;
mod malformed;
mod random;
mod support;
mod tables;
mod times;
