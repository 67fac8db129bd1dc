//! The print plan: layers, time, resin and plates of each print run.

use super::book::Id;
use super::finding::{self, Arg};
use super::pass::Pass;
use super::pattern::{MATERIAL_DENSITY, PatternFigures};
use super::price::{PER_GRAM, PRICE_FOR};
use super::rule::{givens, inputs, rules};
use super::value::Cause;
use crate::job::{Job, PatternId, Place, PrintId, PrintRun, PrintSetting, Printer};
use crate::quantity::{Finite, half_up};
use crate::stock::PatternMaterial;

inputs! {
    /// Prints of one pattern.
    COUNT "print.count" Count;
    /// Width of a part on the plate.
    PART_X "print.part-x" Length;
    /// Depth of a part on the plate.
    PART_Y "print.part-y" Length;
    /// Height of a part above the plate.
    PART_HEIGHT "print.part-height" Length;
    /// Width of the plate.
    PLATE_X "print.plate-x" Length;
    /// Depth of the plate.
    PLATE_Y "print.plate-y" Length;
    /// The highest part the printer takes.
    ROOM "print.room" Length;
    /// Room between two parts.
    GAP "print.gap" Length;
    /// Thickness of a layer.
    LAYER "print.layer" Length;
    /// Layers that are lit longer.
    BASE_LAYERS "print.base-layers" Count;
    /// Light for each of those.
    BASE_EXPOSURE "print.base-exposure" Duration;
    /// Light for each of the others.
    EXPOSURE "print.exposure" Duration;
    /// Lift, return and rest, a layer.
    TRAVEL "print.travel" Duration;
    /// Supports and waste as a share of the parts.
    SUPPORTS "print.supports" Ratio;
    /// Price of the resin.
    RESIN_PRICE "print.resin-price" Money;
    /// Plates that all parts need.
    PLATES "print.plates" Count;
}

givens! {
    /// Room between two parts where the printer does not say.
    GAP_DEFAULT "print.gap" Length = 2.0; CommonPractice "2 mm between parts, so that they can be washed and taken off: common practice, no source"
    /// No layers are lit longer until the printer's setting says so.
    NO_BASE "print.base-layers" Count = 0.0; CommonPractice "none until the printer's setting says so"
    /// Supports where the printer's setting does not say.
    SUPPORTS_DEFAULT "print.supports" Ratio = 0.2; CommonPractice "a fifth of the part for supports and what is washed away: common practice, no source; weigh a bottle before and after"
}

