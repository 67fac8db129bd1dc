//! All job files of a studio's folder at once: where a word stands, what was cast before, and which pieces left for another job.
//!
//! The job files and `studio.ron` are the only truth. The [`Index`] is what they say briefly; it is held in memory, built when it is first
//! asked for, and refreshed by what changed. Start at [`Index::build`]; [`Brief`] is a single job.

mod brief;
mod claims;
mod facts;
mod find;
mod index;
mod last_time;

pub use brief::{
    Brief, BriefBurnout, BriefDraw, BriefEntry, BriefEvent, BriefException, BriefFlask, BriefHung, BriefLine, BriefMelt, BriefOrder,
    BriefProgramme, BriefTree, Passed,
};
pub use claims::{Claims, Dangling, Missing, Taken, Twice, claims, taken_by_others};
pub use find::{DateOf, Field, Found, Hit, Query, Why, fold};
pub use index::{Broken, Changes, Index, Listed, Stamp};
pub use last_time::{Casting, LastTime, last_time};
