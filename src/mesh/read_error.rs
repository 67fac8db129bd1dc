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
    #[error("This is no pattern file that can be read. Export the model as STL, OBJ, PLY or 3MF.")]
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
    /// The file has more corners than its triangles could need.
    #[error("The file has more than {most} corners. Make the model coarser or split it.")]
    TooManyCorners {
        /// The limit.
        most: u64,
    },
    /// A line ends before all that belongs on it.
    #[error("Line {line} ends where {wanted} was expected.")]
    LineEnds {
        /// The line.
        line: u64,
        /// What belongs there.
        wanted: &'static str,
    },
    /// A face names a corner that is not in the file.
    #[error("{place}, corner {said} is asked for; the file has {there}. Export the model again.")]
    NoSuchCorner {
        /// The face.
        place: Place,
        /// The number the face gives, as it counts.
        said: i64,
        /// How many corners there are for it.
        there: u64,
    },
    /// A face has fewer than three corners.
    #[error("{place}, a face has {corners} corners; three are needed. Export the model again.")]
    TooFewCorners {
        /// The face.
        place: Place,
        /// Its corners.
        corners: u64,
    },
    /// The faces have so many corners and bend inward so often that cutting them into triangles would take too long.
    #[error("{place}, a face with {corners} corners is too intricate. Export the model as triangles.")]
    IntricateFace {
        /// The face where patience ended.
        place: Place,
        /// Its corners.
        corners: u64,
    },
    /// What stands on a line is understood and not taken.
    #[error("Line {line}: {reason}.")]
    Refused {
        /// The line.
        line: u64,
        /// Why, as the rest of a sentence.
        reason: &'static str,
    },
    /// A header announces more than the bytes after it can hold.
    #[error("The file is cut short: it announces {said} of \"{what}\", which its last {bytes} bytes cannot hold. Export or copy it again.")]
    AnnouncesTooMuch {
        /// The table, as the file names it, shortened.
        what: String,
        /// Its announced length.
        said: u64,
        /// Bytes that are left for it.
        bytes: u64,
    },
    /// A table ends before its last entry.
    #[error("The file is cut short: it announces {said} of \"{what}\" and ends after {whole}. Export or copy it again.")]
    TableCutShort {
        /// The table, as the file names it, shortened.
        what: String,
        /// Its announced length.
        said: u64,
        /// Whole entries that are there.
        whole: u64,
    },
    /// A list has a length below nothing.
    #[error("Entry {entry} of \"{what}\" has a list of negative length. Export the model again.")]
    NegativeLength {
        /// The table, as the file names it, shortened.
        what: String,
        /// The entry.
        entry: u64,
    },
    /// The file goes on where its header lets it end.
    #[error("{bytes} bytes follow where the file should end. It may hold more than it says: export it again.")]
    BytesLeft {
        /// How many.
        bytes: u64,
    },
    /// A package cannot be opened or followed.
    #[error("The 3MF package cannot be read: {reason}. Export or copy it again.")]
    Package {
        /// Why, as the rest of a sentence.
        reason: String,
    },
    /// A package is larger than the limit once unpacked.
    #[error("The 3MF package has more than {most} bytes once unpacked. Make the model coarser or split it.")]
    TooLargeUnpacked {
        /// The limit in bytes.
        most: u64,
    },
    /// The text of a model in a package cannot be read.
    #[error("The model in the 3MF package cannot be read: line {line}, {reason}. Export it again.")]
    Model {
        /// The line, at or shortly after the fault.
        line: u64,
        /// Why, as the rest of a sentence.
        reason: String,
    },
    /// The model is put together in a way that is not followed.
    #[error("The model in the 3MF package cannot be put together: {reason}. Export it as one object.")]
    Assembly {
        /// Why, as the rest of a sentence.
        reason: String,
    },
}

/// Where in a file a face stands. Everything is counted from 1.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Place {
    /// On a line of a text.
    Line(u64),
    /// In a table of faces.
    Face(u64),
    /// In the mesh of an object.
    Object {
        /// The object's number in the file.
        id: u32,
        /// The triangle in it.
        triangle: u64,
    },
}

impl std::fmt::Display for Place {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::Line(line) => write!(f, "On line {line}"),
            Self::Face(face) => write!(f, "In face {face}"),
            Self::Object { id, triangle } => write!(f, "In triangle {triangle} of object {id}"),
        }
    }
}

/// The beginning of what a file says, for a sentence: a hostile file may say very much.
pub(super) fn shortened(said: &[u8]) -> String {
    String::from_utf8_lossy(said.get(..24).unwrap_or(said)).into_owned()
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
