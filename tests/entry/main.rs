//! What a person types and what a person reads: units, entries, print.

mod print;
mod units;
