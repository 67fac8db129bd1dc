//! Clocks that run at the bench: right across a restart of the program, a machine that slept, and a clock on the wall that was put right.
//!
//! How long a step has run is told by a counter that goes on while the machine sleeps and that nobody sets, where the system has one; else by
//! the time of day, which a time zone or the end of summer time does not touch, and by the program's own counter where that has gone further:
//! then the time of day was set back meanwhile.

use jiff::Timestamp;
use serde::{Deserialize, Serialize};

/// A moment by every clock there is.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Moment {
    /// The time of day.
    pub wall: Timestamp,
    /// Which start of the machine it is since, and the seconds since then, sleep included; nothing where the system does not tell.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub boot: Option<(String, f64)>,
    /// Which run of the program it is, and the seconds it has run.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub run: Option<(String, f64)>,
}

impl Moment {
    /// A moment of which only the time of day is known.
    #[must_use]
    pub const fn by_wall(wall: Timestamp) -> Self {
        Self { wall, boot: None, run: None }
    }

    /// Seconds from `start` to this moment; never less than none.
    #[must_use]
    pub fn seconds_since(&self, start: &Self) -> f64 {
        let same = |one: &Option<(String, f64)>, other: &Option<(String, f64)>| match (one, other) {
            (Some((name, from)), Some((same, to))) if name == same => Some(to - from),
            _ => None,
        };
        let by_wall = self.wall.duration_since(start.wall).as_secs_f64();
        let seconds = match (same(&start.boot, &self.boot), same(&start.run, &self.run)) {
            (Some(by_boot), _) => by_boot,
            (None, Some(by_run)) => by_wall.max(by_run),
            (None, None) => by_wall,
        };
        seconds.max(0.0)
    }
}

/// A step that runs at the bench.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Running {
    /// The job it belongs to.
    pub job: String,
    /// The step, by a name that stays the same.
    pub step: String,
    /// When it was begun.
    pub since: Moment,
    /// It was done: begun again, it begins anew.
    #[serde(default)]
    pub done: bool,
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at(text: &str) -> Timestamp {
        text.parse().expect("a moment")
    }

    fn moment(wall: &str, boot: Option<(&str, f64)>, run: Option<(&str, f64)>) -> Moment {
        let own = |one: Option<(&str, f64)>| one.map(|(name, seconds)| (name.to_owned(), seconds));
        Moment { wall: at(wall), boot: own(boot), run: own(run) }
    }

    fn close(seconds: f64, expected: f64) {
        assert!((seconds - expected).abs() < 1e-6, "{seconds} and not {expected}");
    }

    #[test]
    fn sleep_counts_and_a_clock_that_was_set_does_not() {
        let start = moment("2026-11-27T20:00:00Z", Some(("a", 100.0)), Some(("r", 5.0)));
        // Slept for an hour: the program's own counter stood still.
        close(moment("2026-11-27T21:00:00Z", Some(("a", 3700.0)), Some(("r", 8.0))).seconds_since(&start), 3600.0);
        // The clock was put forward by an hour, or back by one.
        close(moment("2026-11-27T21:01:00Z", Some(("a", 160.0)), Some(("r", 65.0))).seconds_since(&start), 60.0);
        close(moment("2026-11-27T19:01:00Z", Some(("a", 160.0)), Some(("r", 65.0))).seconds_since(&start), 60.0);
    }

    #[test]
    fn without_the_machines_own_counter_a_clock_that_was_set_back_is_noticed() {
        let start = moment("2026-11-27T20:00:00Z", None, Some(("r", 5.0)));
        close(moment("2026-11-27T19:01:00Z", None, Some(("r", 65.0))).seconds_since(&start), 60.0);
        close(moment("2026-11-27T21:00:00Z", None, Some(("r", 8.0))).seconds_since(&start), 3600.0);
    }

    #[test]
    fn a_restart_of_program_or_machine_goes_on_counting() {
        let start = moment("2026-11-27T20:00:00Z", Some(("a", 100.0)), Some(("r", 5.0)));
        close(moment("2026-11-27T20:10:00Z", Some(("a", 700.0)), Some(("s", 1.0))).seconds_since(&start), 600.0);
        close(moment("2026-11-27T20:10:00Z", Some(("b", 20.0)), Some(("s", 1.0))).seconds_since(&start), 600.0);
        close(moment("2026-11-27T19:00:00Z", Some(("b", 20.0)), Some(("s", 1.0))).seconds_since(&start), 0.0);
    }

    /// The night of 25 October 2026, when summer time ends in Europe: an hour of the clock on the wall comes twice.
    #[test]
    fn the_end_of_summer_time_is_no_hour() {
        let start = Moment::by_wall(at("2026-10-25T02:50:00+02:00"));
        close(Moment::by_wall(at("2026-10-25T02:10:00+01:00")).seconds_since(&start), 1200.0);
    }

    #[test]
    fn a_moment_is_read_as_it_was_written() {
        let start = moment("2026-11-27T20:00:00Z", Some(("a", 100.0)), Some(("r", 5.0)));
        let text = ron::to_string(&start).expect("written");
        assert_eq!(ron::from_str::<Moment>(&text).expect("read"), start);
    }
}
