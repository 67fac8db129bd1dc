//! From bytes to a document.

use serde::de::DeserializeOwned;

use super::header::header;
use super::{FORMAT, options, skip};
use crate::job::{Job, Studio};

/// Why a document could not be read; the sentence names line and column where there are any. The caller adds the file.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum ReadError {
    /// Not UTF-8.
    #[error("line {line}: this is not text Pourbook can read (it is not UTF-8); nothing was changed")]
    NotText {
        /// Line of the first bad byte, from 1.
        line: usize,
    },
    /// Empty file.
    #[error("the file is empty; look for a recovered copy or a copy you kept elsewhere")]
    Empty,
    /// No header.
    #[error("line 1: a Pourbook file begins with “(format: {FORMAT}, readable_since: …,”; this one does not")]
    NoHeader,
    /// Too new.
    #[error(
        "this file was written in format {file}, and needs a program that reads format {needs} or later; this one reads up to {FORMAT}. Nothing was changed"
    )]
    TooNew {
        /// The file's format.
        file: u32,
        /// The oldest format that can read it.
        needs: u32,
    },
    /// Older than any this program knows.
    #[error("this file says format {file}, which never existed; formats start at 1")]
    Unknown {
        /// The file's format.
        file: u32,
    },
    /// RON that does not parse or does not fit.
    #[error("line {line}, column {column}: {says}")]
    Syntax {
        /// From 1.
        line: usize,
        /// From 1.
        column: usize,
        /// What is wrong, in words.
        says: String,
    },
}

/// A document that was read.
#[derive(Debug, Clone, PartialEq)]
pub struct Opened<T> {
    /// The document.
    pub document: T,
    /// The format it was written in.
    pub format: u32,
    /// Written by a newer program: what this one does not know was passed over, so it must not be saved over.
    pub read_only: bool,
}

/// Reads a job.
///
/// # Errors
/// See [`ReadError`].
pub fn read_job(bytes: &[u8]) -> Result<Opened<Job>, ReadError> {
    read(bytes)
}

/// Reads a studio.
///
/// # Errors
/// See [`ReadError`].
pub fn read_studio(bytes: &[u8]) -> Result<Opened<Studio>, ReadError> {
    read(bytes)
}

fn read<T: DeserializeOwned>(bytes: &[u8]) -> Result<Opened<T>, ReadError> {
    let text = std::str::from_utf8(bytes).map_err(|error| {
        let line = 1 + bytes[..error.valid_up_to()].iter().filter(|byte| **byte == b'\n').count();
        ReadError::NotText { line }
    })?;
    if text.trim().is_empty() {
        return Err(ReadError::Empty);
    }
    let header = header(text).ok_or(ReadError::NoHeader)?;
    if header.format == 0 || header.readable_since == 0 {
        return Err(ReadError::Unknown { file: header.format });
    }
    if header.readable_since > FORMAT {
        return Err(ReadError::TooNew { file: header.format, needs: header.readable_since });
    }
    // The header is blanked, not cut, so that line and column of every message stay true.
    let mut text = text.to_owned();
    blank(&mut text, header.span.0, header.span.1);
    if let Some(rest) = text.strip_prefix('\u{feff}') {
        text = rest.to_owned();
    }
    let read_only = header.format > FORMAT;
    let document = if read_only { read_tolerant(text)? } else { options().from_str(&text).map_err(|error| syntax(&error, &text))? };
    Ok(Opened { document, format: header.format, read_only })
}

/// Reads a file of a newer format: fields this program does not know are passed over, one after another.
fn read_tolerant<T: DeserializeOwned>(mut text: String) -> Result<T, ReadError> {
    const MOST_UNKNOWN: usize = 10_000;
    // Fields are cut out of one copy, so that no later attempt reads over them again, and blanked in the other, whose lines and columns
    // stay true. They are found in the order of the text: all that was cut stands before the next one.
    let (mut short, mut cut) = (text.clone(), 0);
    for _ in 0..MOST_UNKNOWN {
        let error = match options().from_str(&short) {
            Ok(document) => return Ok(document),
            Err(error) => error,
        };
        let unknown = match &error.code {
            ron::Error::NoSuchStructField { found, .. } => {
                skip::field_before(&short, offset(&short, error.span.end.line, error.span.end.col), found)
            }
            _ => None,
        };
        let Some((start, end)) = unknown else {
            return options().from_str(&text).map_err(|error| syntax(&error, &text));
        };
        cut += blank(&mut text, start + cut, end + cut);
        short.replace_range(start..end, "");
    }
    Err(ReadError::Syntax { line: 1, column: 1, says: "this newer file holds too much that is unknown here".to_owned() })
}

