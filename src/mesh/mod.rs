//! Reading pattern files within limits, and measuring them.
//!
//! Start at [`measure_file`]. [`read`] turns bytes into a [`Soup`] of triangles or says why it cannot; [`measure()`] welds the soup, matches its
//! edges, parts it into shells, finds out which lie inside or through which, and gives a [`Measure`] with the [`Problem`]s a person must know.
//! Lengths are in mm, areas in mm², volumes in mm³; the file's numbers are taken as mm.

mod bins;
mod contact;
mod edges;
mod faces;
mod front;
mod heaviest;
mod inside;
mod limits;
mod matrix;
mod measure;
mod nesting;
mod patch;
mod problem;
mod radial;
mod read_error;
mod regions;
mod repair;
mod shade;
mod shells;
mod slices;
mod soup;
mod source;
mod space;
mod stl_ascii;
mod stl_binary;
mod sums;
mod survey;
mod thickness;
mod tree;
mod twin;
mod union_find;
mod united;
mod watch;
mod weld;

pub use front::{measure_bytes, measure_file, read_file};
pub use heaviest::{Foot, Heavy, clear_of, heaviest};
pub use limits::{Format, Limits};
pub use measure::{Measure, measure};
pub use problem::{FileUnit, Problem};
pub use read_error::ReadError;
pub use shade::{Shade, shade};
pub use shells::Shell;
pub use soup::{Soup, Triangle, read};
pub use thickness::{Bin, Under, Wall, Walls, thickness};
pub use twin::{Likeness, Twin, twin};
pub use united::Union;
pub use watch::{Unwatched, Watch};
