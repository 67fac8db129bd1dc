//! The timetable of a casting night, backwards from the pour: kiln, dewax, setting, investing, trees, washing, printing.
//!
//! Steps follow each other in a fixed order and the pour stands fast. Every moment is minutes since the Unix epoch and every length is time
//! that really passes; working hours are what the clock on the wall shows, so a night when clocks change is as long as it really is.
//!
//! **Which plan is chosen.** Of all plans in which no step begins before now, no wait is shorter than its least and no strict gap is
//! broken:
//!
//! 1. the one with the fewest steps and waits that use what is taken by something else; of these
//! 2. the one with the fewest steps outside working hours; of these
//! 3. the one with the fewest waits that are longer than allowed; so a plan without any problem wins wherever there is one; of these
//! 4. the one whose last step begins latest, then whose last but one begins latest, and so on to the first: wet things should not stand.
//!
//! That is one plan, and it is found exactly, not tried for: from the first step to the last, the least that must be wrong with a step and
//! all before it is carried along over all its starts (`tolls`, `reach`), and the plan is read off backwards (`plan`). Where there is no
//! such plan, since the pour is too near, the same rule is applied as if there were time before now, and the steps that should have begun
//! already say by how much. The search reaches [`SEARCH_DAYS`] further back than the steps are long.
//!
//! **Pins.** A step pinned by a wish stays where it was put; what stands before it is planned backwards from it by the same rule, what
//! comes after it stays as it was planned from the pour, and what does not fit is told. A step that is done is a fact: what comes after
//! reckons with it as far as there is time, and neither it nor what stands before it is found fault with; only the wait that is not over
//! yet.
//!
//! What begins by itself at once after a step that is done is done too, as soon as it has begun.
//!
//! Moments are rounded to 2⁻²⁰ min (57 µs), so that all of them add up exactly.

mod bands;
mod check;
mod clock;
mod error;
mod hours;
mod own;
mod plan;
mod pours;
mod problem;
mod reach;
mod snap;
mod span;
mod step;
mod table;
mod ticks;
mod tolls;

pub use bands::{Band, BandKind, bands, free_spans};
pub use error::TimetableError;
pub use hours::{Hours, Span, Taken, WorkSpan};
pub use plan::plan;
pub use pours::{earliest_pour, pours_at};
pub use snap::{GRID_MIN, nearest_allowed, next_allowed, previous_allowed};
pub use step::{Gap, Hands, Pin, PinKind, Resource, Step, StepKey};
pub use table::{Problem, Row, Timetable};

use jiff::tz::TimeZone;

/// How far the search for a free time reaches, beyond the length of the steps themselves, in days of 24 h.
pub const SEARCH_DAYS: u32 = 60;

/// What a timetable is asked from.
#[derive(Debug, Clone, Copy)]
pub struct Ask<'a> {
    /// The steps, the first one first.
    pub steps: &'a [Step],
    /// When somebody is there, and what is taken by something else.
    pub hours: &'a Hours,
    /// The zone of the clock on the wall.
    pub zone: &'a TimeZone,
    /// Now, in minutes since the Unix epoch.
    pub now: f64,
    /// How long somebody must be there from the pour on, in min; 0 for the moment of the pour alone.
    pub pouring_min: f64,
}
