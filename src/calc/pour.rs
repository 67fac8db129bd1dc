//! Pouring: temperatures of metal and mould by alloy and section, superheat, the quench.

use super::alloy::AlloyTerms;
use super::book::Id;
use super::finding::{self, Arg, FindingKind};
use super::pass::Pass;
use super::rule::{Input, inputs, rules};
use super::value::Cause;
use crate::job::{Flask, Place};
use crate::quantity::Finite;
use crate::stock::{Cooling, EntryId, PourRange, Section, Span};

inputs! {
    /// The metal when poured, as chosen.
    METAL_CHOSEN "pour.metal-chosen" Temperature;
    /// The mould when poured, as chosen.
    MOULD_CHOSEN "pour.mould-chosen" Temperature;
    /// Lower end of the metal's range.
    METAL_LOW "pour.metal-low" Temperature;
    /// Upper end of the metal's range.
    METAL_HIGH "pour.metal-high" Temperature;
    /// Lower end of the mould's range.
    MOULD_LOW "pour.mould-low" Temperature;
    /// Upper end of the mould's range.
    MOULD_HIGH "pour.mould-high" Temperature;
    /// Earliest quench.
    QUENCH_FROM "pour.quench-from" Duration;
    /// Latest quench.
    QUENCH_UNTIL "pour.quench-until" Duration;
}

rules! {
    /// The metal's temperature, where none was chosen: the middle of its range.
    METAL_TARGET "pour.metal" (low: Temperature, high: Temperature) -> Temperature
        = Formula "low + (high - low)/2" { low + (high - low) / 2.0 };
        CommonPractice "the middle of the range for this alloy and section"
    /// The mould's temperature, where none was chosen: the middle of its range.
    MOULD_TARGET "pour.mould" (low: Temperature, high: Temperature) -> Temperature
        = Formula "low + (high - low)/2" { low + (high - low) / 2.0 };
        CommonPractice "the middle of the range for this alloy and section"
    /// How far the metal is over its liquidus.
    SUPERHEAT "pour.superheat" (metal: Temperature, liquidus: Temperature) -> TemperatureDifference
        = Formula "metal - liquidus" { metal - liquidus };
        Computed "pouring temperature less liquidus"
}

/// Pouring figures of one flask.
#[derive(Debug, Clone, Copy)]
pub struct PourFigures {
    /// The section that rules.
    pub section: Section,
    /// Nobody said the section: it is assumed.
    pub section_assumed: bool,
    /// Metal.
    pub metal: Id,
    /// Its range.
    pub metal_range: Option<[Id; 2]>,
    /// Mould.
    pub mould: Id,
    /// Its range.
    pub mould_range: Option<[Id; 2]>,
    /// Over the liquidus.
    pub superheat: Id,
    /// Minutes from the pour to the quench; `None` where it is never quenched or nothing is known.
    pub quench: Option<[Id; 2]>,
    /// Never to be quenched.
    pub never_quench: bool,
    /// From when to when the button stops glowing, in minutes after the pour; nothing where too little is known.
    pub no_glow: Option<[Id; 2]>,
}

impl<'a> Pass<'a> {
    pub(super) fn flask_pour(
        &mut self,
        flask: &'a Flask,
        alloy: Option<AlloyTerms<'a>>,
        lightest: Option<Section>,
        never_quench: bool,
    ) -> PourFigures {
        let place = Place::Flask(flask.id);
        let said = flask.section.or(lightest);
        let section = said.unwrap_or(Section::Medium);
        let range = alloy.and_then(|alloy| pour_range(&alloy.alloy.pour, section));
        let id = alloy.map(|alloy| &alloy.alloy.id);
        let metal_range = self.span(id, range.map(|range| &range.metal_c), [&METAL_LOW, &METAL_HIGH]);
        let mould_range = self.span(id, range.map(|range| &range.mould_c), [&MOULD_LOW, &MOULD_HIGH]);
        let metal = match flask.metal_c {
            Some(chosen) => self.chosen(&METAL_CHOSEN, place, chosen, metal_range, &finding::METAL_OUTSIDE),
            None => self.middle(&METAL_TARGET, place, metal_range, [&METAL_LOW, &METAL_HIGH]),
        };
        let mould = match flask.mould_c {
            Some(chosen) => self.chosen(&MOULD_CHOSEN, place, chosen, mould_range, &finding::MOULD_OUTSIDE),
            None => self.middle(&MOULD_TARGET, place, mould_range, [&MOULD_LOW, &MOULD_HIGH]),
        };
        let liquidus = alloy.map_or_else(|| self.book.absent(&super::alloy::LIQUIDUS, place, Cause::NotChosen), |alloy| alloy.liquidus);
        let superheat = self.book.derive(&SUPERHEAT, place, [metal, liquidus]);
        let quench = alloy.and_then(|alloy| alloy.alloy.quench.as_ref());
        let never_quench = never_quench || quench.is_some_and(|quench| quench.cooling == Cooling::Air);
        let window = quench.and_then(|quench| quench.after_min.as_ref()).filter(|_| !never_quench);
        let quench = self.span(id, window, [&QUENCH_FROM, &QUENCH_UNTIL]);
        PourFigures {
            section,
            section_assumed: said.is_none(),
            metal,
            metal_range,
            mould,
            mould_range,
            superheat,
            quench,
            never_quench,
            no_glow: None,
        }
    }

    fn span(&mut self, entry: Option<&EntryId>, span: Option<&Span>, inputs: [&'static Input; 2]) -> Option<[Id; 2]> {
        let (entry, span) = (entry?, span?);
        Some([
            self.book.shelf_number(inputs[0], entry, span.low, &span.source, span.trust),
            self.book.shelf_number(inputs[1], entry, span.high, &span.source, span.trust),
        ])
    }

    fn middle(&mut self, rule: &'static super::rule::Rule, place: Place, range: Option<[Id; 2]>, inputs: [&'static Input; 2]) -> Id {
        let terms = range.unwrap_or_else(|| inputs.map(|input| self.book.absent(input, place, Cause::NotChosen)));
        self.book.derive(rule, place, terms)
    }

    fn chosen(&mut self, input: &'static Input, place: Place, chosen: Finite, range: Option<[Id; 2]>, outside: &'static FindingKind) -> Id {
        let chosen = self.book.entered(input, place, chosen.get());
        if let Some([low, high]) = range
            && let (Some(value), Some(from), Some(to)) = (self.book.number(chosen), self.book.number(low), self.book.number(high))
            && !(from..=to).contains(&value)
        {
            self.find_on(outside, place, chosen, vec![Arg::Figure(chosen), Arg::Figure(low), Arg::Figure(high)]);
        }
        chosen
    }
}

/// The range for a section, or for the nearest section that has one.
pub(super) fn pour_range(ranges: &[PourRange], section: Section) -> Option<&PourRange> {
    let order = [Section::Filigree, Section::Thin, Section::Medium, Section::Heavy];
    let index = |section: Section| order.iter().position(|other| *other == section).unwrap_or(2);
    ranges.iter().min_by_key(|range| index(range.section).abs_diff(index(section)))
}
