//! Melts: the charge of all flasks poured from one crucible, whether it goes in, and what the lots drawn give.

use super::alloy::AlloyTerms;
use super::book::Id;
use super::by_id::ById;
use super::finding::{self, Arg};
use super::flask::FlaskFigures;
use super::pass::Pass;
use super::rule::{inputs, rules};
use super::value::Cause;
use crate::job::{Drive, FlaskId, Melt, MeltId, Place};
use crate::stock::{Alloy, Crucible, EntryId};
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
    /// Metal that came into a lot.
    RECEIVED "lot.receipt" Mass;
    /// Share of returns a charge may hold.
    RETURNS_LIMIT "alloy.returns-limit" Ratio;
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
    /// The most metal of an alloy that a crucible takes.
    CRUCIBLE_MOST "melt.crucible-most" (usable: Volume, density: Density) -> Mass
        = Formula "usable*density" { usable * density };
        Computed "the volume that may be molten metal, times the liquid's density"
    /// The least metal of an alloy that a spin throws out of a crucible cleanly.
    CRUCIBLE_LEAST "melt.crucible-least" (least: Ratio, usable: Volume, density: Density) -> Mass
        = Formula "least*usable*density" { least * usable * density };
        Computed "the least share of that volume, times the liquid's density"
    /// Metal drawn in all.
    DRAWN_IN_ALL "melt.drawn" (draw: Mass) -> Mass = Sum "sum(draw)"; Computed "all draws"
    /// Fine metal in a draw.
    FINE_IN_DRAW "melt.fine-in-draw" (draw: Mass, fineness: Fineness) -> Mass
        = Exact "draw*fineness/1000" { draw.checked_mul(&fineness)?.checked_div(&Ratio::from_integer(1000)) };
        Computed "by the lot's figures, not assayed"
    /// Fine metal drawn in all.
    FINE_IN_ALL "melt.fine" (fine: Mass) -> Mass = Sum "sum(fine)"; Computed "all draws"
    /// What the melt must reach: the highest of what was asked for, the alloy's mark and the marks of its pieces.
    MARK_NEEDED "melt.mark" (mark: Fineness) -> Fineness = Most "max(mark)"; Standard "no minus tolerance: ISO 9202 (by its public summary)"
    /// Returns drawn.
    RETURNS "melt.returns" (draw: Mass) -> Mass = Sum "sum(draw)"; Computed "draws on lots of own scrap"
    /// Share of returns in the charge.
    RETURNS_SHARE "melt.returns-share" (returns: Mass, drawn: Mass) -> Ratio
        = Formula "returns/drawn" { returns / drawn };
        Computed "scrap over all that is drawn"
    /// Drawn from one lot in this job.
    LOT_DRAWN "lot.drawn" (draw: Mass) -> Mass = Sum "sum(draw)"; Computed "all melts of this job"
    /// What came into a lot.
    LOT_RECEIVED "lot.received" (receipt: Mass) -> Mass = Sum "sum(receipt)"; Computed "all receipts; other jobs may have drawn on it too"
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
    /// The most metal the crucible takes, where one was chosen.
    pub most: Option<Id>,
    /// The least that a spin throws out of it cleanly, where it is spun and the shelf says it.
    pub least: Option<Id>,
    /// How full the crucible is, where one was chosen.
    pub fill: Option<Id>,
    /// Fineness by the lots drawn, where any were.
    pub fineness: Option<Id>,
}

impl<'a> Pass<'a> {
    pub(super) fn melts(&mut self, flasks: &[FlaskFigures], by_id: &ById<'a>) -> Vec<MeltFigures> {
        let job = self.job;
        let mut melts: Vec<MeltFigures> = job.melts.iter().map(|melt| self.melt(melt, flasks, by_id)).collect();
        for flask in flasks.iter().filter(|flask| flask.melt.is_none()) {
            let place = Place::Flask(flask.id);
            melts.push(self.poured(None, place, &[flask], None));
        }
        melts
    }

    fn melt(&mut self, melt: &'a Melt, flasks: &[FlaskFigures], by_id: &ById<'a>) -> MeltFigures {
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
        if !melt.charge.is_empty() {
            let pieces = self.pieces_fed(&fed, by_id);
            figures.fineness = self.drawn(melt, &figures, alloy, &pieces);
        }
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
        let spun = self.spun(fed);
        let (mut most, mut least) = (None, None);
        let fill = crucible.map(|crucible| {
            let usable = self.shelf_term(&USABLE, &crucible.id, &crucible.usable_cm3);
            let fill = self.book.derive(&FILL, place, [molten, usable]);
            most = Some(self.book.derive(&CRUCIBLE_MOST, place, [usable, density]));
            least = crucible.least_fill.as_ref().filter(|_| spun).map(|share| {
                let share = self.shelf_term(&LEAST_FILL, &crucible.id, share);
                self.book.derive(&CRUCIBLE_LEAST, place, [share, usable, density])
            });
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
            most,
            least,
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
        if let (true, Some(least), Some(share)) = (self.spun(fed), &crucible.least_fill, share)
            && share < least.value
        {
            self.find_on(&finding::CRUCIBLE_LOW, place, fill, vec![Arg::Figure(molten), Arg::Figure(usable), name]);
        }
    }

    /// Is any of them spun?
    fn spun(&self, fed: &[&FlaskFigures]) -> bool {
        fed.iter().any(|flask| self.job.flasks.iter().any(|other| other.id == flask.id && other.drive == Drive::Centrifugal))
    }

    fn smallest_crucible(&self, alloy: Option<AlloyTerms<'a>>, molten: Id) -> Option<EntryId> {
        let (alloy, molten) = (alloy?.alloy, self.book.number(molten)?);
        let fits = self.shelf.all::<Crucible>().filter(|crucible| crucible.usable_cm3.value >= molten && may_melt(crucible, alloy));
        fits.min_by(|a, b| a.usable_cm3.value.total_cmp(&b.usable_cm3.value)).map(|crucible| crucible.id.clone())
    }
}

/// Is the crucible of the right family, and does it stand the heat?
pub(super) fn may_melt(crucible: &Crucible, alloy: &Alloy) -> bool {
    crucible.families.contains(&alloy.family) && alloy.highest_pour_c().is_none_or(|pour_c| pour_c <= crucible.ceiling_c.value)
}
