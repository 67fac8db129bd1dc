//! Why a pattern file could not be read.

use super::source::Stop;
use thiserror::Error;

/// Why a file gave no triangles. Triangles and lines are counted from 1.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
pub enum ReadError {
    /// The file could not be opened or read.
    #[error("The file could not be read: {reason}. Nothing was changed.")]
    CannotRead {
        /// What the system said.
        reason: String,
    },
    /// The file is longer than the limit.
    #[error("The file has {bytes} bytes; at most {most} are read. Make the model coarser or split it.")]
    TooLarge {
        /// Length of the file in bytes.
        bytes: u64,
        /// The limit in bytes.
        most: u64,
    },
    /// The file has more triangles than the limit.
    #[error("The file has more than {most} triangles. Make the model coarser or split it.")]
    TooManyTriangles {
        /// The limit.
        most: u32,
    },
    /// The file has no bytes.
    #[error("The file is empty. Export the model again.")]
    Empty,
    /// The file is no format this program reads.
    #[error("This is not an STL file. Export the model as STL.")]
    NotAMesh,
    /// The file is whole and holds no triangle.
    #[error("The file holds no triangles. Export the model again.")]
    NoGeometry,
    /// A binary file ends before its last triangle.
    #[error("The file is cut short: it announces {said} triangles and ends after {whole}. Export or copy it again.")]
    BinaryCutShort {
        /// Triangles the header announces.
        said: u32,
        /// Whole triangles that are there.
        whole: u64,
    },
    /// A binary file goes on after the triangles it announces.
    #[error("The file announces {said} triangles and {bytes} more bytes follow them. It may hold more than it says: export it again.")]
    TrailingBytes {
        /// Triangles the header announces.
        said: u32,
        /// Bytes after the last announced triangle.
        bytes: u64,
    },
    /// A text file ends in the middle.
    #[error("The text ends too early, on line {line} (after {whole} whole triangles). Export or copy it again.")]
    TextCutShort {
        /// Line where the text ends.
        line: u64,
        /// Whole triangles before it.
        whole: u32,
    },
    /// A word of a text file is not the one that must stand there.
    #[error("Line {line}: \"{found}\" stands where \"{wanted}\" was expected.")]
    UnexpectedWord {
        /// Line of the word.
        line: u64,
        /// What stands there, shortened.
        found: String,
        /// What belongs there.
        wanted: &'static str,
    },
    /// A coordinate is no number, or infinite, or too large for the format.
    #[error("Triangle {triangle} has a corner that is no finite number. Export the model again.")]
    NotFinite {
        /// The triangle.
        triangle: u32,
    },
}

impl From<Stop> for ReadError {
    fn from(stop: Stop) -> Self {
        match stop {
            Stop::NotFinite(at) => Self::NotFinite { triangle: at as u32 + 1 },
            Stop::CannotRead(error) => error.into(),
        }
    }
}

impl From<std::io::Error> for ReadError {
    fn from(error: std::io::Error) -> Self {
        use std::io::ErrorKind as Kind;
        let reason = match error.kind() {
            Kind::NotFound => "it is not there",
            Kind::PermissionDenied => "you do not have permission",
            Kind::IsADirectory => "it is a folder",
            Kind::TimedOut => "the disk did not answer in time",
            Kind::Interrupted => "it was interrupted",
            // An error of our own says its own words.
            _ if error.raw_os_error().is_none() => return Self::CannotRead { reason: error.to_string() },
            _ => "the disk or the system failed",
        };
        Self::CannotRead { reason: reason.to_owned() }
    }
}
