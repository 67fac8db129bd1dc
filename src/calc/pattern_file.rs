//! What a pattern's file says of it: what metal fills, area, walls, and what is the matter with it.

use super::book::Id;
use super::finding::{self, Arg};
use super::pass::Pass;
use super::pattern::{
    AREA_OF_FILE, FILE_AREA, FILE_LENGTH, FILE_SCALE, FILE_UNIT, FILE_VOLUME, LEAST_WALL, LEAST_WALL_SAID, LENGTH_OF_FILE, MODULUS,
    PatternFigures, SCALE_ONE, VOLUME_OF_FILE, WALL_OF_FILE,
};
use super::setting::{FileProblem, PatternMeasure, PatternRun};
use super::value::Cause;
use crate::job::{FileUnit, InnerSolids, Pattern, PatternFile, Place};

impl<'a> Pass<'a> {
    pub(super) fn pattern_file(&mut self, pattern: &'a Pattern, file: &'a PatternFile) -> FileFigures {
        let place = Place::Pattern(pattern.id);
        let name = || Arg::Text(file.path.clone());
        if file.lies_outside() {
            self.find(&finding::FILE_OUTSIDE, place, vec![name()]);
        }
        let kept = file.hash.as_ref().zip(file.kept.as_ref()).and_then(|(hash, kept)| PatternMeasure::of_kept(kept, hash));
        let told = || Arg::Count(u64::from(kept.is_some()));
        let runs = self.runs;
        match runs.patterns.get(&pattern.id) {
            Some(PatternRun::Measured(measure)) if file.hash.as_ref().is_none_or(|hash| *hash == measure.hash) => {
                return self.measured_file(pattern, file, measure);
            }
            Some(PatternRun::Measured(measure)) => {
                // Where nothing was kept the sentence does not tell of it.
                let [before, now] = [kept.as_ref().unwrap_or(measure), measure].map(|one| self.fills_of(pattern, file, one));
                self.find(&finding::FILE_CHANGED, place, vec![name(), told(), before, now]);
                return self.measured_file(pattern, file, kept.as_ref().unwrap_or(measure));
            }
            // What is being read may be another file than the one that was measured.
            None | Some(PatternRun::Pending) => return self.no_measures(place, Cause::Pending),
            Some(PatternRun::Missing) => self.find(&finding::FILE_MISSING, place, vec![name(), told()]),
            Some(PatternRun::Apart) => self.find(&finding::FILE_APART, place, vec![name(), told()]),
            Some(PatternRun::Unreadable(reason)) => {
                self.find(&finding::FILE_UNREADABLE, place, vec![name(), Arg::Text(reason.clone()), told()]);
            }
        }
        match &kept {
            Some(kept) => self.measured_file(pattern, file, kept),
            None => self.no_measures(place, Cause::NoFile),
        }
    }

    fn no_measures(&mut self, place: Place, cause: Cause) -> FileFigures {
        FileFigures {
            volume: self.book.absent(&FILE_VOLUME, place, cause),
            material: None,
            void: None,
            area: None,
            modulus: None,
            extents: None,
            axes: None,
            sides_mm: None,
            walls: None,
        }
    }

    /// What metal fills by one measure, at the size it is printed; for words, not for sums.
    fn fills_of(&mut self, pattern: &Pattern, file: &PatternFile, measure: &PatternMeasure) -> Arg {
        let place = Place::Pattern(pattern.id);
        match filled(pattern, file, measure) {
            Some(volume) => Arg::Figure(self.book.measured(&FILE_VOLUME, place, volume / 1000.0 * print_mm(file).powi(3))),
            None => Arg::Words(vec!["no-volume"]),
        }
    }

