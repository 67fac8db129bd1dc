//! What can go wrong in a kiln load: ceilings, stones, what the kiln cannot do, carbon left, pieces that come too late.

use super::{BurnoutFigures, table_of};
use crate::calc::book::Id;
use crate::calc::finding::{self, Arg, FindingKind};
use crate::calc::flask::FlaskFigures;
use crate::calc::pass::Pass;
use crate::calc::rule::{inputs, rules};
use crate::job::{Burnout, Place, Studio};
use crate::quantity::Finite;
use crate::stock::{Kiln, PatternClass, PatternMaterial, Powder, Sourced, Span, StageTable};

inputs! {
    /// True temperature less the kiln's reading.
    OFFSET "kiln.offset" TemperatureDifference;
    /// How much hotter than the probe the hottest place is.
    HOT_ZONE "kiln.hot-zone" TemperatureDifference;
    /// What the powder never sees.
    CEILING "powder.stop-ceiling" Temperature;
    /// What is planned at most for the powder.
    PLANNED_CEILING "powder.planned-ceiling" Temperature;
    /// What the powder sees at most with stones in it.
    STONES_CEILING "powder.stones-ceiling" Temperature;
    /// What the kiln reaches.
    KILN_TOP "kiln.ceiling" Temperature;
    /// Liquid to powder for a fast burnout.
    THICK_MIX "powder.ratio-fast" Ratio;
    /// Hours above 700 °C a material needs.
    CARBON_NEEDED "material.above-700" Duration;
}

rules! {
    /// What the hottest place in the kiln really reaches.
    TRUE_TOP "burnout.true-top" (top: Temperature, offset: TemperatureDifference, zone: TemperatureDifference) -> Temperature
        = Formula "top + offset + zone" { top + offset + zone };
        Computed "the controller's target, its probe's error and the kiln's hottest place"
}

impl<'a> Pass<'a> {
    pub(in crate::calc) fn burnout_findings(
        &mut self,
        burnout: &'a Burnout,
        figures: &BurnoutFigures,
        kiln: Option<&'a Kiln>,
        load: &[&FlaskFigures],
        empty: bool,
    ) {
        let place = Place::Burnout(burnout.id);
        if !empty {
            let true_top = self.true_top(place, figures.top, kiln);
            self.ceilings(figures.top, true_top, load);
            self.carbon(burnout, figures, load);
            self.table_meant(burnout, load);
            self.mould_ranges(place, load);
            if let Some(kiln) = kiln {
                self.kiln_limits(place, figures, kiln, load);
            }
            self.fast(burnout, load);
        }
        self.starts_in_past(place, burnout, figures);
    }

    fn true_top(&mut self, place: Place, top: Id, kiln: Option<&'a Kiln>) -> Id {
        let Some(kiln) = kiln else { return top };
        let offset = match registered_offset(self.studio, kiln) {
            Some(offset) => self.book.studio(&OFFSET, offset),
            None => self.shelf_term(&OFFSET, &kiln.id, &kiln.offset_k),
        };
        let zone = self.shelf_term(&HOT_ZONE, &kiln.id, &kiln.hot_zone_k);
        self.book.derive(&TRUE_TOP, place, [top, offset, zone])
    }

    /// The programme against what each flask's powder, and its stones, bear.
    fn ceilings(&mut self, top: Id, true_top: Id, load: &[&FlaskFigures]) {
        for flask in load {
            let place = Place::Flask(flask.id);
            let Some(powder) = flask.powder.as_ref().and_then(|id| self.shelf.get::<Powder>(id.as_str())) else { continue };
            let name = Arg::Text(powder.name.clone());
            if flask.stones {
                match &powder.stones_ceiling_c {
                    Some(ceiling) => {
                        self.over(&finding::STONES_TOO_HOT, place, true_top, (&STONES_CEILING, powder, ceiling), None);
                    }
                    None => self.find(&finding::STONES_POWDER, place, vec![name.clone()]),
                }
            }
            let stop = (&CEILING, powder, &powder.stop_ceiling_c);
            let planned = (&PLANNED_CEILING, powder, &powder.planned_ceiling_c);
            if !self.over(&finding::OVER_CEILING, place, true_top, stop, Some(name.clone())) {
                self.over(&finding::OVER_PLANNED, place, top, planned, Some(name));
            }
            self.own_limit(place, powder);
        }
    }

