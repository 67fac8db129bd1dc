//! Order lines: metal of a piece, rough weight, metal cost.

use jiff::civil::Date;

use super::alloy::AlloyTerms;
use super::book::Id;
use super::by_id::place_of;
use super::finding::{self, Arg};
use super::hung;
use super::pass::Pass;
use super::pattern::PatternFigures;
use super::price::AlloyPrice;
use super::rule::{inputs, rules};
use super::size::{RingFigures, SideFigures};
use super::value::Cause;
use crate::job::{Hung, Job, Line, LineId, Order, OrderId, PatternId, PieceId, Place};
use crate::stock::EntryId;

inputs! {
    /// How many pieces.
    PIECES "line.pieces" Count;
    /// The line's pattern.
    LINE_PATTERN "line.pattern-volume" Volume;
    /// The line's alloy.
    LINE_ALLOY "line.alloy-density" Density;
}

rules! {
    /// Metal that fills one piece's mould.
    PIECE_METAL "piece.metal" (volume: Volume, density: Density) -> Mass
        = Formula "volume*density" { volume * density };
        Computed "the volume is conserved from pattern to metal"
    /// Weight of one piece as cast, cut off clean.
    PIECE_ROUGH "piece.rough-weight" (volume: Volume, density: Density, shrink: Ratio) -> Mass
        = Formula "volume*density*(1 - shrink)^3" { volume * density * (1.0 - shrink).powi(3) };
        Computed "as cast it is smaller than its mould by the linear shrinkage; ± 3 % until the studio's record says better"
    /// Rough weight of all pieces of a line, from the weight as it is printed.
    LINE_ROUGH "line.rough-weight" (rough: Mass, pieces: Count) -> Mass
        = Decimal "round2(rough)*pieces" { round2(rough)?.checked_mul(pieces) };
        Computed "rounded before it is multiplied, so that a client can follow it"
    /// Rough weight of a line whose pieces have patterns of their own.
    LINE_ROUGH_ALL "line.rough-all" (part: Mass) -> Mass = Sum "sum(part)"; Computed "one sum a pattern"
    /// Metal of a line at the price of the day.
    LINE_COST "line.metal-cost" (weight: Mass, per_gram: PricePerGram) -> Money
        = Decimal "round2(weight*per_gram)" { round2(weight.checked_mul(per_gram)?) };
        Computed "grams times the price of a gram, rounded half up to the cent"
}

/// Rounds half up (away from zero) to two decimals.
pub(super) fn round2(number: rust_decimal::Decimal) -> Option<rust_decimal::Decimal> {
    Some(crate::quantity::half_up(number, 2))
}

/// Figures of one line.
#[derive(Debug, Clone)]
pub struct LineFigures {
    /// The order.
    pub order: OrderId,
    /// The line.
    pub line: LineId,
    /// Metal that fills one piece's mould.
    pub metal: Id,
    /// Rough weight of one piece.
    pub rough: Id,
    /// Rough weight of all.
    pub rough_all: Id,
    /// The same of the pieces the client pays for: without those made in the stead of rejected ones.
    pub rough_paid: Id,
    /// Price of a gram of its alloy.
    pub per_gram: Id,
    /// Cost of its metal.
    pub cost: Id,
    /// Its ring size, where it has one.
    pub ring: Option<RingFigures>,
    /// The outer sizes asked for, along x, y and z.
    pub sides: [Option<SideFigures>; 3],
    /// Rough weight of one piece by pattern, where pieces of the line have patterns of their own; empty where none has.
    pub rough_by_pattern: Vec<(Option<PatternId>, Id)>,
    /// The ring sizes that single pieces have of their own, sorted by number.
    pub own_rings: Vec<(u32, RingFigures)>,
}

impl LineFigures {
    /// Rough weight of one piece cast from a pattern; `None` where no piece that is wanted is cast from it.
    #[must_use]
    pub fn rough_of(&self, pattern: Option<PatternId>) -> Option<Id> {
        if self.rough_by_pattern.is_empty() {
            return Some(self.rough);
        }
        self.rough_by_pattern.iter().find(|(of, _)| *of == pattern).map(|(_, rough)| *rough)
    }