    fn measured_file(&mut self, pattern: &'a Pattern, file: &'a PatternFile, measure: &PatternMeasure) -> FileFigures {
        let place = Place::Pattern(pattern.id);
        let unit = self.book.entered(&FILE_UNIT, place, file.unit.in_mm());
        let scale = self.book.entered_or(&FILE_SCALE, place, file.scale, &SCALE_ONE);
        // The file's numbers are in its own unit; per cubic unit, so that unit and scale stay visible in the working.
        let volume = match filled(pattern, file, measure) {
            Some(volume) => {
                let file_volume = self.book.measured(&FILE_VOLUME, place, volume / 1000.0);
                self.book.derive(&VOLUME_OF_FILE, place, [file_volume, unit, scale])
            }
            None => self.book.absent(&FILE_VOLUME, place, Cause::NoSuchNumber),
        };
        let material = match material(file, measure) {
            // The usual file, whose material is what metal fills.
            Some(material) if filled(pattern, file, measure) == Some(material) => Some(volume),
            Some(material) => {
                let file_volume = self.book.measured(&FILE_VOLUME, place, material / 1000.0);
                Some(self.book.derive(&VOLUME_OF_FILE, place, [file_volume, unit, scale]))
            }
            None => None,
        };
        let void = voids(file, measure).filter(|_| !pattern.void_drained).map(|void| {
            let file_volume = self.book.measured(&FILE_VOLUME, place, void / 1000.0);
            self.book.derive(&VOLUME_OF_FILE, place, [file_volume, unit, scale])
        });
        let file_area = self.book.measured(&FILE_AREA, place, measure.area);
        let area = self.book.derive(&AREA_OF_FILE, place, [file_area, unit, scale]);
        let modulus = self.book.derive(&MODULUS, place, [volume, area]);
        // Nobody said how it hangs: the longest side along the sprue asks for the most room.
        let axes = measure.size.map(|side| {
            let side = self.book.measured(&FILE_LENGTH, place, side);
            self.book.derive(&LENGTH_OF_FILE, place, [side, unit, scale])
        });
        let mut sides: [(f64, Id); 3] = std::array::from_fn(|at| (measure.size[at], axes[at]));
        sides.sort_by(|a, b| b.0.total_cmp(&a.0));
        let extents = sides.map(|(_, side)| side);
        let walls = measure.walls.map(|walls| {
            walls.map(|wall| {
                let wall = self.book.measured(&FILE_LENGTH, place, wall);
                self.book.derive(&WALL_OF_FILE, place, [wall, unit, scale])
            })
        });
        // In a wrong unit every wall is thin, and that is told already.
        let longest_mm = measure.size.iter().copied().fold(0.0, f64::max) * print_mm(file);
        if let Some([thinnest, ..]) = walls.filter(|_| PLAUSIBLE_MM.contains(&longest_mm)) {
            self.thin_walls(pattern, thinnest);
        }
        self.file_problems(pattern, file, measure);
        let sides_mm = Some(measure.size.map(|side| side * file.unit.in_mm()));
        FileFigures {
            volume,
            material,
            void,
            area: Some(area),
            modulus: Some(modulus),
            extents: Some(extents),
            axes: Some(axes),
            sides_mm,
            walls,
        }
    }

    /// Does a pattern's size make sense? In a wrong unit every wall is thin, and that is told already.
    pub(super) fn plausible(&self, figures: &PatternFigures) -> bool {
        let sides = figures.axes.iter().flatten().filter_map(|side| self.book.number(*side));
        sides.reduce(f64::max).is_none_or(|longest| PLAUSIBLE_MM.contains(&longest))
    }

    /// A wall under what the studio casts without fear.
    fn thin_walls(&mut self, pattern: &Pattern, thinnest: Id) {
        let least = self.book.entered_or(&LEAST_WALL_SAID, Place::Studio, self.studio.least_wall_mm, &LEAST_WALL);
        let numbers = self.book.number(thinnest).zip(self.book.number(least));
        if numbers.is_some_and(|(thinnest, least)| thinnest < least) {
            let args = vec![Arg::Text(pattern.name.clone()), Arg::Figure(thinnest), Arg::Figure(least)];
            self.find_on(&finding::WALL_TOO_THIN, Place::Pattern(pattern.id), thinnest, args);
        }
    }

    /// A sealed void, whose drain holes and held core were confirmed or not.
    fn void_told(&mut self, pattern: &Pattern, file: &PatternFile, volume: f64) {
        let place = Place::Pattern(pattern.id);
        let void = self.void_of(place, file, volume);
        let kind = if pattern.void_drained { &finding::DRAINED_VOID } else { &finding::SEALED_VOID };
        self.find_on(kind, place, void, vec![Arg::Text(file.path.clone()), Arg::Figure(void)]);
    }

    /// A volume of the file at the size it is printed; for words.
    fn void_of(&mut self, place: Place, file: &PatternFile, volume: f64) -> Id {
        self.book.measured(&FILE_VOLUME, place, volume / 1000.0 * print_mm(file).powi(3))
    }

