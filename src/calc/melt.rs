//! Melts: the charge of all flasks poured from one crucible, whether it goes in, and what the lots drawn give.

use super::alloy::AlloyTerms;
use super::book::Id;
use super::finding::{self, Arg};
use super::flask::FlaskFigures;
use super::pass::Pass;
use super::rule::{inputs, rules};
use super::value::Cause;
use crate::job::{Draw, Drive, FlaskId, Lot, Melt, MeltId, Place};
use crate::stock::{Alloy, Crucible, Element, EntryId};
use num_rational::Ratio;
use num_traits::CheckedDiv;
use num_traits::CheckedMul;

inputs! {
    /// What the crucible may hold molten.
    USABLE "crucible.usable" Volume;
    /// Least share of it that a spin throws out cleanly.
    LEAST_FILL "crucible.least-fill" Ratio;
    /// Metal drawn from a lot.
    DRAWN "melt.draw" Mass;
    /// Fineness of a lot, by its papers.
    LOT_FINENESS "lot.fineness" Fineness;
    /// The fineness the melt is to reach.
    TARGET_FINENESS "melt.target" Fineness;
}

rules! {
    /// The charge of all flasks of a melt.
    MELT_CHARGE "melt.charge" (charge: Mass) -> Mass = Sum "sum(charge)"; Computed "the flasks poured from this crucible"
    /// What the charge takes up when molten.
    MOLTEN "melt.molten-volume" (charge: Mass, density: Density) -> Volume
        = Formula "charge/density" { charge / density };
        Computed "mass over the density of the liquid"
    /// How full the crucible is.
    FILL "melt.crucible-fill" (molten: Volume, usable: Volume) -> Ratio
        = Formula "molten/usable" { molten / usable };
        Computed "share of the volume that may be molten metal"
    /// Metal drawn in all.
    DRAWN_IN_ALL "melt.drawn" (draw: Mass) -> Mass = Sum "sum(draw)"; Computed "all draws"
    /// Fine metal in a draw.
    FINE_IN_DRAW "melt.fine-in-draw" (draw: Mass, fineness: Fineness) -> Mass
        = Exact "draw*fineness/1000" { draw.checked_mul(&fineness)?.checked_div(&Ratio::from_integer(1000)) };
        Computed "by the lot's figures, not assayed"
    /// Fine metal drawn in all.
    FINE_IN_ALL "melt.fine" (fine: Mass) -> Mass = Sum "sum(fine)"; Computed "all draws"
    /// Fineness of the melt.
    MELT_FINENESS "melt.fineness" (fine: Mass, drawn: Mass) -> Fineness
        = Exact "1000*fine/drawn" { Ratio::from_integer(1000).checked_mul(&fine)?.checked_div(&drawn) };
        Computed "by the lots' figures, not assayed"
}

/// Figures of one melt; a flask that names none has a melt of its own.
#[derive(Debug, Clone)]
pub struct MeltFigures {
    /// The melt, where the job names it.
    pub id: Option<MeltId>,
    /// Where its figures stand.
    pub place: Place,
    /// The flasks poured from it.
    pub flasks: Vec<FlaskId>,
    /// The charge.
    pub charge: Id,
    /// What it takes up when molten.
    pub molten: Id,
    /// The crucible chosen.
    pub crucible: Option<EntryId>,
    /// The smallest crucible of the shelf that takes it, where none was chosen.
    pub smallest: Option<EntryId>,
    /// How full the crucible is, where one was chosen.
    pub fill: Option<Id>,
    /// Fineness by the lots drawn, where any were.
    pub fineness: Option<Id>,
}

impl<'a> Pass<'a> {
    pub(super) fn melts(&mut self, flasks: &[FlaskFigures]) -> Vec<MeltFigures> {
        let job = self.job;
        let mut melts: Vec<MeltFigures> = job.melts.iter().map(|melt| self.melt(melt, flasks)).collect();
        for flask in flasks.iter().filter(|flask| flask.melt.is_none()) {
            let place = Place::Flask(flask.id);
            melts.push(self.poured(None, place, &[flask], None));
        }
        melts
    }

