//! Reading the log of a burnout kiln, whatever logger or controller wrote it.
//!
//! Start at [`read`]: bytes of a table in text become a [`KilnLog`] of minutes and °C, with [`Remark`]s about everything that had to be decided
//! or left out, or a [`LogError`] that names the line. What cannot be seen from the file can be said in [`Options`]. [`thin`] makes a long
//! curve light, and [`find_drops`] finds where it falls.
//!
//! The way of the bytes: `text` makes characters of them, `records` lines, `layout` finds the table in the lines, `header` its names, `choose`
//! the columns, `marks` how their numbers and dates are written; `rows` reads them, `timeline` puts them in order, `clean` and `jumps` take
//! out what no kiln does.

mod behind;
mod choose;
mod class;
mod clean;
mod column;
mod cut;
mod daylight;
mod drops;
mod gaps;
mod header;
mod jumps;
mod kelvin;
mod layout;
mod log_error;
mod marks;
mod meaning;
mod options;
mod read;
mod records;
mod remark;
mod rows;
mod scale;
mod text;
mod thin;
mod timeline;

pub use crate::table::Decimal;
pub use crate::table::Lines;
pub use clean::POSSIBLE_C;
pub use column::{Column, Taken};
pub use cut::Separator;
pub use drops::{TemperatureDrop, find_drops};
pub use log_error::LogError;
pub use options::{Limits, Options, TimeUnit, Unit};
pub use read::{KilnLog, read};
pub use remark::{DayOrderBy, Remark};
pub use thin::thin;
