//! The density of a pattern material, by a sample weighed dry and then, held down by a sinker because wax floats, in water.

use std::collections::BTreeMap;

use super::book::Id;
use super::finding::{self, Arg};
use super::pass::Pass;
use super::pattern::MATERIAL_DENSITY;
use super::rule::{givens, inputs, rules};
use crate::job::{Place, WaterWeighing};
use crate::quantity::Grams;
use crate::stock::{EntryId, PatternMaterial, Shelf};

inputs! {
    /// The sample alone.
    DRY "weighing.dry" Mass;
    /// The sinker in water.
    SINKER "weighing.sinker" Mass;
    /// Sample and sinker in water.
    BOTH "weighing.both" Mass;
    /// Temperature of the water.
    WATER "weighing.water" Temperature;
}

givens! {
    /// Water that nobody measured.
    WATER_ROOM "weighing.water" Temperature = 20.0; CommonPractice "water that stood in the room; 5 K more make it 0.12 % lighter"
}

rules! {
    /// Density of water.
    WATER_DENSITY "weighing.water-density" (water: Temperature) -> Density
        = Lookup "CIPM 2001 equation for the density of water without air at 101.325 kPa, 0 to 40 °C" { water_density_g_cm3(water) };
        Published "M. Tanaka et al. 2001, Recommended table for the density of water between 0 °C and 40 °C, Metrologia 38, equation 1"
    /// Water that the sample pushes aside.
    DISPLACED "weighing.displaced" (dry: Mass, sinker: Mass, both: Mass) -> Mass
        = Decimal "dry + sinker - both" { dry.checked_add(sinker)?.checked_sub(both) };
        Computed "Archimedes: what is in water weighs less by the water it pushes aside"
    /// Density of the sample.
    DENSITY "weighing.density" (dry: Mass, water: Density, displaced: Mass) -> Density
        = Formula "dry*water/displaced" { dry * water / displaced };
        Computed "mass over volume, the volume being that of the water pushed aside; the air's lift is left out, under 0.02 % for wax and resin"
    /// How far the balance leaves it open.
    WITHIN "weighing.within" (density: Density, step: Mass, dry: Mass, displaced: Mass) -> Density
        = Formula "density*step/2*(abs(1/dry - 1/displaced) + 2/displaced)" {
            density * step / 2.0 * ((1.0 / dry - 1.0 / displaced).abs() + 2.0 / displaced)
        };
        Computed "each of the three readings may be half a step of the balance off, all to the bad side"
    /// The same as a share.
    WITHIN_SHARE "weighing.within-share" (within: Density, density: Density) -> Ratio
        = Formula "within/density" { within / density };
        Computed "uncertainty over density"
    /// How far it lies from the shelf's.
    OFF_SHELF "weighing.off-shelf" (weighed: Density, shelf: Density) -> Ratio
        = Formula "abs(weighed - shelf)/shelf" { (weighed - shelf).abs() / shelf };
        Computed "share by which the sample differs from the shelf's density"
}

/// Density of air-free water in g/cm³ at `water_c` (0 to 40 °C) and 101.325 kPa; NaN outside. Tanaka et al. 2001, equation 1.
#[must_use]
pub fn water_density_g_cm3(water_c: f64) -> f64 {
    const A: [f64; 5] = [-3.983_035, 301.797, 522_528.9, 69.348_81, 999.974_950];
    if !(0.0..=40.0).contains(&water_c) {
        return f64::NAN;
    }
    A[4] * (1.0 - (water_c + A[0]).powi(2) * (water_c + A[1]) / (A[2] * (water_c + A[3]))) / 1000.0
}

/// A density that is less sure than this is worth nothing: the shelf's is as good.
const SURE: f64 = 0.01;
/// From here on the shelf's density would be felt in the charge.
const APART: f64 = 0.03;

