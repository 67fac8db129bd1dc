//! Reading pattern files within limits, and measuring them.
//!
//! Start at [`measure_file`]. [`read`] turns bytes into a [`Soup`] of triangles or says why it cannot; [`measure()`] welds the soup, matches its
//! edges, parts it into shells, finds out which lie inside or through which, and gives a [`Measure`] with the [`Problem`]s a person must know.
//! [`look`] shows it. Lengths are in mm, areas in mm², volumes in mm³; the file's numbers are taken as mm.

mod bins;
mod contact;
mod edges;
mod front;
mod inside;
mod limits;
pub mod look;
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
mod soup;
mod source;
mod stl_ascii;
mod stl_binary;
mod sums;
mod survey;
mod tree;
mod union_find;
mod watch;
mod weld;

pub use front::{measure_bytes, measure_file, read_file};
pub use limits::{Format, Limits};
pub use measure::{Measure, measure};
pub use problem::{FileUnit, Problem};
pub use read_error::ReadError;
pub use shade::{Shade, shade};
pub use shells::Shell;
pub use soup::{Soup, Triangle, read};
pub use watch::{Unwatched, Watch};