    fn melt(&mut self, melt: &'a Melt, flasks: &[FlaskFigures]) -> MeltFigures {
        let place = Place::Melt(melt.id);
        let fed: Vec<&FlaskFigures> = flasks.iter().filter(|flask| flask.melt == Some(melt.id)).collect();
        let mut alloys: Vec<&EntryId> = Vec::new();
        for alloy in fed.iter().filter_map(|flask| flask.alloy.as_ref()) {
            if !alloys.contains(&alloy) {
                alloys.push(alloy);
            }
        }
        if let [first, second, ..] = alloys.as_slice() {
            let args = vec![Arg::Text(self.name_of(first)), Arg::Text(self.name_of(second))];
            self.find(&finding::MELT_TWO_ALLOYS, place, args);
        }
        let crucible = self.entry::<Crucible>(melt.crucible.as_ref(), place);
        let mut figures = self.poured(Some(melt.id), place, &fed, crucible);
        let alloy = fed.iter().find_map(|flask| flask.alloy.as_ref());
        figures.fineness = self.drawn(melt, &figures, alloy);
        figures
    }

    fn poured(&mut self, id: Option<MeltId>, place: Place, fed: &[&FlaskFigures], crucible: Option<&'a Crucible>) -> MeltFigures {
        let charges: Vec<Id> = fed.iter().map(|flask| flask.metal.on_balance).collect();
        let charge = self.book.derive_over(&MELT_CHARGE, place, &charges);
        let alloy_id = fed.iter().find_map(|flask| flask.alloy.as_ref());
        let alloy = self.alloy(alloy_id, place);
        let density =
            alloy.map_or_else(|| self.book.absent(&super::metal::FLASK_ALLOY, place, Cause::NotChosen), |alloy| alloy.liquid_density);
        let molten = self.book.derive(&MOLTEN, place, [charge, density]);
        let fill = crucible.map(|crucible| {
            let usable = self.shelf_term(&USABLE, &crucible.id, &crucible.usable_cm3);
            let fill = self.book.derive(&FILL, place, [molten, usable]);
            self.crucible_findings(place, crucible, alloy, fed, [molten, usable, fill]);
            fill
        });
        let smallest = if crucible.is_none() { self.smallest_crucible(alloy, molten) } else { None };
        MeltFigures {
            id,
            place,
            flasks: fed.iter().map(|flask| flask.id).collect(),
            charge,
            molten,
            crucible: crucible.map(|crucible| crucible.id.clone()),
            smallest,
            fill,
            fineness: None,
        }
    }

    fn crucible_findings(
        &mut self,
        place: Place,
        crucible: &'a Crucible,
        alloy: Option<AlloyTerms<'a>>,
        fed: &[&FlaskFigures],
        [molten, usable, fill]: [Id; 3],
    ) {
        let name = Arg::Text(crucible.name.clone());
        let share = self.book.number(fill);
        if share.is_some_and(|share| share > 1.0) {
            self.find_on(&finding::CRUCIBLE_FULL, place, fill, vec![Arg::Figure(molten), Arg::Figure(usable), name.clone()]);
        }
        if let Some(alloy) = alloy
            && !may_melt(crucible, alloy.alloy)
        {
            self.find(&finding::CRUCIBLE_WRONG, place, vec![name.clone(), Arg::Text(alloy.alloy.name.clone())]);
        }
        let job = self.job;
        let spun = fed.iter().any(|flask| job.flasks.iter().any(|other| other.id == flask.id && other.drive == Drive::Centrifugal));
        if let (true, Some(least), Some(share)) = (spun, &crucible.least_fill, share)
            && share < least.value
        {
            self.shelf_term(&LEAST_FILL, &crucible.id, least);
            self.find_on(&finding::CRUCIBLE_LOW, place, fill, vec![Arg::Figure(molten), Arg::Figure(usable), name]);
        }
    }

    fn smallest_crucible(&self, alloy: Option<AlloyTerms<'a>>, molten: Id) -> Option<EntryId> {
        let (alloy, molten) = (alloy?.alloy, self.book.number(molten)?);
        let fits = self.shelf.all::<Crucible>().filter(|crucible| crucible.usable_cm3.value >= molten && may_melt(crucible, alloy));
        fits.min_by(|a, b| a.usable_cm3.value.total_cmp(&b.usable_cm3.value)).map(|crucible| crucible.id.clone())
    }