/// Figures of one weighing.
#[derive(Debug, Clone, Copy)]
pub struct WeighingFigures {
    /// Its place in the studio's list, from 0.
    pub row: usize,
    /// Density of the sample.
    pub density: Id,
    /// ± of it.
    pub within: Id,
    /// ± as a share.
    pub share: Id,
    /// How far it lies from the shelf's, where the shelf has the material.
    pub off_shelf: Option<Id>,
}

/// The rows that count for their materials: the latest of each.
fn latest(rows: &[WaterWeighing]) -> BTreeMap<&EntryId, usize> {
    let mut latest: BTreeMap<&EntryId, usize> = BTreeMap::new();
    for (row, weighing) in rows.iter().enumerate() {
        let Some(material) = &weighing.material else { continue };
        let kept = latest.entry(material).or_insert(row);
        // Of one day the one written later.
        if rows[*kept].on <= weighing.on {
            *kept = row;
        }
    }
    latest
}

impl Pass<'_> {
    /// What the studio's samples come to; `today` is the shelf they are held against.
    pub(super) fn weighings(&mut self, today: &Shelf) -> Vec<WeighingFigures> {
        let studio = self.studio;
        if studio.water_weighings.is_empty() {
            return Vec::new();
        }
        let latest = latest(&studio.water_weighings);
        let step = self.balance_step(Place::Studio);
        let mut found = Vec::new();
        for (row, weighing) in studio.water_weighings.iter().enumerate() {
            let (Some(dry), Some(sinker), Some(both)) = (weighing.dry, weighing.sinker_in_water, weighing.both_in_water) else { continue };
            let mut figures = self.weighing(row, weighing, [dry, sinker, both], step);
            let material = weighing.material.as_ref().and_then(|id| today.get::<PatternMaterial>(id.as_str()));
            if let Some(material) = material {
                let shelf = self.book.shelf(&MATERIAL_DENSITY, &material.id, &material.density_g_cm3);
                let off = self.book.derive(&OFF_SHELF, Place::Studio, [figures.density, shelf]);
                figures.off_shelf = Some(off);
                if latest.get(&material.id) == Some(&row) {
                    self.weighing_findings(&figures, material, [shelf, off]);
                }
            }
            found.push(figures);
        }
        found
    }

    fn weighing(&mut self, row: usize, weighing: &WaterWeighing, grams: [Grams; 3], step: Id) -> WeighingFigures {
        let place = Place::Studio;
        let [dry, sinker, both] = grams;
        let dry = self.book.studio_grams(&DRY, dry);
        let sinker = self.book.studio_grams(&SINKER, sinker);
        let both = self.book.studio_grams(&BOTH, both);
        let water_at = match weighing.water_c {
            Some(water_c) => self.book.studio(&WATER, water_c.get()),
            None => self.book.assumed(&WATER_ROOM, place),
        };
        let water = self.book.derive(&WATER_DENSITY, place, [water_at]);
        let displaced = self.book.derive(&DISPLACED, place, [dry, sinker, both]);
        let density = self.book.derive(&DENSITY, place, [dry, water, displaced]);
        let within = self.book.derive(&WITHIN, place, [density, step, dry, displaced]);
        let share = self.book.derive(&WITHIN_SHARE, place, [within, density]);
        WeighingFigures { row, density, within, share, off_shelf: None }
    }

    fn weighing_findings(&mut self, figures: &WeighingFigures, material: &PatternMaterial, [shelf, off]: [Id; 2]) {
        let name = || Arg::Text(material.name.clone());
        let sure = self.book.number(figures.share).is_some_and(|share| share <= SURE);
        if !sure && self.book.number(figures.share).is_some() {
            let args = vec![name(), Arg::Figure(figures.density), Arg::Figure(figures.within)];
            self.find_on(&finding::SAMPLE_LIGHT, Place::Studio, figures.share, args);
        }
        // What is not sure itself says nothing against the shelf.
        if sure && self.book.number(off).is_some_and(|share| share > APART) {
            let args = vec![name(), Arg::Figure(figures.density), Arg::Figure(shelf)];
            self.find_on(&finding::DENSITY_OFF_SHELF, Place::Studio, off, args);
        }
    }
}
