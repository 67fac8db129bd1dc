//! The shortest sound burnout by heat alone: the least time in which a kiln brings a load of moulds through all that is asked of them.
//!
//! Sound by heat means: no mould's wall and core are farther apart than its inversions bear, its core burns out hot enough for long enough, it
//! is dry, it comes to the pour at the temperature asked for; and the kiln never does what it cannot, or what a data sheet forbids. Air, the
//! pattern's chemistry and gas are not computed: what they need is said by [`Least`] and [`RampCap`].
//!
//! [`judge`] holds any programme against the limits. [`shortest`] seeks the shortest one that keeps them: all times and set points at once are
//! bettered by small linear programmes over coarse runs ([`descend`]), then settled on whole minutes and degrees ([`settle`]), and at last the
//! winner is run anew on a fine mesh. Nothing is given out that the fine run does not bear out. That nothing shorter exists is not proven.

mod bind;
mod case;
mod check;
mod descend;
mod draft;
mod held;
mod judge;
mod limits;
mod load;
mod model;
mod outcome;
mod path;
mod read;
mod rows;
mod search;
mod settle;
mod simplex;
mod start;
mod thin;

pub use bind::{Bind, Breach};
pub use judge::{Judged, judge};
pub use limits::{KilnBand, Least, Limits, RampCap, Soak};
pub use load::{Inversion, Kept, Load, Mould, Needs};
pub use outcome::{Bound, Held, Outcome, Programme};
pub use path::{Segment, readings, total_min};
pub use read::{Apart, DRY_C, Values};
pub use search::{shortest, shortest_by};
