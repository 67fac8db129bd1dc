//! The texts, the bench sheet and the quotes.
#![allow(clippy::unwrap_used)]

mod texts;