    /// Inner diameter of the line's ring size.
    #[must_use]
    pub fn bore(&self) -> Option<Id> {
        self.ring.map(|ring| ring.bore)
    }

    /// Inner diameter of the ring size that one piece has of its own.
    #[must_use]
    pub fn own_bore(&self, number: u32) -> Option<Id> {
        self.own_rings.binary_search_by_key(&number, |(of, _)| *of).ok().map(|found| self.own_rings[found].1.bore)
    }
}

impl<'a> Pass<'a> {
    pub(super) fn lines(&mut self, patterns: &[PatternFigures], prices: &[AlloyPrice]) -> Vec<LineFigures> {
        let job: &'a Job = self.job;
        let mut alloys = Vec::new();
        let none = NoTerms {
            volume: self.book.absent(&LINE_PATTERN, Place::Job, Cause::NotChosen),
            density: self.book.absent(&LINE_ALLOY, Place::Job, Cause::NotChosen),
        };
        let mut lines = Vec::with_capacity(job.lines().count());
        for (order, line) in job.lines() {
            let alloy = self.alloy_of_line(line.alloy.as_ref(), Place::Line(line.id), &mut alloys);
            lines.push(self.line(order, line, alloy, patterns, prices, &none));
        }
        lines
    }

    /// Two jobs cannot both have the same piece: which of them has it is for the caster to say.
    fn taken_twice(&mut self, line: &Line) {
        let runs = self.runs;
        for (number, own) in line.exceptions.iter().filter(|(number, own)| !own.cancelled && **number <= line.quantity) {
            if let Some(from) = own.from
                && let Some(others) = runs.taken.get(&from)
            {
                let place = Place::Piece(PieceId { line: line.id, number: *number });
                let args = vec![Arg::Text(line.design.clone()), Arg::Text(from.piece.to_string()), Arg::Text(others.join(", "))];
                self.find(&finding::PIECE_TAKEN_TWICE, place, args);
            }
        }
    }

    fn line(
        &mut self,
        order: &'a Order,
        line: &'a Line,
        alloy: Option<AlloyTerms<'a>>,
        patterns: &[PatternFigures],
        prices: &[AlloyPrice],
        none: &NoTerms,
    ) -> LineFigures {
        let place = Place::Line(line.id);
        if line.pattern.is_none() {
            self.find(&finding::LINE_WITHOUT_PATTERN, place, vec![Arg::Text(line.design.clone()), Arg::Text(order.client.clone())]);
        }
        if line.alloy.is_none() {
            self.find(&finding::LINE_WITHOUT_ALLOY, place, vec![Arg::Text(line.design.clone()), Arg::Text(order.client.clone())]);
        }
        if let (Some(mark), Some(alloy)) = (line.mark_permille, alloy) {
            let own = alloy.alloy.fineness.map_or(0.0, |own| own.permille.get());
            if mark.get() > own {
                let asked = self.book.entered(&super::melt::TARGET_FINENESS, place, mark.get());
                self.find_on(&finding::MARK_OVER_ALLOY, place, asked, vec![Arg::Figure(asked), Arg::Text(alloy.alloy.name.clone())]);
            }
        }
        self.taken_twice(line);
        let pattern = line.pattern.and_then(|id| find_pattern(patterns, id));
        let (density, shrink) = alloy.map_or((none.density, none.density), |alloy| (alloy.density, alloy.shrink));
        let charge_volume = pattern.map_or(none.volume, |pattern| pattern.charge_volume);
        let quote_volume = pattern.map_or(none.volume, |pattern| pattern.quote_volume);
        let pieces = self.book.entered(&PIECES, place, f64::from(Job::pieces_of(line)));
        let metal = self.book.derive(&PIECE_METAL, place, [charge_volume, density]);
        let shrink = if alloy.is_some() { shrink } else { self.book.absent(&super::alloy::ALLOY_SHRINK, place, Cause::NotChosen) };
        let rough = self.book.derive(&PIECE_ROUGH, place, [quote_volume, density, shrink]);
        let own = line.exceptions.values().any(|exception| exception.pattern.is_some());
        let (rough_all, rough_by_pattern) = match own {
            false => (self.book.derive(&LINE_ROUGH, place, [rough, pieces]), Vec::new()),
            true => self.rough_by_pattern(line, [density, shrink, none.volume], patterns),
        };
        // What is made in the stead of a rejected piece is cast, and the studio pays for it.
        let rough_paid = match without_remakes(line) {
            None => rough_all,
            Some(paid) if own => self.rough_by_pattern(&paid, [density, shrink, none.volume], patterns).0,
            Some(paid) => {
                let pieces = self.book.entered(&PIECES, place, f64::from(Job::pieces_of(&paid)));
                self.book.derive(&LINE_ROUGH, place, [rough, pieces])
            }
        };
        let per_gram = self.per_gram(line.alloy.as_ref(), prices, place);
        let cost = self.book.derive(&LINE_COST, place, [rough_paid, per_gram]);
        let (ring, own_rings) = self.rings(line, patterns, alloy);
        let sides = self.sides(line, pattern, alloy);
        LineFigures {
            order: order.id,
            line: line.id,
            metal,
            rough,
            rough_all,
            rough_paid,
            per_gram,
            cost,
            ring,
            sides,
            rough_by_pattern,
            own_rings,
        }
    }