    fn over(
        &mut self,
        kind: &'static FindingKind,
        place: Place,
        top: Id,
        (input, powder, ceiling): (&'static crate::calc::rule::Input, &'a Powder, &'a Sourced),
        name: Option<Arg>,
    ) -> bool {
        let limit = self.shelf_term(input, &powder.id, ceiling);
        let over = matches!((self.book.number(top), self.book.number(limit)), (Some(top), Some(limit)) if top > limit);
        if over {
            let mut args = vec![Arg::Figure(top), Arg::Figure(limit)];
            args.extend(name);
            self.find_on(kind, place, top, args);
        }
        over
    }

    /// A studio that raised a ceiling above the shipped one sees it wherever it counts.
    fn own_limit(&mut self, place: Place, powder: &Powder) {
        let shipped = crate::stock::Shelf::shipped().get::<Powder>(powder.id.as_str());
        if shipped.is_some_and(|shipped| {
            powder.stop_ceiling_c.value > shipped.stop_ceiling_c.value || powder.planned_ceiling_c.value > shipped.planned_ceiling_c.value
        }) {
            self.find(&finding::OWN_LIMIT, place, vec![Arg::Text(powder.name.clone())]);
        }
    }

    /// The pattern material of these flasks that needs most time to burn, and the hours it needs above 700 °C.
    pub(in crate::calc) fn hardest_to_burn(&self, flasks: &[&FlaskFigures]) -> Option<(&'a PatternMaterial, &'a Span)> {
        // Stones are burnt out slowly and low, by a sheet of their own.
        let materials = flasks.iter().filter(|flask| !flask.stones).flat_map(|flask| &flask.materials);
        let entries = materials.filter_map(|id| self.shelf.get::<PatternMaterial>(id.as_str()));
        let hardest = entries.max_by(|a, b| a.burnout.above_700_h.low.total_cmp(&b.burnout.above_700_h.low))?;
        Some((hardest, &hardest.burnout.above_700_h))
    }

    fn carbon(&mut self, burnout: &Burnout, figures: &BurnoutFigures, load: &[&FlaskFigures]) {
        let Some((hardest, span)) = self.hardest_to_burn(load) else { return };
        let needed = self.book.shelf_number(&CARBON_NEEDED, &hardest.id, span.low * 60.0, &span.source, span.trust);
        if let (Some(has), Some(needs)) = (self.book.number(figures.hot), self.book.number(needed))
            && has < needs
        {
            let args = vec![Arg::Figure(figures.hot), Arg::Figure(needed), Arg::Text(hardest.name.clone())];
            self.find_on(&finding::CARBON_LEFT, Place::Burnout(burnout.id), figures.hot, args);
        }
    }

    fn table_meant(&mut self, burnout: &Burnout, load: &[&FlaskFigures]) {
        let Some(table) = table_of(burnout).and_then(|id| self.shelf.get::<StageTable>(id.as_str())) else { return };
        let materials = load.iter().flat_map(|flask| &flask.materials);
        // Sprues of wax run out before anything else burns: the pieces rule.
        let materials = materials.filter_map(|id| self.shelf.get::<PatternMaterial>(id.as_str()));
        let pieces = materials.filter(|material| material.class != PatternClass::SprueWax);
        let pattern = pieces.filter(|material| !table.patterns.contains(&material.class)).map(|material| material.name.clone()).next();
        let powders = load.iter().filter_map(|flask| self.shelf.get::<Powder>(flask.powder.as_ref()?.as_str()));
        let powder = powders.filter(|powder| !table.powders.contains(&powder.class)).map(|powder| powder.name.clone()).next();
        if let Some(other) = pattern.or(powder) {
            let args = vec![Arg::Text(table.name.clone()), Arg::Text(other)];
            self.find(&finding::TABLE_NOT_MEANT, Place::Burnout(burnout.id), args);
        }
    }

    /// Flasks whose moulds want temperatures that share no degree are poured one after the other, the kiln falling in between.
    fn mould_ranges(&mut self, place: Place, load: &[&FlaskFigures]) {
        let ranges = load.iter().filter_map(|flask| flask.pour.mould_range);
        let ends = |pick: usize| ranges.clone().filter_map(|range| Some((range[pick], self.book.number(range[pick])?))).collect::<Vec<_>>();
        let hottest_low = ends(0).into_iter().max_by(|a, b| a.1.total_cmp(&b.1));
        let coolest_high = ends(1).into_iter().min_by(|a, b| a.1.total_cmp(&b.1));
        if let (Some((low, low_c)), Some((high, high_c))) = (hottest_low, coolest_high)
            && low_c > high_c
        {
            self.find_on(&finding::MOULD_RANGES_APART, place, low, vec![Arg::Figure(low), Arg::Figure(high)]);
        }
    }

    /// A hot kiln is for experienced hands, and for a thick mix.
    fn fast(&mut self, burnout: &Burnout, load: &[&FlaskFigures]) {
        let table = table_of(burnout).and_then(|id| self.shelf.get::<StageTable>(id.as_str()));
        let Some(table) = table.filter(|table| table.fast.is_some()) else { return };
        self.find(&finding::FAST_BURNOUT, Place::Burnout(burnout.id), vec![Arg::Text(table.name.clone())]);
        for flask in load {
            let powder = flask.powder.as_ref().and_then(|id| self.shelf.get::<Powder>(id.as_str()));
            let Some((powder, thick)) = powder.and_then(|powder| Some((powder, powder.ratio_fast.as_ref()?))) else { continue };
            let thick = self.shelf_term(&THICK_MIX, &powder.id, thick);
            if let (Some(mixed), Some(wanted)) = (self.book.number(flask.mix.ratio), self.book.number(thick))
                && mixed > wanted + 0.005
            {
                let args = vec![Arg::Figure(flask.mix.ratio), Arg::Figure(thick)];
                self.find_on(&finding::FAST_MIX_THIN, Place::Flask(flask.id), flask.mix.ratio, args);
            }
        }
    }

    fn kiln_limits(&mut self, place: Place, figures: &BurnoutFigures, kiln: &'a Kiln, load: &[&FlaskFigures]) {
        let ceiling = self.shelf_term(&KILN_TOP, &kiln.id, &kiln.ceiling_c);
        if let (Some(top), Some(limit)) = (self.book.number(figures.top), self.book.number(ceiling))
            && top > limit
        {
            let args = vec![Arg::Figure(figures.top), Arg::Figure(ceiling), Arg::Text(kiln.name.clone())];
            self.find_on(&finding::KILN_CEILING, place, figures.top, args);
        }
        let count = |number: usize| Arg::Count(u64::try_from(number).unwrap_or(u64::MAX));
        if kiln.segments.is_some_and(|most| figures.stages.len() > most as usize) {
            let most = Arg::Count(u64::from(kiln.segments.unwrap_or_default()));
            self.find(&finding::KILN_SEGMENTS, place, vec![count(figures.stages.len()), most]);
        }
        if !kiln.vented {
            self.find(&finding::KILN_UNVENTED, place, vec![Arg::Text(kiln.name.clone())]);
        }
        if load.len() > kiln.positions as usize {
            self.find(&finding::KILN_FULL, place, vec![count(load.len()), Arg::Count(u64::from(kiln.positions))]);
        }
    }

    fn starts_in_past(&mut self, place: Place, burnout: &Burnout, figures: &BurnoutFigures) {
        let today = self.minutes_of(self.setting.at.to_datetime(jiff::civil::Time::midnight()));
        let begins = figures.dewax_start.unwrap_or(figures.kiln_start);
        let (Some(today), Some(start), Some(pour)) = (today, self.book.number(begins), burnout.pour_at) else { return };
        if start < today && pour.date() >= self.setting.at {
            self.find(&finding::STARTS_IN_PAST, place, vec![Arg::Figure(begins)]);
        }
    }
}

/// What the studio says that its kiln is really hotter than it reads, in K.
fn registered_offset(studio: &Studio, kiln: &Kiln) -> Option<f64> {
    studio.equipment.iter().find(|item| item.entry.as_ref() == Some(&kiln.id)).and_then(|item| item.offset_k).map(Finite::get)
}

/// How much hotter than its reading a kiln is, in K.
pub(in crate::calc) fn kiln_offset_k(studio: &Studio, kiln: &Kiln) -> f64 {
    registered_offset(studio, kiln).unwrap_or(kiln.offset_k.value)
}
