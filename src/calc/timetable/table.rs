//! A timetable: its rows, and what is wrong with them.

use super::step::{PinKind, Resource, StepKey};

/// What is wrong with a row.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Problem {
    /// Somebody is needed when nobody is there.
    OutsideHours {
        /// The first moment at which somebody is missing, in minutes since the Unix epoch.
        at: f64,
        /// For how long in all, in min; 0 where a moment's hand is needed.
        minutes: f64,
    },
    /// It is not over when the next step, or the pour, begins.
    Overlaps {
        /// How much too late it ends, in min.
        by_min: f64,
    },
    /// The wait after it is shorter than its least.
    WaitTooShort {
        /// By so many min.
        by_min: f64,
    },
    /// The wait after it is longer than allowed.
    WaitTooLong {
        /// By so many min.
        by_min: f64,
    },
    /// What it uses, or what the wait after it keeps, is taken by something else.
    Taken {
        /// What that is.
        resource: Resource,
        /// The first overlap begins, in minutes since the Unix epoch.
        from: f64,
        /// It ends, in minutes since the Unix epoch.
        until: f64,
    },
    /// It begins before now.
    Past {
        /// By so many min.
        by_min: f64,
    },
    /// Within so many days before it is needed there is no time that suits it. It stands where it would have to.
    NoFreeTime {
        /// So many days of 24 h, beyond the length of all steps.
        days: u32,
    },
}

/// A step in its timetable.
#[derive(Debug, Clone, PartialEq)]
pub struct Row {
    /// The step.
    pub key: StepKey,
    /// Its start, in minutes since the Unix epoch.
    pub start: f64,
    /// Its end, in minutes since the Unix epoch.
    pub end: f64,
    /// The wait after it until the next step, or the pour, in min; negative where they overlap.
    pub wait_min: f64,
    /// Its pin.
    pub pin: Option<PinKind>,
    /// It is done, stands before one that is done, or began by itself at once after it.
    pub over: bool,
    /// What is wrong with it.
    pub problems: Vec<Problem>,
}

/// A timetable.
#[derive(Debug, Clone, PartialEq)]
pub struct Timetable {
    /// A row a step, in their order.
    pub rows: Vec<Row>,
    /// The pour, in minutes since the Unix epoch.
    pub pour_at: f64,
    /// What is wrong with the pour itself: nobody is there, or it is past.
    pub pour_problems: Vec<Problem>,
}

impl Timetable {
    /// Is there nothing wrong with any row, or with the pour?
    #[must_use]
    pub fn is_clear(&self) -> bool {
        self.pour_problems.is_empty() && self.rows.iter().all(|row| row.problems.is_empty())
    }

    /// The row of a step.
    #[must_use]
    pub fn row(&self, key: StepKey) -> Option<&Row> {
        self.rows.iter().find(|row| row.key == key)
    }

    /// What comes next: the first row that is not over.
    #[must_use]
    pub fn next(&self) -> Option<&Row> {
        self.rows.iter().find(|row| !row.over)
    }
}
