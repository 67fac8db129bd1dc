//! One measured value.

/// One value of one quantity, measured in one job.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Observation<J> {
    /// The job it belongs to.
    pub job: J,
    /// Days since any fixed day, the same one throughout a record.
    pub day: i32,
    /// The value, in the unit of the quantity.
    pub value: f64,
}
