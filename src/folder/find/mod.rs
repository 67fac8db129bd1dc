//! Finding a word in all jobs at once.
//!
//! Every text of the folder is kept once, folded and cut into words ([`texts`]); a line of a job is a row of numbers of texts ([`rows`],
//! [`make_rows`]). A query is matched against each text once, and each row then only looks up what was found ([`query`]).

mod field;
mod fold;
mod letters;
mod make_rows;
mod query;
mod rows;
mod texts;

pub use field::{DateOf, Field};
pub use fold::fold;
pub use query::{Found, Hit, Query, Why};
pub(crate) use rows::Rows;
pub(crate) use texts::Texts;
