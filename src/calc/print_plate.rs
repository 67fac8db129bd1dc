//! What a print run takes of a plate: the size of each part, how many fit, and how many plates there must be.

use super::book::Id;
use super::finding::{self, Arg};
use super::pass::Pass;
use super::pattern::PatternFigures;
use super::plate::{Parts, plates};
use super::print::{
    COUNT, FITS, GAP, GAP_DEFAULT, GROUND, PART_HEIGHT, PART_X, PART_Y, PLATE_X, PLATE_Y, PLATES, PrintRowFigures, ROOM, ROW_VOLUME,
};
use super::rule::Input;
use super::setting::PatternRun;
use super::value::Cause;
use crate::job::{PatternId, Place, PrintRow, Printer};
use crate::quantity::Finite;

/// What a run is printed on.
pub(super) struct Plate {
    pub sides: [Id; 2],
    pub gap: Id,
    room: Id,
}

impl Pass<'_> {
    pub(super) fn plate(&mut self, printer: Option<&Printer>, place: Place) -> Plate {
        let cause = if printer.is_some() { Cause::NotSaid } else { Cause::NotChosen };
        let mut said = |input, number: Option<Finite>| match number {
            Some(number) => self.book.studio(input, number.get()),
            None => self.book.absent(input, place, cause),
        };
        let sides = [said(&PLATE_X, printer.and_then(|it| it.plate_x_mm)), said(&PLATE_Y, printer.and_then(|it| it.plate_y_mm))];
        let room = said(&ROOM, printer.and_then(|it| it.height_mm));
        let gap = match printer.and_then(|it| it.gap_mm) {
            Some(gap) => self.book.studio(&GAP, gap.get()),
            None => self.book.assumed(&GAP_DEFAULT, place),
        };
        Plate { sides, gap, room }
    }

    pub(super) fn print_row(&mut self, row: &PrintRow, plate: &Plate, patterns: &[PatternFigures], place: Place) -> PrintRowFigures {
        let pattern = patterns.binary_search_by_key(&row.pattern, |pattern| pattern.id).ok().map(|at| &patterns[at]);
        let typed = [(&PART_X, row.x_mm), (&PART_Y, row.y_mm), (&PART_HEIGHT, row.height_mm)];
        let mut at = 0;
        let size = typed.map(|(input, typed)| {
            let from_file = pattern.and_then(|pattern| pattern.axes).map(|axes| axes[at]);
            at += 1;
            match (typed, from_file) {
                (Some(length), _) => self.book.entered(input, place, length.get()),
                (None, Some(length)) => length,
                (None, None) => self.no_size(input, row.pattern, place),
            }
        });
        let [x, y, _] = size;
        let [plate_x, plate_y] = plate.sides;
        let fits = self.book.derive(&FITS, place, [plate_x, plate_y, plate.gap, x, y]);
        let count = self.book.entered(&COUNT, place, f64::from(row.count));
        let ground = self.book.derive(&GROUND, place, [count, x, y, plate.gap]);
        let volume = match pattern {
            Some(pattern) => pattern.print_volume,
            None => self.book.absent(&super::pattern::FILE_VOLUME, place, Cause::NotSaid),
        };
        let volume = self.book.derive(&ROW_VOLUME, place, [count, volume]);
        PrintRowFigures { pattern: row.pattern, size, fits, volume, ground, count }
    }

    fn no_size(&mut self, input: &'static Input, pattern: PatternId, place: Place) -> Id {
        let job = self.job;
        let file = job.patterns.iter().find(|other| other.id == pattern).and_then(|pattern| pattern.file.as_ref());
        let cause = match (file.filter(|file| !file.path.trim().is_empty()), self.runs.patterns.get(&pattern)) {
            (None, _) => Cause::NotSaid,
            (Some(_), None | Some(PatternRun::Pending)) => Cause::Pending,
            (Some(_), _) => Cause::NoFile,
        };
        self.book.absent(input, place, cause)
    }

    /// Plates by an arrangement; missing where a size is, or a part fits no way round.
    pub(super) fn plates_needed(&mut self, rows: &[PrintRowFigures], plate: &Plate, place: Place) -> Id {
        let book = &self.book;
        let sizes = rows.iter().flat_map(|row| row.size[..2].iter().copied()).chain(plate.sides).chain([plate.gap]);
        let missing = sizes.filter_map(|id| book.value(id).cause()).max_by_key(|cause| *cause == Cause::Pending);
        let number = |id: Id| book.number(id).unwrap_or(f64::NAN);
        // A count was typed as a whole number below what an integer holds.
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
        let part = |row: &PrintRowFigures| Parts { sides_mm: [number(row.size[0]), number(row.size[1])], count: number(row.count) as u32 };
        let parts: Vec<Parts> = rows.iter().map(part).collect();
        let found = match missing {
            Some(cause) => Err(if cause == Cause::Pending { Cause::Pending } else { Cause::NotSaid }),
            None => plates(&parts, plate.sides.map(number), number(plate.gap)).ok_or(Cause::NotFinite),
        };
        match found {
            #[allow(clippy::cast_precision_loss, reason = "a run has at most a million parts")]
            Ok(plates) => self.book.laid_out(&PLATES, place, plates as f64),
            Err(cause) => self.book.absent(&PLATES, place, cause),
        }
    }

    pub(super) fn parts_that_do_not_fit(&mut self, rows: &[PrintRowFigures], plate: &Plate, place: Place) {
        for row in rows {
            let job = self.job;
            let name = job.patterns.iter().find(|pattern| pattern.id == row.pattern).map(|pattern| pattern.name.clone());
            let name = Arg::Text(name.unwrap_or_default());
            let [x, y, height] = row.size;
            let over = |pass: &Self, one, other| matches!((pass.book.number(one), pass.book.number(other)), (Some(one), Some(other)) if one > other + HAIR_MM);
            if over(self, height, plate.room) {
                self.find_on(&finding::PRINT_TOO_TALL, place, height, vec![name.clone(), Arg::Figure(height), Arg::Figure(plate.room)]);
            }
            if self.book.number(row.fits) == Some(0.0) {
                let [plate_x, plate_y] = plate.sides;
                let args = vec![name, Arg::Figure(x), Arg::Figure(y), Arg::Figure(plate_x), Arg::Figure(plate_y)];
                self.find(&finding::PRINT_OVER_PLATE, place, args);
            }
        }
    }
}

/// Lengths are told apart no finer than this.
const HAIR_MM: f64 = 1e-6;