rules! {
    /// Height of the highest part.
    HIGHEST "print.highest" (height: Length) -> Length
        = Most "max(height)";
        Computed "a plate is done when its highest part is"
    /// Layers for that height.
    LAYERS "print.layers" (height: Length, layer: Length) -> Count
        = Formula "ceil(height/layer - 0.000001)" { (height / layer - 0.000_001).ceil() };
        Computed "whole layers; less than a millionth of a layer is no further one"
    /// Time of one plate.
    TIME "print.time" (layers: Count, base: Count, base_light: Duration, light: Duration, travel: Duration) -> Duration
        = Formula "min(layers, base)*(base_light + travel) + (layers - min(layers, base))*(light + travel)" {
            let base = layers.min(base);
            base * (base_light + travel) + (layers - base) * (light + travel)
        };
        Computed "every layer is lit once and the plate moves once; many parts take no longer than one"
    /// Time of all plates.
    TIME_ALL "print.time-all" (plates: Count, time: Duration) -> Duration
        = Formula "plates*time" { plates * time };
        Computed "each plate as high as the highest part: an upper bound where the parts differ"
    /// How many of one part a plate takes, all alike.
    FITS "print.fits" (plate_x: Length, plate_y: Length, gap: Length, x: Length, y: Length) -> Count
        = Formula "max(floor((plate_x + gap)/(x + gap) + 0.000001)*floor((plate_y + gap)/(y + gap) + 0.000001), floor((plate_x + gap)/(y + gap) + 0.000001)*floor((plate_y + gap)/(x + gap) + 0.000001))" {
            let times = |plate: f64, side: f64| ((plate + gap) / (side + gap) + 0.000_001).floor();
            (times(plate_x, x) * times(plate_y, y)).max(times(plate_x, y) * times(plate_y, x))
        };
        Computed "rows and columns of parts that all lie one way, or all turned by a quarter"
    /// What parts take of the plate.
    GROUND "print.ground" (count: Count, x: Length, y: Length, gap: Length) -> Area
        = Formula "count*(x + gap)*(y + gap)" { count * (x + gap) * (y + gap) };
        Computed "each part with half a gap around it"
    /// What all parts take.
    GROUND_ALL "print.ground-all" (ground: Area) -> Area
        = Sum "sum(ground)";
        Computed "sum over the patterns"
    /// Plates there must be at least.
    PLATES_LEAST "print.plates-least" (ground: Area, plate_x: Length, plate_y: Length, gap: Length) -> Count
        = Formula "ceil(ground/((plate_x + gap)*(plate_y + gap)) - 0.000001)" {
            (ground / ((plate_x + gap) * (plate_y + gap)) - 0.000_001).ceil()
        };
        Computed "no arrangement puts more on a plate than its area"
    /// Volume of all prints of one pattern.
    ROW_VOLUME "print.row-volume" (count: Count, volume: Volume) -> Volume
        = Formula "count*volume" { count * volume };
        Computed "count times volume"
    /// Volume of all parts.
    PARTS_VOLUME "print.parts-volume" (volume: Volume) -> Volume
        = Sum "sum(volume)";
        Computed "sum over the patterns"
    /// Resin that is used up.
    RESIN "print.resin" (parts: Volume, supports: Ratio) -> Volume
        = Formula "parts*(1 + supports)" { parts * (1.0 + supports) };
        Computed "parts, and supports as a share of them"
    /// The same on the scale.
    RESIN_MASS "print.resin-mass" (resin: Volume, density: Density) -> Mass
        = Formula "resin*density" { resin * density };
        Computed "volume times density; the density is the cured material's, liquid resin is a few per cent lighter"
    /// What it costs.
    COST "print.cost" (mass: Mass, price: PricePerGram) -> Money
        = Decimal "round2(mass*price)" { Some(half_up(mass.checked_mul(price)?, 2)) };
        Computed "mass times price, to the cent"
}

/// Figures of one row of a run.
#[derive(Debug, Clone, Copy)]
pub struct PrintRowFigures {
    /// The pattern.
    pub pattern: PatternId,
    /// Width, depth and height of one part on the plate.
    pub size: [Id; 3],
    /// How many a plate takes of it alone.
    pub fits: Id,
    /// Volume of all of them.
    pub volume: Id,
    pub(super) ground: Id,
    pub(super) count: Id,
}

/// Figures of one print run.
#[derive(Debug, Clone)]
pub struct PrintFigures {
    /// The run.
    pub id: PrintId,
    /// Its rows, in its order.
    pub rows: Vec<PrintRowFigures>,
    /// Height of the highest part.
    pub highest: Id,
    /// Layers for it.
    pub layers: Id,
    /// Time of one plate.
    pub time: Id,
    /// Plates, by an arrangement that was found.
    pub plates: Id,
    /// Plates there must be at least.
    pub plates_least: Id,
    /// Time of all plates.
    pub time_all: Id,
    /// Resin for parts and supports.
    pub resin: Id,
    /// The same on the scale.
    pub mass: Id,
    /// What it costs, where the setting says a price.
    pub cost: Option<Id>,
}

impl<'a> Pass<'a> {
    /// The print plan of every run, in the job's order.
    pub(super) fn prints(&mut self, patterns: &[PatternFigures]) -> Vec<PrintFigures> {
        let job: &'a Job = self.job;
        job.prints.iter().map(|run| self.print_run(run, patterns)).collect()
    }

