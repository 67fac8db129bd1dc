//! What a person types and what a person reads: units, entries, print.

mod accepted;
mod decimals;
mod print;
mod properties;
mod refused;
mod units;
