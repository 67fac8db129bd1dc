//! The sample studio: its files load, compute, save to the byte, and raise just the findings they are meant to.

#![allow(clippy::unwrap_used, reason = "a test that cannot go on fails at that place")]

mod documents;
mod findings;
mod first_pour;
mod patterns;
mod support;
mod trees;

#[allow(dead_code, reason = "the tool's own way in is not used here")]
#[path = "../tools/make_patterns.rs"]
mod make_patterns;
