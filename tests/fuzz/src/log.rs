//! A kiln's log.

use jiff::tz::TimeZone;
use pourbook::kiln_log::{Options, find_drops, read};

#[path = "../../kiln_log/fuzz_body.rs"]
mod body;

/// Bytes as a log, read as it is read where nothing is said of it, and by options the first byte picks.
///
/// # Panics
/// As [`body::fuzz_one`].
pub fn check(bytes: &[u8]) {
    body::fuzz_one(bytes);
    if let Ok(log) = read(bytes, &Options { zone: Some(TimeZone::UTC), ..Options::default() })
        && log.points.len() > 2
    {
        crate::planted(!find_drops(&log.points).is_empty());
    }
}