    fn file_problems(&mut self, pattern: &Pattern, file: &PatternFile, measure: &PatternMeasure) {
        let place = Place::Pattern(pattern.id);
        let name = || Arg::Text(file.path.clone());
        let mm = print_mm(file);
        for problem in &measure.problems {
            match problem {
                FileProblem::Open(edges) => self.find(&finding::FILE_OPEN, place, vec![name(), Arg::Count(*edges)]),
                FileProblem::MixedWinding => self.find(&finding::FILE_MIXED, place, vec![name()]),
                FileProblem::SealedVoid(volume) => self.void_told(pattern, file, *volume),
                FileProblem::Overlapping { union: None, .. } => self.find(&finding::SHELLS_OVERLAP, place, vec![name()]),
                FileProblem::Overlapping { union: Some(union), plain_sum } => {
                    let [union, sum, over] = [*union, *plain_sum, plain_sum - union]
                        .map(|volume| self.book.measured(&FILE_VOLUME, place, volume / 1000.0 * mm.powi(3)));
                    let args = vec![name(), Arg::Figure(union), Arg::Figure(sum), Arg::Figure(over)];
                    self.find_on(&finding::SHELLS_UNITED, place, over, args);
                }
                FileProblem::Nested(volume) if file.inner == InnerSolids::NotSaid => {
                    let inner = self.void_of(place, file, *volume);
                    self.find(&finding::SHELLS_NESTED, place, vec![name(), Arg::Figure(inner)]);
                }
                FileProblem::Nested(volume) if file.inner == InnerSolids::Hollow => self.void_told(pattern, file, *volume),
                FileProblem::Nested(_) => {}
                FileProblem::ProbableUnit(unit) => {
                    let longest = measure.size.iter().copied().fold(0.0, f64::max) * mm;
                    // Once the unit or the scale was said and the size makes sense, nothing is left to ask.
                    if PLAUSIBLE_MM.contains(&longest) {
                        continue;
                    }
                    let size = self.book.measured(&FILE_LENGTH, place, longest);
                    self.find(&finding::FILE_UNIT, place, vec![name(), Arg::Figure(size), Arg::Words(vec![unit_key(*unit)])]);
                }
                FileProblem::WallsNotMeasured => self.find(&finding::WALLS_NOT_MEASURED, place, vec![name()]),
                FileProblem::Remark(words) => self.find(&finding::FILE_REMARK, place, vec![name(), Arg::Text(words.clone())]),
            }
        }
    }
}

/// What metal fills of a file, in its own unit: a sealed void pours solid unless it is drained and its core held.
fn filled(pattern: &Pattern, file: &PatternFile, measure: &PatternMeasure) -> Option<f64> {
    if pattern.void_drained { material(file, measure).or(measure.fills) } else { measure.fills }
}

/// What the file's own material takes up, in its own unit: voids are left out, whichever way their surface faces.
fn material(file: &PatternFile, measure: &PatternMeasure) -> Option<f64> {
    measure.volume.map(|volume| (volume - turned_hollow(file, measure)).max(0.0))
}

/// The volume of the file's voids, in its own unit, where it has any.
fn voids(file: &PatternFile, measure: &PatternMeasure) -> Option<f64> {
    let sealed = measure.problems.iter().map(|problem| match problem {
        FileProblem::SealedVoid(volume) => *volume,
        _ => 0.0,
    });
    Some(sealed.sum::<f64>() + turned_hollow(file, measure)).filter(|volume| *volume > 0.0)
}

/// The volume of solids that were said to be hollows whose surface faces the wrong way, in the file's own unit.
fn turned_hollow(file: &PatternFile, measure: &PatternMeasure) -> f64 {
    let nested = measure.problems.iter().map(|problem| match problem {
        FileProblem::Nested(volume) if file.inner == InnerSolids::Hollow => *volume,
        _ => 0.0,
    });
    nested.sum()
}

/// The key of a unit's name.
#[must_use]
pub fn unit_key(unit: FileUnit) -> &'static str {
    match unit {
        FileUnit::Millimetre => "unit-millimetres",
        FileUnit::Centimetre => "unit-centimetres",
        FileUnit::Inch => "unit-inches",
        FileUnit::Metre => "unit-metres",
        FileUnit::Mil => "unit-mils",
        FileUnit::Micrometre => "unit-micrometres",
    }
}

/// Millimetres of the print in one unit of its file.
#[must_use]
pub fn print_mm(file: &PatternFile) -> f64 {
    file.unit.in_mm() * file.scale.map_or(1.0, crate::quantity::Finite::get)
}

pub(super) struct FileFigures {
    pub volume: Id,
    /// What a print of it is made of: a sealed void is left out.
    pub material: Option<Id>,
    /// Voids that metal fills and that no print holds.
    pub void: Option<Id>,
    pub area: Option<Id>,
    pub modulus: Option<Id>,
    pub extents: Option<[Id; 3]>,
    pub walls: Option<[Id; 3]>,
    /// Along the file's axes, as it is drawn.
    pub sides_mm: Option<[f64; 3]>,
    pub axes: Option<[Id; 3]>,
}

/// The longest side of anything this trade casts, as the reading of files has it.
const PLAUSIBLE_MM: std::ops::RangeInclusive<f64> = 1.5..=600.0;