/// Overwrites a part of the text with spaces, one a character, keeping its line ends. Gives the bytes that now stand there: fewer than before
/// where a character took several.
fn blank(text: &mut String, start: usize, end: usize) -> usize {
    let spaces: String = text[start..end].chars().map(|c| if c == '\n' { '\n' } else { ' ' }).collect();
    text.replace_range(start..end, &spaces);
    spaces.len()
}

/// Byte offset of a line and column, both from 1, the column in characters.
fn offset(text: &str, line: usize, column: usize) -> usize {
    let start: usize = text.split_inclusive('\n').take(line.saturating_sub(1)).map(str::len).sum();
    start + text[start..].chars().take(column.saturating_sub(1)).map(char::len_utf8).sum::<usize>()
}

fn syntax(error: &ron::error::SpannedError, text: &str) -> ReadError {
    let (line, column) = (error.span.start.line, error.span.start.col);
    // Whatever is expected where nothing follows any more, the file ends too early.
    let at_end = offset(text, error.span.end.line, error.span.end.col) >= text.trim_end().len()
        && !matches!(error.code, ron::Error::Message(_) | ron::Error::TrailingCharacters);
    let says = if at_end { plain(&ron::Error::Eof) } else { plain(&error.code) };
    ReadError::Syntax { line, column, says }
}

/// The reader's own words for what happens often, in plain language.
fn plain(code: &ron::Error) -> String {
    use ron::Error as E;
    match code {
        E::Eof => "the text ends too early; the file seems cut off".to_owned(),
        E::ExceededRecursionLimit => "this is nested deeper than any Pourbook document; it was not read further".to_owned(),
        E::NoSuchStructField { found, expected, .. } => {
            format!("“{found}” is not a field that stands here; the fields are {}", expected.join(", "))
        }
        E::NoSuchEnumVariant { found, expected, .. } => {
            format!("“{found}” is not a word that stands here; it may be {}", expected.join(", "))
        }
        E::DuplicateStructField { field, .. } => format!("“{field}” is said twice"),
        E::ExpectedFloat | E::ExpectedInteger => "a number is expected here".to_owned(),
        E::ExpectedString => "a text in quotes is expected here".to_owned(),
        E::ExpectedStringEnd => "the text in quotes that begins here has no end; a quote is missing, or the file was cut off".to_owned(),
        E::ExpectedArray => "a list in [ ] is expected here".to_owned(),
        E::ExpectedArrayEnd => "this list is not closed; a “,” or a “]” is expected here".to_owned(),
        E::ExpectedMap => "a list of pairs in { } is expected here".to_owned(),
        E::ExpectedMapColon => "a “:” is expected here".to_owned(),
        E::ExpectedMapEnd => "this list of pairs is not closed; a “,” or a “}” is expected here".to_owned(),
        E::ExpectedStructLike | E::ExpectedNamedStructLike(_) => "a “(” is expected here".to_owned(),
        E::ExpectedStructLikeEnd | E::ExpectedOptionEnd => "a bracket is not closed; a “,” or a “)” is expected here".to_owned(),
        E::ExpectedComma => "a “,” is expected here".to_owned(),
        E::ExpectedIdentifier | E::InvalidIdentifier(_) => "the name of a field is expected here".to_owned(),
        E::ExpectedOption => "Some(…) or None is expected here".to_owned(),
        E::MissingStructField { field, .. } => format!("“{field}” is missing here"),
        E::UnclosedBlockComment => "a comment that begins with /* has no end".to_owned(),
        E::InvalidEscape(_) => "a “\\” in this text is followed by what it cannot stand before".to_owned(),
        E::IntegerOutOfBounds => "this number is too large or too small to stand here".to_owned(),
        E::InvalidIntegerDigit { digit, .. } => format!("“{digit}” cannot stand in this number"),
        E::UnexpectedChar(found) => format!("“{found}” cannot stand here"),
        E::ExpectedBoolean => "true or false is expected here".to_owned(),
        E::TrailingCharacters => "something stands behind the end of the document".to_owned(),
        // The calendar's own words are for programmers.
        E::Message(says) if ["parsed ", "failed to parse"].iter().any(|start| says.starts_with(start)) => {
            "this is no day or time of the calendar; write a day as 2026-12-01 and a time as 2026-12-01T14:30:00".to_owned()
        }
        E::Message(says) => says.clone(),
        E::InvalidValueForType { expected, found } => format!("{expected} is expected here, but {found} stands here"),
        other => other.to_string(),
    }
}
