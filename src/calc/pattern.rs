//! Patterns: weight, the volume that metal fills, area, modulus, outer size.

use super::book::Id;
use super::calibrate::accepted_line;
use super::finding::{self, Arg};
use super::mould::MouldFigures;
use super::pass::Pass;
use super::rule::{givens, inputs, rules};
use super::size::{PrinterLine, PrinterLines};
use super::value::Cause;
use crate::job::{Axis, Pattern, PatternId, Place, Weighing};
use crate::quantity::Finite;
use crate::stock::{PatternMaterial, Section};

inputs! {
    /// A net weight on the scale.
    NET "weigh.net-read" Mass;
    /// A gross weight on the scale.
    GROSS "weigh.gross" Mass;
    /// The tare under it.
    TARE "weigh.tare" Mass;
    /// Density of the pattern's material.
    MATERIAL_DENSITY "pattern.material-density" Density;
    /// Linear shrinkage from file to pattern.
    MATERIAL_SHRINK "pattern.shrink" Ratio;
    /// Volume that fills, as measured from the file.
    FILE_VOLUME "pattern.file-volume" Volume;
    /// Area as measured from the file.
    FILE_AREA "pattern.file-area" Area;
    /// Millimetres in the file's unit.
    FILE_UNIT "pattern.file-unit" Ratio;
    /// Scale of the print against the file.
    FILE_SCALE "pattern.file-scale" Ratio;
    /// A length of the file.
    FILE_LENGTH "pattern.file-length" Length;
    /// The thinnest wall the studio casts without fear.
    LEAST_WALL_SAID "pattern.least-wall" Length;
    /// The thinnest wall, measured.
    THINNEST "pattern.thinnest" Length;
    /// A length typed in.
    LENGTH "pattern.length" Length;
}

/// The thinnest wall that is cast without a word, in mm.
pub const LEAST_WALL_MM: f64 = 0.5;

givens! {
    /// The thinnest wall that is cast without a word.
    LEAST_WALL "pattern.least-wall" Length = LEAST_WALL_MM; CommonPractice "walls under half a millimetre often do not fill, in metal that is not very hot and thin"
    /// A print is as large as its file.
    SCALE_ONE "pattern.file-scale" Ratio = 1.0; CommonPractice "printed as drawn"
}

rules! {
    /// Net weight.
    NET_WEIGHT "weigh.net" (gross: Mass, tare: Mass) -> Mass
        = Decimal "gross - tare" { gross.checked_sub(tare) };
        Computed "what stands under it is taken off"
    /// Volume of a file at the size it is printed.
    VOLUME_OF_FILE "pattern.volume-of-file" (file: Volume, unit: Ratio, scale: Ratio) -> Volume
        = Formula "file*(unit*scale)^3" { file * (unit * scale).powi(3) };
        Computed "signed volume of the file's closed shells; a sealed void pours solid"
    /// Area of a file at the size it is printed.
    AREA_OF_FILE "pattern.area" (file: Area, unit: Ratio, scale: Ratio) -> Area
        = Formula "file*(unit*scale)^2" { file * (unit * scale).powi(2) };
        Computed "sum of the file's triangles"
    /// A length of a file at the size it is printed.
    LENGTH_OF_FILE "pattern.size" (file: Length, unit: Ratio, scale: Ratio) -> Length
        = Formula "file*unit*scale" { file * unit * scale };
        Computed "outer size of the file"
    /// A wall of a file at the size it is printed.
    WALL_OF_FILE "pattern.wall" (file: Length, unit: Ratio, scale: Ratio) -> Length
        = Formula "file*unit*scale" { file * unit * scale };
        Computed "length of rays from the surface inward"
    /// Volume from the scale.
    VOLUME_FROM_WEIGHT "pattern.volume-from-weight" (weight: Mass, density: Density) -> Volume
        = Formula "weight/density" { weight / density };
        Computed "mass over density; the density is the material's, best weighed in water once"
    /// Volume that metal fills, of a pattern that was weighed and whose file holds a sealed void.
    VOLUME_WITH_VOID "pattern.volume-with-void" (weighed: Volume, void: Volume) -> Volume
        = Formula "weighed + void" { weighed + void };
        Computed "a sealed void burns out to empty room that metal fills, and no scale shows it"
    /// What a pattern of this volume should weigh.
    WEIGHT_FROM_VOLUME "pattern.weight-from-volume" (volume: Volume, density: Density) -> Mass
        = Formula "volume*density" { volume * density };
        Computed "density times volume"
    /// Volume over area: what rules the freezing time.
    MODULUS "pattern.modulus" (volume: Volume, area: Area) -> Length
        = Formula "1000*volume/area" { 1000.0 * volume / area };
        FromMemory "N. Chvorinov 1940, freezing time goes with (V/A)² (from memory)"
    /// Density that the scale and the file come to together.
    IMPLIED_DENSITY "pattern.implied-density" (weighed: Mass, volume: Volume) -> Density
        = Formula "weighed/volume" { weighed / volume };
        Computed "mass over the volume of the file's own material; a sealed void is no material and does not show"
    /// How far the scale and the file disagree.
    WEIGHT_DIFFERENCE "pattern.weight-difference" (weighed: Mass, computed: Mass) -> Ratio
        = Formula "abs(weighed - computed)/computed" { (weighed - computed).abs() / computed };
        Computed "share by which the weight differs from volume times density"
}

