//! What in the studio's registers is to be looked at next: lots that come to their last day, scales, kilns and pumps to be checked.

use jiff::Span;
use jiff::civil::Date;

use super::finding::{self, Arg};
use super::pass::Pass;
use crate::job::{Place, Studio};

/// What is looked at.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum CheckOf {
    /// A lot of powder, resin or wax, by its place in the register.
    Lot(usize),
    /// Something that wears, by its place in the register.
    Equipment(usize),
}

/// A day on which something is to be looked at.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct NextCheck {
    /// What.
    pub of: CheckOf,
    /// The day: a lot's last, a check's due one.
    pub on: Date,
    /// Days from then until now: above 0 it is overdue.
    pub over: i64,
}

/// Everything with a day, the first to come first.
#[must_use]
pub fn next_checks(studio: &Studio, today: Date) -> Vec<NextCheck> {
    let lots = studio.materials.iter().enumerate().filter_map(|(at, lot)| Some((CheckOf::Lot(at), lot.until?)));
    let equipment = studio.equipment.iter().enumerate().filter_map(|(at, item)| Some((CheckOf::Equipment(at), item.next_check?)));
    let over = |on: Date| on.until(today).map_or(0, |span: Span| i64::from(span.get_days()));
    let mut all: Vec<NextCheck> = lots.chain(equipment).map(|(of, on)| NextCheck { of, on, over: over(on) }).collect();
    all.sort_by_key(|check| (check.on, check.of));
    all
}

impl Pass<'_> {
    /// A scale or a kiln that nobody checked in time may be off by any amount. A lot past its last day is told where it is used.
    pub(super) fn checks(&mut self) {
        let studio = self.studio;
        for check in next_checks(studio, self.setting.at) {
            if let CheckOf::Equipment(at) = check.of
                && check.over > 0
            {
                let args = vec![Arg::Text(studio.equipment[at].label.clone()), Arg::Text(check.on.to_string())];
                self.find(&finding::CHECK_OVERDUE, Place::Studio, args);
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::{Equipment, MaterialLot};
    use jiff::civil::date;

    #[test]
    fn what_comes_first_stands_first_and_what_is_over_is_counted() {
        let studio = Studio {
            materials: vec![
                MaterialLot { until: Some(date(2027, 2, 1)), ..MaterialLot::default() },
                MaterialLot::default(),
                MaterialLot { until: Some(date(2026, 11, 27)), ..MaterialLot::default() },
            ],
            equipment: vec![Equipment { next_check: Some(date(2026, 11, 28)), ..Equipment::default() }, Equipment::default()],
            ..Studio::default()
        };
        let found = next_checks(&studio, date(2026, 11, 28));
        let told: Vec<(CheckOf, i64)> = found.iter().map(|check| (check.of, check.over)).collect();
        assert_eq!(told, [(CheckOf::Lot(2), 1), (CheckOf::Equipment(0), 0), (CheckOf::Lot(0), -65)]);
    }
}
