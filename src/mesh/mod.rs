//! Reading pattern files within limits, and measuring them.
//!
//! Start at [`measure_file`]. [`read`] turns bytes into a [`Soup`] of triangles or says why it cannot; [`measure()`] welds the soup, matches its
//! edges, parts it into shells, finds out which lie inside or through which, and gives a [`Measure`] with the [`Problem`]s a person must know.
//! [`look`] shows it. Lengths are in mm, areas in mm², volumes in mm³; the numbers of a file that names no unit are taken as mm.

mod bins;
mod contact;
mod edges;
mod faces;
mod faulty_edges;
mod front;
mod gather;
mod heaviest;
mod inside;
mod limits;
pub mod look;
mod matrix;
mod measure;
mod mend;
mod nesting;
mod obj;
mod patch;
mod ply;
mod polygon;
mod problem;
mod radial;
mod read_error;
mod regions;
mod repair;
mod rough;
mod shade;
mod shells;
mod slices;
mod soup;
mod source;
mod space;
mod stl_ascii;
mod stl_binary;
mod stl_write;
mod sums;
mod survey;
mod thickness;
mod threemf;
mod tree;
mod twin;
mod union_find;
mod united;
mod watch;
mod weld;
mod words;

pub use faulty_edges::{FaultyEdges, Segment, faulty_edges};
pub use front::{measure_bytes, measure_file, read_file};
pub use heaviest::{Foot, Heavy, clear_of, heaviest};
pub use limits::{Format, Limits};
pub use measure::{Measure, measure};
pub use mend::{Change, Mended, mend};
pub use problem::{FileUnit, Problem};
pub use read_error::{Place, ReadError};
pub use rough::{Rough, rough};
pub use shade::{Shade, shade};
pub use shells::Shell;
pub use soup::{Soup, Triangle, read};
pub use stl_write::as_stl;
pub use sums::{PlainSums, plain_sums};
pub use thickness::{Bin, Under, Wall, Walls, thickness};
pub use threemf::read_model_part;
pub use twin::{Likeness, Twin, twin};
pub use united::Union;
pub use watch::{Unwatched, Watch};