/// Figures of one pattern.
#[derive(Debug, Clone, Copy)]
pub struct PatternFigures {
    /// The pattern.
    pub id: PatternId,
    /// Net weight of one, or what one should weigh by its file.
    pub weight: Id,
    /// The volume the charge is computed from: off the scale where it was weighed.
    pub charge_volume: Id,
    /// The volume quotes are computed from: off the file where there is one.
    pub quote_volume: Id,
    /// The volume of the pattern's own material: a sealed void is left out.
    pub print_volume: Id,
    /// Surface area, where a file says it.
    pub area: Option<Id>,
    /// Volume over area, where a file says it.
    pub modulus: Option<Id>,
    /// Along, across and deep, where they are known.
    pub extents: Option<[Id; 3]>,
    /// Its walls as its file has them: the thinnest, the typical, the heaviest.
    pub walls: Option<[Id; 3]>,
    /// Outer size along the file's own axes, where a file says it.
    pub axes: Option<[Id; 3]>,
    /// Somebody said how it hangs; otherwise the longest side is taken along the sprue.
    pub hang_known: bool,
    /// Density of its material.
    pub density: Id,
    /// Density that its weight and its file come to together, where there are both.
    pub implied_density: Option<Id>,
    /// Linear shrinkage from what it is made from: its material's, or that of the mould's rubber and wax.
    pub shrink: Id,
    /// The mould it is shot from, where the studio has it.
    pub mould: Option<MouldFigures>,
    /// Inner diameter of the ring in its file, as it is drawn.
    pub file_bore_mm: Option<Finite>,
    /// Outer size along the axes of its file, as it is drawn.
    pub file_sides_mm: Option<[f64; 3]>,
    /// The lines of the printer it, or the master of its mould, is made on.
    pub printer: PrinterLines,
    /// Its section, where it was said or its thinnest wall says it.
    pub section: Option<Section>,
}

impl<'a> Pass<'a> {
    pub(super) fn patterns(&mut self) -> Vec<PatternFigures> {
        let wanted = self.pieces_wanted();
        let of = |pattern: &Pattern| wanted.get(&pattern.id).copied().unwrap_or(0);
        let mut patterns: Vec<PatternFigures> = self.job.patterns.iter().map(|pattern| self.pattern(pattern, of(pattern))).collect();
        patterns.sort_by_key(|pattern| pattern.id);
        patterns
    }

