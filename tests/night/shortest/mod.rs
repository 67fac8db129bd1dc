//! The shortest burnout by heat: what it keeps, what nothing beats, and what it says where there is none.

mod brute;
mod kept;
mod loosened;
mod paths;
mod reasons;
mod tables;
#[allow(dead_code, reason = "shared with the bench")]
mod world;
