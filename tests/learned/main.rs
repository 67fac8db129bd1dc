//! Learning from the record, held against references, against brute force and against invented studios whose truth is known.
#![allow(clippy::cast_precision_loss, clippy::cast_possible_truncation, clippy::cast_sign_loss, clippy::float_cmp)]
#![allow(missing_docs, clippy::unwrap_used, clippy::print_stdout, reason = "a test may stop where it stands, and prints its table")]

mod chance;
mod coverage;
mod folder;
mod lots;
mod predictions;
mod record;
mod reference;
mod slopes;
mod speed;
mod studio;
mod years;