    fn pattern(&mut self, pattern: &'a Pattern, wanted: u32) -> PatternFigures {
        let place = Place::Pattern(pattern.id);
        let material = self.entry::<PatternMaterial>(pattern.material.as_ref(), place);
        let (density, shrink) = match material {
            Some(material) => (
                self.shelf_term(&MATERIAL_DENSITY, &material.id, &material.density_g_cm3),
                self.shelf_term(&MATERIAL_SHRINK, &material.id, &material.linear_shrink),
            ),
            None => {
                (self.book.absent(&MATERIAL_DENSITY, place, Cause::NotChosen), self.book.absent(&MATERIAL_SHRINK, place, Cause::NotChosen))
            }
        };
        let named = pattern.file.as_ref().filter(|file| !file.path.trim().is_empty());
        if pattern.weighed.is_none() && named.is_none() {
            self.find(&finding::PATTERN_UNKNOWN, place, vec![Arg::Text(pattern.name.clone())]);
        }
        let weighed = self.net_weight(pattern.weighed, place);
        let file = named.map(|file| self.pattern_file(pattern, file));
        let void = file.as_ref().and_then(|file| file.void);
        let from_scale = weighed.map(|weight| {
            let own = self.book.derive(&VOLUME_FROM_WEIGHT, place, [weight, density]);
            void.map_or(own, |void| self.book.derive(&VOLUME_WITH_VOID, place, [own, void]))
        });
        let from_file = file.as_ref().map(|file| file.volume);
        let neither = |pass: &mut Self| pass.book.absent(&FILE_VOLUME, place, Cause::NotSaid);
        // A gross weight without its tare says nothing, and a good file beside it then does.
        let told = from_scale.filter(|id| self.book.number(*id).is_some()).or(from_file);
        let charge_volume = told.or(from_scale).unwrap_or_else(|| neither(self));
        let quote_volume = from_file.filter(|id| self.book.number(*id).is_some()).unwrap_or(charge_volume);
        let material_volume = file.as_ref().and_then(|file| file.material);
        let weight =
            weighed.unwrap_or_else(|| self.book.derive(&WEIGHT_FROM_VOLUME, place, [material_volume.unwrap_or(charge_volume), density]));
        let implied_density = weighed.zip(material_volume).map(|(weighed, volume)| {
            self.weight_against_file(pattern, weighed, volume, density);
            self.book.derive(&IMPLIED_DENSITY, place, [weighed, volume])
        });
        let mould = self.mould_of(pattern);
        let shrink = mould.map_or(shrink, |mould| self.shrink_from(mould, place, shrink));
        let mould = mould.map(|mould| self.mould(pattern, mould, wanted, weight));
        let file_sides = file.as_ref().and_then(|file| file.sides_mm);
        let typed = pattern
            .extents_mm
            .map(|sides| [sides.along, sides.across, sides.deep].map(|side| self.book.entered(&LENGTH, place, side.get())));
        PatternFigures {
            id: pattern.id,
            weight,
            charge_volume,
            quote_volume,
            print_volume: material_volume.unwrap_or(quote_volume),
            area: file.as_ref().and_then(|file| file.area),
            modulus: file.as_ref().and_then(|file| file.modulus),
            walls: file.as_ref().and_then(|file| file.walls),
            axes: file.as_ref().and_then(|file| file.axes),
            extents: typed.or(file.and_then(|file| file.extents)),
            hang_known: typed.is_some(),
            density,
            implied_density,
            shrink,
            mould,
            file_bore_mm: named.and_then(|file| file.bore_mm),
            file_sides_mm: file_sides,
            printer: self.printer_lines(pattern),
            section: pattern.section.or_else(|| pattern.thinnest_mm.map(|wall| section_of(wall.get()))),
        }
    }

    /// The lines of the printer a pattern is made on, along its axes: of the last print run it is in.
    fn printer_lines(&self, pattern: &Pattern) -> PrinterLines {
        let Some(run) = self.job.prints.iter().rev().find(|run| run.rows.iter().any(|row| row.pattern == pattern.id)) else {
            return [None; 3];
        };
        let material = run.material.as_ref().or(pattern.material.as_ref());
        [Axis::X, Axis::Y, Axis::Z].map(|axis| {
            let line = accepted_line(self.studio, &run.printer, material, axis)?;
            Some(PrinterLine { slope: line.slope, offset_mm: line.offset_mm })
        })
    }

    /// The net weight of a weighing; a gross weight whose tare nobody knows is a finding and no weight.
    pub(super) fn net_weight(&mut self, weighing: Option<Weighing>, place: Place) -> Option<Id> {
        match weighing? {
            Weighing::Net(grams) => Some(self.book.weighed(&NET, place, grams)),
            Weighing::Gross { weight, tare: Some(tare) } => {
                let gross = self.book.weighed(&GROSS, place, weight);
                let tare = self.book.weighed(&TARE, place, tare);
                Some(self.book.derive(&NET_WEIGHT, place, [gross, tare]))
            }
            Weighing::Gross { weight, tare: None } => {
                let gross = self.book.weighed(&GROSS, place, weight);
                let tare = self.book.absent(&TARE, place, Cause::NotSaid);
                self.find(&finding::GROSS_WITHOUT_TARE, place, vec![Arg::Figure(gross)]);
                Some(self.book.derive(&NET_WEIGHT, place, [gross, tare]))
            }
        }
    }

    /// A print that weighs more than 3 % off its file is uncured, wrongly scaled, or still on its supports.
    fn weight_against_file(&mut self, pattern: &Pattern, weighed: Id, from_file: Id, density: Id) {
        const FLAGGED: f64 = 0.03;
        let place = Place::Pattern(pattern.id);
        let computed = self.book.derive(&WEIGHT_FROM_VOLUME, place, [from_file, density]);
        let difference = self.book.derive(&WEIGHT_DIFFERENCE, place, [weighed, computed]);
        if self.book.number(difference).is_some_and(|share| share > FLAGGED) {
            let args = vec![Arg::Text(pattern.name.clone()), Arg::Figure(weighed), Arg::Figure(computed)];
            self.find_on(&finding::WEIGHT_AGAINST_FILE, place, difference, args);
        }
    }
}

/// The class of section by the thinnest wall in mm, as the shelf's pouring ranges use it.
#[must_use]
pub fn section_of(thinnest_mm: f64) -> Section {
    match thinnest_mm {
        wall if wall < 0.8 => Section::Filigree,
        wall if wall < 1.5 => Section::Thin,
        wall if wall < 3.0 => Section::Medium,
        _ => Section::Heavy,
    }
}