    /// Rough weight of a line some of whose pieces have a pattern of their own, one sum a pattern; and that of one piece by pattern.
    fn rough_by_pattern(
        &mut self,
        line: &Line,
        [density, shrink, unknown]: [Id; 3],
        patterns: &[PatternFigures],
    ) -> (Id, Vec<(Option<PatternId>, Id)>) {
        let place = Place::Line(line.id);
        let (mut parts, mut each) = (Vec::new(), Vec::new());
        for (id, count) in hung::by_pattern(&Hung { line: line.id, ..Hung::default() }, line) {
            let volume = id.and_then(|id| find_pattern(patterns, id)).map_or(unknown, |pattern| pattern.quote_volume);
            let rough = self.book.derive(&PIECE_ROUGH, place, [volume, density, shrink]);
            let pieces = self.book.entered(&PIECES, place, f64::from(count));
            parts.push(self.book.derive(&LINE_ROUGH, place, [rough, pieces]));
            each.push((id, rough));
        }
        (self.book.derive_over(&LINE_ROUGH_ALL, place, &parts), each)
    }

    fn per_gram(&mut self, alloy: Option<&EntryId>, prices: &[AlloyPrice], place: Place) -> Id {
        match alloy.and_then(|alloy| prices.iter().find(|price| price.alloy == *alloy)) {
            Some(price) => price.per_gram,
            None => self.book.absent(&super::price::ALLOY_PRICE, place, Cause::NotSaid),
        }
    }
}

/// The line without the pieces that are made in the stead of rejected ones; nothing where there are none.
fn without_remakes(line: &Line) -> Option<Line> {
    let remade = |own: &crate::job::PieceException| own.remake_of.is_some() && !own.cancelled;
    if !line.exceptions.values().any(remade) {
        return None;
    }
    let mut paid = line.clone();
    paid.exceptions.values_mut().filter(|own| remade(own)).for_each(|own| own.cancelled = true);
    Some(paid)
}

/// When a line is due.
pub(super) fn due(order: &Order, line: &Line) -> Option<Date> {
    line.due.or(order.due)
}

/// The pattern of an id, in the list sorted by id.
pub(super) fn find_pattern(patterns: &[PatternFigures], id: PatternId) -> Option<&PatternFigures> {
    place_of(patterns, id.0, |pattern| pattern.id.0).map(|place| &patterns[place])
}

/// What stands in where a line has no pattern or no alloy.
struct NoTerms {
    volume: Id,
    density: Id,
}
