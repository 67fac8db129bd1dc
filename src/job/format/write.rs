//! From a document to bytes. The same document always gives the same bytes.

use ron::ser::PrettyConfig;
use serde::Serialize;

use super::{FORMAT, READABLE_SINCE, options};
use crate::job::{Job, Studio};

/// A document that could not be written; it holds something RON cannot say.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("the document could not be put into text: {0}. Nothing was written")]
pub struct WriteError(String);

/// The job as text.
///
/// # Errors
/// See [`WriteError`].
pub fn write_job(job: &Job) -> Result<String, WriteError> {
    write(job)
}

/// The studio as text.
///
/// # Errors
/// See [`WriteError`].
pub fn write_studio(studio: &Studio) -> Result<String, WriteError> {
    write(studio)
}

/// Any part of a document as one line, for hashing and for comparing.
///
/// # Errors
/// See [`WriteError`].
pub fn write_entry<T: Serialize>(part: &T) -> Result<String, WriteError> {
    options().to_string(part).map_err(|error| WriteError(error.to_string()))
}

fn write<T: Serialize>(document: &T) -> Result<String, WriteError> {
    let config = PrettyConfig::new().new_line("\n").indentor("  ").struct_names(false).separate_tuple_members(false);
    let body = options().to_string_pretty(document, config).map_err(|error| WriteError(error.to_string()))?;
    // The header takes the place of the opening bracket, so that it stands on the first line.
    let rest = body.strip_prefix('(').unwrap_or(&body);
    let rest = rest.strip_prefix('\n').unwrap_or(rest);
    Ok(format!("(format: {FORMAT}, readable_since: {READABLE_SINCE},\n{rest}\n"))
}
