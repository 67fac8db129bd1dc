//! What the lots drawn give a melt: fineness against the marks, returns, and lots that do not hold what is drawn.

use super::book::Id;
use super::by_id::ById;
use super::finding::{self, Arg};
use super::flask::FlaskFigures;
use super::melt::{
    DRAWN, DRAWN_IN_ALL, FINE_IN_ALL, FINE_IN_DRAW, LOT_DRAWN, LOT_FINENESS, LOT_RECEIVED, MARK_NEEDED, MELT_FINENESS, MeltFigures,
    RECEIVED, RETURNS, RETURNS_LIMIT, RETURNS_SHARE, TARGET_FINENESS,
};
use super::pass::Pass;
use super::rule::Trust;
use super::value::Cause;
use crate::job::{Draw, Event, Lot, LotId, LotKind, Melt, Place, standing};
use crate::stock::{Alloy, Element, EntryId};

/// What the pieces a melt is poured into ask of it.
#[derive(Default)]
pub(super) struct PiecesFed<'a> {
    /// Marks to be struck.
    marks: Vec<Id>,
    /// Whose pieces they are.
    clients: Vec<&'a str>,
}

impl<'a> Pass<'a> {
    /// Marks asked for on the pieces of these flasks, where they differ from the alloy's own.
    pub(super) fn pieces_fed(&mut self, fed: &[&FlaskFigures], by_id: &ById<'a>) -> PiecesFed<'a> {
        let job = self.job;
        let mut pieces = PiecesFed::default();
        let trees = fed.iter().filter_map(|flask| job.trees.iter().find(|tree| Some(tree.id) == flask.tree));
        for (_, found) in trees.flat_map(|tree| &tree.pieces).filter_map(|hung| by_id.line(hung.line)) {
            if let Some(mark) = found.line.mark_permille {
                pieces.marks.push(self.book.entered(&TARGET_FINENESS, Place::Line(found.line.id), mark.get()));
            }
            let client = found.order.client.trim();
            if pieces.clients.last() != Some(&client) {
                pieces.clients.push(client);
            }
        }
        pieces
    }

    /// What the lots drawn give; `None` where the alloy carries no mark.
    pub(super) fn drawn(&mut self, melt: &'a Melt, figures: &MeltFigures, alloy: Option<&EntryId>, fed: &PiecesFed<'a>) -> Option<Id> {
        let place = Place::Melt(melt.id);
        let studio = self.studio;
        let alloy = alloy.and_then(|id| self.shelf.get::<Alloy>(id.as_str()));
        let metal = alloy.and_then(|alloy| alloy.fineness).map(|mark| mark.metal);
        let (mut draws, mut fine, mut returns) = (Vec::new(), Vec::new(), Vec::new());
        for draw in &melt.charge {
            let grams = self.book.weighed(&DRAWN, place, draw.grams);
            draws.push(grams);
            let lot = studio.lots.iter().find(|lot| lot.id == draw.lot);
            self.lot_findings(melt, draw, lot, alloy, fed);
            if lot.is_some_and(|lot| lot.what == LotKind::Scrap) {
                returns.push(grams);
            }
            let Some(metal) = metal else { continue };
            let fineness = match lot.and_then(|lot| self.lot_fineness(lot, metal)) {
                Some(permille) => self.book.studio(&LOT_FINENESS, permille),
                None => {
                    self.find(&finding::LOT_FINENESS_UNKNOWN, place, vec![Arg::Text(draw.lot.to_string())]);
                    self.book.absent(&LOT_FINENESS, place, Cause::NotSaid)
                }
            };
            fine.push(self.book.derive(&FINE_IN_DRAW, place, [grams, fineness]));
        }
        let drawn = self.book.derive_over(&DRAWN_IN_ALL, place, &draws);
        if let (Some(has), Some(needs)) = (self.book.number(drawn), self.book.number(figures.charge))
            && has < needs
        {
            self.find_on(&finding::CHARGE_SHORT, place, drawn, vec![Arg::Figure(drawn), Arg::Figure(figures.charge)]);
        }
        self.returns(place, &returns, drawn, alloy);
        self.lots_short(melt);
        metal?;
        let fine = self.book.derive_over(&FINE_IN_ALL, place, &fine);
        let fineness = self.book.derive(&MELT_FINENESS, place, [fine, drawn]);
        self.under_mark(melt, fineness, alloy, &fed.marks);
        Some(fineness)
    }

    /// How much of `metal` a lot holds, in thousandths; `None` where neither its papers nor its alloy say. A lot accounted in another metal
    /// holds what its alloy says, or none.
    fn lot_fineness(&self, lot: &Lot, metal: Element) -> Option<f64> {
        let alloy = lot.alloy.as_ref().and_then(|id| self.shelf.get::<Alloy>(id.as_str()));
        let mark = alloy.and_then(|alloy| alloy.fineness);
        let counted_in = if lot.metal.is_empty() { mark.map(|mark| format!("{:?}", mark.metal)) } else { Some(lot.metal.clone()) };
        match counted_in {
            Some(counted_in) if counted_in == format!("{metal:?}") => {
                let by_mark = || Some(mark?.permille.get());
                lot.fineness_permille.map(crate::quantity::Finite::get).or_else(by_mark)
            }
            Some(_) => Some(alloy.map_or(0.0, |alloy| alloy.composition.of(metal).get())),
            // Base metal is what its alloy says; thousandths of nobody knows what are no fineness.
            None => Some(alloy?.composition.of(metal).get()),
        }
    }

    /// A target below the alloy's mark, or below a mark asked for on a piece, never excuses the melt.
    fn under_mark(&mut self, melt: &Melt, fineness: Id, alloy: Option<&Alloy>, marks: &[Id]) {
        let place = Place::Melt(melt.id);
        let mut marks = marks.to_vec();
        if let Some(target) = melt.target_permille {
            marks.push(self.book.entered(&TARGET_FINENESS, place, target.get()));
        }
        if let Some(Alloy { id, fineness: Some(mark), .. }) = alloy {
            marks.push(self.book.shelf_number(&TARGET_FINENESS, id, mark.permille.get(), "the alloy's mark", Trust::Standard));
        }
        let needed = self.book.derive_over(&MARK_NEEDED, place, &marks);
        if let (Some(has), Some(needs)) = (self.book.number(fineness), self.book.number(needed))
            && has < needs
        {
            self.find_on(&finding::UNDER_MARK, place, fineness, vec![Arg::Figure(fineness), Arg::Figure(needed)]);
        }
    }

    fn returns(&mut self, place: Place, returns: &[Id], drawn: Id, alloy: Option<&Alloy>) {
        let returns = self.book.derive_over(&RETURNS, place, returns);
        let share = self.book.derive(&RETURNS_SHARE, place, [returns, drawn]);
        let Some((alloy, limit)) = alloy.and_then(|alloy| Some((alloy, alloy.returns_limit.as_ref()?))) else { return };
        let limit = self.shelf_term(&RETURNS_LIMIT, &alloy.id, limit);
        if let (Some(has), Some(most)) = (self.book.number(share), self.book.number(limit))
            && has > most
        {
            self.find_on(&finding::RETURNS_OVER, place, share, vec![Arg::Figure(share), Arg::Figure(limit)]);
        }
    }

    /// Lots of which this job alone draws more than ever came in.
    fn lots_short(&mut self, melt: &Melt) {
        let place = Place::Melt(melt.id);
        let (job, studio) = (self.job, self.studio);
        let mut seen: Vec<&LotId> = Vec::new();
        for draw in &melt.charge {
            let Some(lot) = studio.lots.iter().find(|lot| lot.id == draw.lot) else { continue };
            if seen.contains(&&lot.id) {
                continue;
            }
            seen.push(&lot.id);
            let all = job.melts.iter().flat_map(|melt| &melt.charge).filter(|draw| draw.lot == lot.id);
            let back = standing(&job.record).filter_map(|entry| match &entry.event {
                Event::HandedBack { lot: Some(id), melt: None, grams, .. } if *id == lot.id => Some(*grams),
                _ => None,
            });
            let draws: Vec<Id> = all.map(|draw| draw.grams).chain(back).map(|grams| self.book.weighed(&DRAWN, place, grams)).collect();
            let receipts: Vec<Id> = lot.receipts.iter().map(|receipt| self.book.studio_grams(&RECEIVED, receipt.grams)).collect();
            let drawn = self.book.derive_over(&LOT_DRAWN, place, &draws);
            let received = self.book.derive_over(&LOT_RECEIVED, place, &receipts);
            if let (Some(drawn_g), Some(received_g)) = (self.book.number(drawn), self.book.number(received))
                && drawn_g > received_g
            {
                let args = vec![Arg::Text(lot.id.to_string()), Arg::Figure(drawn), Arg::Figure(received)];
                self.find_on(&finding::LOT_SHORT, place, drawn, args);
            }
        }
    }

    /// A client's own metal in nothing but that client's own pieces is not blended with anybody's.
    fn blends(&self, melt: &Melt, lot: &Lot, fed: &PiecesFed<'a>) -> bool {
        let owner = |id: &LotId| self.studio.lots.iter().find(|lot| lot.id == *id).map(|lot| lot.owner.trim());
        let own = Some(lot.owner.trim());
        melt.charge.iter().any(|draw| owner(&draw.lot) != own) || fed.clients.iter().any(|client| Some(*client) != own)
    }

    fn lot_findings(&mut self, melt: &Melt, draw: &Draw, lot: Option<&Lot>, alloy: Option<&Alloy>, fed: &PiecesFed<'a>) {
        let place = Place::Melt(melt.id);
        let Some(lot) = lot else {
            self.find(&finding::LOT_UNKNOWN, place, vec![Arg::Text(draw.lot.to_string())]);
            return;
        };
        let label = || Arg::Text(lot.id.to_string());
        let consented = || melt.consents.iter().any(|consent| consent.client == lot.owner);
        if !lot.owner.is_empty() && self.blends(melt, lot, fed) && !consented() {
            self.find(&finding::CLIENT_METAL, place, vec![Arg::Text(lot.owner.clone()), label()]);
        }
        if lot.what == LotKind::Refining {
            self.find(&finding::LOT_REFINING, place, vec![label()]);
        }
        let Some(alloy) = alloy else { return };
        let own = alloy.fineness.map(|mark| format!("{:?}", mark.metal));
        match &lot.alloy {
            Some(of) if *of != alloy.id => self.find(&finding::LOT_OTHER_METAL, place, vec![label(), Arg::Text(self.name_of(of))]),
            None if !lot.metal.is_empty() && lot.what != LotKind::MasterAlloy && own.is_none_or(|own| own != lot.metal) => {
                self.find(&finding::LOT_OTHER_METAL, place, vec![label(), Arg::Text(lot.metal.clone())]);
            }
            _ => {}
        }
    }
}
