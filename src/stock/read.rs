//! Reading shelf text: RON with `Some` left out, and errors that say where.

use ron::extensions::Extensions;
use serde::de::DeserializeOwned;

/// The dialect of shelf text: RON in which a value may stand for `Some(value)`.
#[must_use]
pub fn ron_options() -> ron::Options {
    ron::Options::default().with_default_extension(Extensions::IMPLICIT_SOME)
}

/// An entry as text that can be edited and read again; `None` where it cannot be written, which no entry that was read is.
#[must_use]
pub fn entry_text(entry: &super::Entry) -> Option<String> {
    ron_options().to_string_pretty(entry, ron::ser::PrettyConfig::new().struct_names(false).compact_arrays(true)).ok()
}

/// Text that could not be read, with its place.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{file}, line {line}, column {column}: {what}")]
pub struct ReadError {
    /// Name of the file or part.
    pub file: String,
    /// Line, from 1.
    pub line: usize,
    /// Column, from 1.
    pub column: usize,
    /// What is wrong.
    pub what: String,
}

/// Reads `text`, called `file` in errors.
pub(super) fn read<T: DeserializeOwned>(file: &str, text: &str) -> Result<T, ReadError> {
    ron_options().from_str(text).map_err(|error| ReadError {
        file: file.to_owned(),
        line: error.span.end.line,
        column: error.span.end.col,
        what: error.code.to_string(),
    })
}
