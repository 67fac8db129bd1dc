//! Ramps: as asked, as the kiln goes at best, and as they will be.

use super::rules::{KILN_BAND, KILN_RATE, NO_KILN, RAMP, RAMP_AT_RATE, RAMP_MINUTES, RAMP_PART, RAMP_RATE, RAMP_TAKEN};
use super::stages::{AskedRamp, Planned};
use crate::calc::book::Id;
use crate::calc::finding::{self, Arg};
use crate::calc::pass::Pass;
use crate::calc::value::Cause;
use crate::job::Place;
use crate::stock::Kiln;

impl<'a> Pass<'a> {
    /// The ramp to a stage as it will be, and what the kiln needs at least.
    pub(super) fn ramp(&mut self, at: Place, kiln: Option<&'a Kiln>, from: Id, stage: &Planned) -> Id {
        let own = self.kilns_ramp(at, kiln, from, stage.target);
        let asked = match stage.ramp {
            AskedRamp::KilnsOwn => return own,
            AskedRamp::Minutes(minutes) => self.book.entered(&RAMP_MINUTES, at, minutes),
            AskedRamp::Rate(rate) => self.ramp_at_rate(at, from, stage.target, rate),
            AskedRamp::Both(minutes, rate) => {
                let minutes = self.book.entered(&RAMP_MINUTES, at, minutes);
                let by_rate = self.ramp_at_rate(at, from, stage.target, rate);
                if let (Some(one), Some(other)) = (self.book.number(minutes), self.book.number(by_rate))
                    && (one - other).abs() > 0.5
                {
                    self.find(&finding::RAMP_SAID_TWICE, at, vec![Arg::Figure(minutes), Arg::Figure(by_rate)]);
                }
                minutes
            }
        };
        if kiln.is_none() {
            return asked;
        }
        if let (Some(wants), Some(needs)) = (self.book.number(asked), self.book.number(own))
            && needs > wants + 0.5
        {
            self.find_on(&finding::KILN_CANNOT_FOLLOW, at, own, vec![Arg::Figure(own), Arg::Figure(asked)]);
        }
        self.book.derive(&RAMP_TAKEN, at, [asked, own])
    }

    fn ramp_at_rate(&mut self, at: Place, from: Id, to: Id, rate: f64) -> Id {
        let rate = self.book.entered(&RAMP_RATE, at, rate);
        self.book.derive(&RAMP_AT_RATE, at, [from, to, rate])
    }

    /// The kiln's own time between two temperatures, band by band.
    pub(in crate::calc) fn kilns_ramp(&mut self, at: Place, kiln: Option<&'a Kiln>, from: Id, to: Id) -> Id {
        let (Some(kiln), Some(start), Some(end)) = (kiln, self.book.number(from), self.book.number(to)) else {
            let cause = if kiln.is_none() { Cause::NotChosen } else { Cause::Term };
            let nothing = self.book.absent(&NO_KILN, at, cause);
            return self.book.derive_over(&RAMP, at, &[nothing]);
        };
        let (low, high, rising) = (start.min(end), start.max(end), end >= start);
        let mut parts = Vec::new();
        let mut floor = f64::NEG_INFINITY;
        let origin = &kiln.bands_origin;
        for (index, band) in kiln.bands.iter().enumerate() {
            let ceiling = if index + 1 == kiln.bands.len() { f64::INFINITY } else { band.up_to_c };
            if ceiling > low && floor < high {
                let bound = |pass: &mut Self, c: f64| pass.book.shelf_number(&KILN_BAND, &kiln.id, c, origin.source(), origin.trust());
                let lower = if floor > low {
                    bound(self, floor)
                } else if rising {
                    from
                } else {
                    to
                };
                let upper = if ceiling < high {
                    bound(self, ceiling)
                } else if rising {
                    to
                } else {
                    from
                };
                let rate = if rising { band.rise_k_h } else { band.fall_k_h };
                let rate = self.book.shelf_number(&KILN_RATE, &kiln.id, rate, origin.source(), origin.trust());
                parts.push(self.book.derive(&RAMP_PART, at, [lower, upper, rate]));
            }
            floor = ceiling;
        }
        self.book.derive_over(&RAMP, at, &parts)
    }
}