    /// What the lots drawn give; `None` where nothing is drawn yet.
    fn drawn(&mut self, melt: &'a Melt, figures: &MeltFigures, alloy: Option<&EntryId>) -> Option<Id> {
        let place = Place::Melt(melt.id);
        if melt.charge.is_empty() {
            return None;
        }
        let studio = self.studio;
        let mark = alloy.and_then(|id| self.shelf.get::<Alloy>(id.as_str())?.fineness);
        let (mut draws, mut fine) = (Vec::new(), Vec::new());
        for draw in &melt.charge {
            let grams = self.book.weighed(&DRAWN, place, draw.grams);
            draws.push(grams);
            let lot = studio.lots.iter().find(|lot| lot.id == draw.lot);
            self.lot_findings(melt, draw, lot, alloy);
            let Some(mark) = mark else { continue };
            let fineness = match lot.and_then(|lot| self.lot_fineness(lot, mark.metal)) {
                Some(permille) => self.book.studio(&LOT_FINENESS, permille),
                None => self.book.absent(&LOT_FINENESS, place, Cause::NotSaid),
            };
            fine.push(self.book.derive(&FINE_IN_DRAW, place, [grams, fineness]));
        }
        let drawn = self.book.derive_over(&DRAWN_IN_ALL, place, &draws);
        if let (Some(has), Some(needs)) = (self.book.number(drawn), self.book.number(figures.charge))
            && has < needs
        {
            self.find_on(&finding::CHARGE_SHORT, place, drawn, vec![Arg::Figure(drawn), Arg::Figure(figures.charge)]);
        }
        mark?;
        let fine = self.book.derive_over(&FINE_IN_ALL, place, &fine);
        let fineness = self.book.derive(&MELT_FINENESS, place, [fine, drawn]);
        self.under_mark(melt, fineness, alloy);
        Some(fineness)
    }

    /// How much of `metal` a lot holds, in thousandths. A lot that is accounted in another metal holds what its alloy says, or none.
    fn lot_fineness(&self, lot: &Lot, metal: Element) -> Option<f64> {
        let alloy = lot.alloy.as_ref().and_then(|id| self.shelf.get::<Alloy>(id.as_str()));
        let mark = alloy.and_then(|alloy| alloy.fineness);
        let counted_in = if lot.metal.is_empty() { mark.map(|mark| format!("{:?}", mark.metal)) } else { Some(lot.metal.clone()) };
        if counted_in.is_some_and(|counted_in| counted_in != format!("{metal:?}")) {
            return Some(alloy.map_or(0.0, |alloy| alloy.composition.of(metal).get()));
        }
        let by_mark = || Some(mark?.permille.get());
        lot.fineness_permille.map(crate::quantity::Finite::get).or_else(by_mark)
    }

    fn under_mark(&mut self, melt: &Melt, fineness: Id, alloy: Option<&EntryId>) {
        let place = Place::Melt(melt.id);
        let mark = match (melt.target_permille, alloy.and_then(|id| self.shelf.get::<Alloy>(id.as_str()))) {
            (Some(target), _) => self.book.entered(&TARGET_FINENESS, place, target.get()),
            (None, Some(Alloy { id, fineness: Some(mark), .. })) => {
                let trust = super::rule::Trust::Standard;
                self.book.shelf_number(&TARGET_FINENESS, id, mark.permille.get(), "the alloy's mark", trust)
            }
            _ => return,
        };
        if let (Some(has), Some(needs)) = (self.book.number(fineness), self.book.number(mark))
            && has < needs
        {
            self.find_on(&finding::UNDER_MARK, place, fineness, vec![Arg::Figure(fineness), Arg::Figure(mark)]);
        }
    }

    fn lot_findings(&mut self, melt: &Melt, draw: &Draw, lot: Option<&Lot>, alloy: Option<&EntryId>) {
        let place = Place::Melt(melt.id);
        let Some(lot) = lot else {
            self.find(&finding::LOT_UNKNOWN, place, vec![Arg::Text(draw.lot.to_string())]);
            return;
        };
        if !lot.owner.is_empty() && melt.consents.iter().all(|consent| consent.client != lot.owner) {
            self.find(&finding::CLIENT_METAL, place, vec![Arg::Text(lot.owner.clone()), Arg::Text(lot.id.to_string())]);
        }
        if let (Some(of), Some(alloy)) = (&lot.alloy, alloy)
            && of != alloy
        {
            self.find(&finding::LOT_OTHER_METAL, place, vec![Arg::Text(lot.id.to_string()), Arg::Text(self.name_of(of))]);
        }
    }
}

/// Is the crucible of the right family, and does it stand the heat?
fn may_melt(crucible: &Crucible, alloy: &Alloy) -> bool {
    crucible.families.contains(&alloy.family) && alloy.highest_pour_c().is_none_or(|pour_c| pour_c <= crucible.ceiling_c.value)
}
