//! Waxes shot from the studio's moulds: how many shots, how much wax, and by how much a wax is smaller than the master.

use std::collections::BTreeMap;

use super::book::Id;
use super::finding::{self, Arg};
use super::hung;
use super::pass::Pass;
use super::rule::{givens, inputs, rules};
use crate::job::{Hung, Mould, Pattern, PatternId, Place};
use crate::stock::PatternMaterial;

inputs! {
    /// Pieces wanted of a pattern, over all lines.
    PIECES_WANTED "mould.pieces" Count;
    /// Share of shots that are thrown back.
    REJECTS "mould.rejects" Ratio;
    /// Wax of one shot.
    SHOT "mould.shot" Mass;
    /// Linear shrinkage of the rubber.
    RUBBER_SHRINK "mould.rubber-shrink" Ratio;
    /// Linear shrinkage of the mould's wax.
    WAX_SHRINK "mould.wax-shrink" Ratio;
    /// Injection temperature.
    WAX_AT "mould.wax-at" Temperature;
    /// Injection pressure, over the air's.
    PRESSURE "mould.pressure" Vacuum;
}

givens! {
    /// Shots thrown back, where nobody counted.
    REJECTS_NONE "mould.rejects" Ratio = 0.0; CommonPractice "every shot is taken as good until somebody counts"
}

rules! {
    /// Shots that must be made.
    SHOTS "mould.shots" (pieces: Count, rejects: Ratio) -> Count
        // A hair off, so that 7 of which three in ten are thrown back are ten and not eleven by binary noise.
        = Formula "ceil(pieces/(1 - rejects) - 0.000000001)" { (pieces / (1.0 - rejects) - 0.000_000_001).ceil() };
        Computed "so many shots that the good ones among them are enough, whole shots"
    /// Wax for them.
    WAX "mould.wax" (shots: Count, shot: Mass) -> Mass
        = Decimal "shots*shot" { shots.checked_mul(shot) };
        Computed "shots times the wax of one; what is thrown back goes into the pot again"
    /// From the master to the wax.
    MOULD_SHRINK "mould.shrink" (rubber: Ratio, wax: Ratio) -> Ratio
        = Formula "1 - (1 - rubber)*(1 - wax)" { 1.0 - (1.0 - rubber) * (1.0 - wax) };
        Computed "the rubber's cavity is smaller than the master, and the wax than the cavity"
}

/// Figures of the mould that a pattern is shot from.
#[derive(Debug, Clone, Copy)]
pub struct MouldFigures {
    /// Pieces wanted of the pattern, over all lines.
    pub pieces: Id,
    /// Shots to make.
    pub shots: Id,
    /// Wax for them, where the wax of a shot is known.
    pub wax: Option<Id>,
    /// Injection temperature, where the mould says it.
    pub wax_at: Option<Id>,
    /// Injection pressure, where the mould says it.
    pub pressure: Option<Id>,
}

impl<'a> Pass<'a> {
    /// Pieces wanted of every pattern: cancelled ones do not count, remakes do.
    pub(super) fn pieces_wanted(&self) -> BTreeMap<PatternId, u32> {
        let mut wanted = BTreeMap::new();
        // Only what is shot from a mould asks for it.
        if self.job.patterns.iter().all(|pattern| pattern.mould.trim().is_empty()) {
            return wanted;
        }
        for (_, line) in self.job.lines() {
            for (pattern, pieces) in hung::by_pattern(&Hung { line: line.id, ..Hung::default() }, line) {
                if let Some(pattern) = pattern {
                    let count: &mut u32 = wanted.entry(pattern).or_default();
                    *count = count.saturating_add(pieces);
                }
            }
        }
        wanted
    }

    /// The mould a pattern names, out of the studio's register; one that is not there is a finding.
    pub(super) fn mould_of(&mut self, pattern: &Pattern) -> Option<&'a Mould> {
        let number = pattern.mould.trim();
        if number.is_empty() {
            return None;
        }
        let studio = self.studio;
        let found = studio.moulds.iter().find(|mould| mould.number.trim() == number);
        if found.is_none() {
            let args = vec![Arg::Text(number.to_owned()), Arg::Text(pattern.name.clone())];
            self.find(&finding::MOULD_UNKNOWN, Place::Pattern(pattern.id), args);
        }
        found
    }

    /// What the mould makes of the linear shrinkage: rubber and wax, the wax alone, or what the pattern's material has.
    pub(super) fn shrink_from(&mut self, mould: &'a Mould, place: Place, material: Id) -> Id {
        let own = self.entry::<PatternMaterial>(mould.wax.as_ref(), place);
        let wax = own.map_or(material, |wax| self.shelf_term(&WAX_SHRINK, &wax.id, &wax.linear_shrink));
        match mould.rubber_shrink {
            Some(rubber) => {
                let rubber = self.book.studio(&RUBBER_SHRINK, rubber.get());
                self.book.derive(&MOULD_SHRINK, place, [rubber, wax])
            }
            None => wax,
        }
    }

    /// Shots and wax for a pattern that weighs `weight`.
    pub(super) fn mould(&mut self, pattern: &Pattern, mould: &Mould, wanted: u32, weight: Id) -> MouldFigures {
        let place = Place::Pattern(pattern.id);
        let pieces = self.book.entered(&PIECES_WANTED, place, f64::from(wanted));
        let rejects = match mould.reject_share {
            Some(share) => self.book.studio(&REJECTS, share.get()),
            None => self.book.assumed(&REJECTS_NONE, place),
        };
        let shots = self.book.derive(&SHOTS, place, [pieces, rejects]);
        let wax = mould.shot.map(|grams| {
            let shot = self.book.studio_grams(&SHOT, grams);
            if let (Some(shot_g), Some(weight_g)) = (self.book.number(shot), self.book.number(weight))
                && shot_g < weight_g
            {
                let args = vec![Arg::Figure(shot), Arg::Text(pattern.name.clone()), Arg::Figure(weight)];
                self.find_on(&finding::SHOT_LIGHT, place, shot, args);
            }
            self.book.derive(&WAX, place, [shots, shot])
        });
        let wax_at = mould.wax_c.map(|wax_c| self.book.studio(&WAX_AT, wax_c.get()));
        let pressure = mould.pressure_kpa.map(|kpa| self.book.studio(&PRESSURE, kpa.get()));
        MouldFigures { pieces, shots, wax, wax_at, pressure }
    }
}
