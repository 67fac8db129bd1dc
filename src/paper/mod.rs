//! The sheets that lie on the bench and the quotes a client signs.
pub mod words;