    fn print_run(&mut self, run: &'a PrintRun, patterns: &[PatternFigures]) -> PrintFigures {
        let place = Place::Print(run.id);
        let material = self.entry::<PatternMaterial>(run.material.as_ref(), place);
        let printer = self.printer_of(run);
        let setting = printer.and_then(|printer| self.setting_of(run, printer));
        let plate = self.plate(printer, place);
        let rows: Vec<PrintRowFigures> = run.rows.iter().map(|row| self.print_row(row, &plate, patterns, place)).collect();
        let of = |part: fn(&PrintRowFigures) -> Id| rows.iter().map(part).collect::<Vec<_>>();
        let highest = self.book.derive_over(&HIGHEST, place, &of(|row| row.size[2]));
        let (layers, time) = self.print_time(highest, setting, place);
        let ground = self.book.derive_over(&GROUND_ALL, place, &of(|row| row.ground));
        let [plate_x, plate_y] = plate.sides;
        let plates_least = self.book.derive(&PLATES_LEAST, place, [ground, plate_x, plate_y, plate.gap]);
        let plates = self.plates_needed(&rows, &plate, place);
        let time_all = self.book.derive(&TIME_ALL, place, [plates, time]);
        let parts = self.book.derive_over(&PARTS_VOLUME, place, &of(|row| row.volume));
        let supports = match setting.and_then(|setting| setting.supports_share) {
            Some(share) => self.book.studio(&SUPPORTS, share.get()),
            None => self.book.assumed(&SUPPORTS_DEFAULT, place),
        };
        let resin = self.book.derive(&RESIN, place, [parts, supports]);
        let density = match material {
            Some(material) => self.shelf_term(&MATERIAL_DENSITY, &material.id, &material.density_g_cm3),
            None => self.book.absent(&MATERIAL_DENSITY, place, Cause::NotChosen),
        };
        let mass = self.book.derive(&RESIN_MASS, place, [resin, density]);
        let cost = setting.and_then(|setting| setting.price_per_kg).map(|price| {
            let price = self.book.studio_money(&RESIN_PRICE, price);
            let kilogram = self.book.studio(&PRICE_FOR, 1000.0);
            let per_gram = self.book.derive(&PER_GRAM, Place::Studio, [price, kilogram]);
            self.book.derive(&COST, place, [mass, per_gram])
        });
        self.parts_that_do_not_fit(&rows, &plate, place);
        self.after_print(run, material, patterns);
        self.calibrated(run, printer);
        PrintFigures { id: run.id, rows, highest, layers, time, plates, plates_least, time_all, resin, mass, cost }
    }

    /// The studio's printer of that name.
    fn printer_of(&mut self, run: &PrintRun) -> Option<&'a Printer> {
        let name = run.printer.trim();
        let studio = self.studio;
        let found = studio.printers.iter().find(|printer| printer.name.trim() == name);
        if found.is_none() && !name.is_empty() {
            self.find(&finding::PRINTER_UNKNOWN, Place::Print(run.id), vec![Arg::Text(name.to_owned())]);
        }
        found.filter(|_| !name.is_empty())
    }

    /// How the printer is set for the run's resin.
    fn setting_of(&mut self, run: &PrintRun, printer: &'a Printer) -> Option<&'a PrintSetting> {
        let material = run.material.as_ref()?;
        let found = printer.settings.iter().find(|setting| setting.material.as_ref() == Some(material));
        if found.is_none() {
            let args = vec![Arg::Text(printer.name.clone()), Arg::Text(self.name_of(material))];
            self.find(&finding::PRINT_NO_SETTING, Place::Print(run.id), args);
        }
        found
    }

    fn print_time(&mut self, highest: Id, setting: Option<&PrintSetting>, place: Place) -> (Id, Id) {
        let cause = if setting.is_some() { Cause::NotSaid } else { Cause::NotChosen };
        let minutes = |seconds: Finite| seconds.get() / 60.0;
        let mut said = |input, number: Option<f64>| match number {
            Some(number) => self.book.studio(input, number),
            None => self.book.absent(input, place, cause),
        };
        let layer = said(&LAYER, setting.and_then(|it| it.layer_mm).map(Finite::get));
        let light = said(&EXPOSURE, setting.and_then(|it| it.exposure_s).map(minutes));
        let travel = said(&TRAVEL, setting.and_then(|it| it.move_s).map(minutes));
        // A base that is lit no longer than the rest is no base.
        let base_light = match setting.and_then(|it| it.base_exposure_s) {
            Some(seconds) => self.book.studio(&BASE_EXPOSURE, minutes(seconds)),
            None => light,
        };
        let base = match setting.and_then(|it| it.base_layers) {
            Some(layers) => self.book.studio(&BASE_LAYERS, f64::from(layers)),
            None => self.book.assumed(&NO_BASE, place),
        };
        let layers = self.book.derive(&LAYERS, place, [highest, layer]);
        (layers, self.book.derive(&TIME, place, [layers, base, base_light, light, travel]))
    }
}
