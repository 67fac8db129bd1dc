//! From the finished measure back to what is typed in the slicer: finishing, the metal, the pattern, the printer's line; and the scale
//! against the file. Bores and outer sizes go the same way and differ in what finishing does to them.

use super::alloy::AlloyTerms;
use super::book::{Book, Id};
use super::finding::{self, Arg};
use super::order::find_pattern;
use super::pass::Pass;
use super::pattern::PatternFigures;
use super::rule::{givens, inputs, rules};
use crate::job::{Line, Place, Size};
use crate::stock::{RingScale, SizeError};

inputs! {
    /// Inner diameter of the ring size asked for.
    SIZE_BORE "size.bore" Length;
    /// How far charts and sticks of the scale differ, ± in inner diameter.
    SCALE_WITHIN "size.scale-within" Length;
    /// By how much in diameter one whole size of the scale grows.
    SIZE_STEP "size.step" Length;
    /// By how much a comfort fit wears larger, in diameter.
    COMFORT_SAID "size.comfort" Length;
    /// What finishing opens a bore by.
    OPENS "size.finishing-opens" Length;
    /// What finishing takes off an outer size.
    TAKES "size.finishing-takes" Length;
    /// Finished outer size asked for.
    FINISHED "size.finished" Length;
    /// Measured over nominal of a printer, along one axis.
    PRINTER_SLOPE "size.printer-slope" Ratio;
    /// What the printer adds to every measure, along one axis.
    PRINTER_OFFSET "size.printer-offset" Length;
    /// Inner diameter of the ring in its file.
    FILE_BORE "size.file-bore" Length;
    /// Outer size of the file along one axis, in mm.
    FILE_SIDE "size.file-side" Length;
}

givens! {
    /// What finishing opens a bore by.
    OPENS_NOTHING "size.finishing-opens" Length = 0.0; CommonPractice "nothing until the studio's record says more; one measured ring opened by 0.19 mm"
    /// What finishing takes off an outer size.
    TAKES_NOTHING "size.finishing-takes" Length = 0.0; CommonPractice "nothing until the studio's record says more; one measured ring lost 0.19 mm of its thickness and 0.30 mm of its width"
    /// Circumference added for a wide band.
    WIDE_ADDS "size.wide-band-adds" Length = 0.5; Article "a supply house's way of measuring a ring blank: 0.5 mm longer where the band is wider than 4 mm"
    /// The middle of ¼ to ½ of a US size of 0.8128 mm, 0.2032 to 0.4064 mm.
    COMFORT "size.comfort" Length = 0.3048; Article "a glossary of ring sizing: a comfort fit wears ¼ to ½ of a US size larger, 0.20 to 0.41 mm of diameter; the middle"
    /// A printer that was never calibrated.
    SLOPE_ONE "size.printer-slope" Ratio = 1.0; CommonPractice "the printer prints true until an accepted calibration says more"
    /// A printer that was never calibrated.
    OFFSET_NONE "size.printer-offset" Length = 0.0; CommonPractice "the printer prints true until an accepted calibration says more"
}

rules! {
    /// Inner circumference of the size.
    CIRCUMFERENCE "size.circumference" (bore: Length) -> Length
        = Formula "pi*bore" { std::f64::consts::PI * bore };
        Published "ISO 8653: the ring size is the inner circumference in mm"
    /// The scale's spread in sizes.
    WITHIN_SIZES "size.within-sizes" (within: Length, step: Length) -> Ratio
        = Formula "within/step" { within / step };
        Computed "what charts differ by, over one whole size"
    /// Finished bore of a wide band.
    WIDE_BORE "size.wide-bore" (bore: Length, adds: Length) -> Length
        = Formula "bore + adds/pi" { bore + adds / std::f64::consts::PI };
        Article "a supply house's way of measuring a ring blank: 0.5 mm of circumference more where the band is wider than 4 mm"
    /// Finished bore of a comfort fit.
    COMFORT_BORE "size.comfort-bore" (bore: Length, larger: Length) -> Length
        = Formula "bore - larger" { bore - larger };
        Article "a glossary of ring sizing: a comfort fit wears ¼ to ½ of a size larger than it is"
    /// Bore as it comes out of the flask.
    CAST_BORE "size.cast-bore" (finished: Length, opens: Length) -> Length
        = Formula "finished - opens" { finished - opens };
        Computed "finishing takes metal off the inside, so a bore grows"
    /// Outer size as it comes out of the flask.
    CAST_OUTSIDE "size.cast-outside" (finished: Length, takes: Length) -> Length
        = Formula "finished + takes" { finished + takes };
        Computed "finishing takes metal off the outside, so an outer size shrinks"
    /// The measure on the pattern that goes into the flask.
    ON_PATTERN "size.on-pattern" (cast: Length, metal_shrink: Ratio) -> Length
        = Formula "cast/(1 - metal_shrink)" { cast / (1.0 - metal_shrink) };
        Computed "as cast = pattern × (1 − linear shrinkage of the metal)"
    /// The measure on the print, or on the master of a mould.
    ON_PRINT "size.on-print" (pattern: Length, pattern_shrink: Ratio) -> Length
        = Formula "pattern/(1 - pattern_shrink)" { pattern / (1.0 - pattern_shrink) };
        Computed "pattern = what it is made from × (1 − linear shrinkage of pattern, rubber and wax)"
    /// The measure to type.
    TYPED "size.typed" (wanted: Length, offset: Length, slope: Ratio) -> Length
        = Formula "(wanted - offset)/slope" { (wanted - offset) / slope };
        Computed "measured = slope × nominal + offset, by least squares on a calibration piece, solved for the nominal"
    /// The scale to type.
    SCALE "size.scale" (typed: Length, file: Length) -> Ratio
        = Formula "typed/file" { typed / file };
        Computed "what is to be typed over what the file has"
    /// How far the scale of sizes leaves the typed measure open.
    TYPED_WITHIN "size.typed-within" (within: Length, metal_shrink: Ratio, pattern_shrink: Ratio, slope: Ratio) -> Length
        = Formula "within/((1 - metal_shrink)*(1 - pattern_shrink)*slope)" { within / ((1.0 - metal_shrink) * (1.0 - pattern_shrink) * slope) };
        Computed "the spread of the scale's charts goes through the chain as the bore does"
}

/// A band is wide from here on, in mm: the same source as [`WIDE_ADDS`].
const WIDE_MM: f64 = 4.0;

/// What a printer makes of a nominal measure along one axis: measured = slope × nominal + offset, both in mm. Bores and outer sizes may
/// have lines of their own: what spreads outwards narrows a bore.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PrinterLine {
    /// Measured over nominal.
    pub slope: f64,
    /// What is added to every measure, in mm.
    pub offset_mm: f64,
}

impl Default for PrinterLine {
    fn default() -> Self {
        Self { slope: SLOPE_ONE.value, offset_mm: OFFSET_NONE.value }
    }
}

/// The lines along x, y and z of the printer a pattern, or the master of its mould, is made on; `None` where no calibration was accepted.
pub type PrinterLines = [Option<PrinterLine>; 3];

/// The way back of one measure.
#[derive(Debug, Clone, Copy)]
pub struct WayBack {
    /// As cast, before finishing.
    pub cast: Id,
    /// On the pattern that goes into the flask.
    pub on_pattern: Id,
    /// On the print, or on the master of the mould.
    pub on_print: Id,
}

/// What is typed along one axis.
#[derive(Debug, Clone, Copy)]
pub struct Typed {
    /// The measure.
    pub measure: Id,
    /// The scale against the file, where the file tells its measure.
    pub scale: Option<Id>,
    /// How far the scale of ring sizes leaves it open; none for outer sizes.
    pub within: Option<Id>,
}

/// Figures of one ring size.
#[derive(Debug, Clone, Copy)]
pub struct RingFigures {
    /// Inner diameter of the size, as the scale has it.
    pub bore: Id,
    /// How far charts of the scale differ, ± in inner diameter.
    pub within: Id,
    /// The same as a share of one whole size.
    pub within_sizes: Id,
    /// Inner diameter it is finished to: the size's, or another for a wide band or a comfort fit.
    pub finished: Id,
    /// The way back, where the line has a pattern and an alloy.
    pub back: Option<WayBack>,
    /// What is typed along x, y and z; a bore lies across two of them.
    pub typed: Option<[Typed; 3]>,
}

/// Figures of one outer size.
#[derive(Debug, Clone, Copy)]
pub struct SideFigures {
    /// As it is to be when finished.
    pub finished: Id,
    /// The way back.
    pub back: WayBack,
    /// What is typed.
    pub typed: Typed,
}

/// The nominal measure a printer must be given so that it prints `wanted`; also the slope that was used.
pub fn typed(book: &mut Book, place: Place, wanted: Id, line: Option<PrinterLine>) -> (Id, Id) {
    let (slope, offset) = match line {
        Some(line) => (book.studio(&PRINTER_SLOPE, line.slope), book.studio(&PRINTER_OFFSET, line.offset_mm)),
        None => (book.assumed(&SLOPE_ONE, place), book.assumed(&OFFSET_NONE, place)),
    };
    (book.derive(&TYPED, place, [wanted, offset, slope]), slope)
}

/// One measure through metal and pattern, back to what is printed.
fn way_back(book: &mut Book, place: Place, cast: Id, [metal_shrink, pattern_shrink]: [Id; 2]) -> WayBack {
    let on_pattern = book.derive(&ON_PATTERN, place, [cast, metal_shrink]);
    let on_print = book.derive(&ON_PRINT, place, [on_pattern, pattern_shrink]);
    WayBack { cast, on_pattern, on_print }
}

/// What the ring sizes of one line share.
struct RingTerms {
    file_bore: Option<Id>,
    shrinks: [Id; 2],
    lines: PrinterLines,
}

impl<'a> Pass<'a> {
    /// The ring size of a line and those that single pieces of it have of their own, by number.
    pub(super) fn rings(
        &mut self,
        line: &'a Line,
        patterns: &[PatternFigures],
        alloy: Option<AlloyTerms<'a>>,
    ) -> (Option<RingFigures>, Vec<(u32, RingFigures)>) {
        let of_line = line.pattern;
        let ring = line.size.as_ref().and_then(|size| {
            let pattern = of_line.and_then(|id| find_pattern(patterns, id));
            self.ring(line, size, pattern, alloy)
        });
        let own = line.exceptions.iter().filter_map(|(number, exception)| {
            let pattern = exception.pattern.or(of_line).and_then(|id| find_pattern(patterns, id));
            Some((*number, self.ring(line, exception.size.as_ref()?, pattern, alloy)?))
        });
        (ring, own.collect())
    }

    fn ring(
        &mut self,
        line: &'a Line,
        size: &'a Size,
        pattern: Option<&PatternFigures>,
        alloy: Option<AlloyTerms<'a>>,
    ) -> Option<RingFigures> {
        let place = Place::Line(line.id);
        let (scale, bore) = self.ring_size(size, place)?;
        self.book.derive(&CIRCUMFERENCE, place, [bore]);
        let within = self.book.shelf(&SCALE_WITHIN, &scale.id, &scale.tolerance_mm);
        let step = self.book.shelf_number(&SIZE_STEP, &scale.id, scale.diameter_a_size_mm(), scale.origin.source(), scale.origin.trust());
        let within_sizes = self.book.derive(&WITHIN_SIZES, place, [within, step]);
        let finished = self.corrected(line, bore);
        let mut figures = RingFigures { bore, within, within_sizes, finished, back: None, typed: None };
        if let (Some(pattern), Some(alloy)) = (pattern, alloy) {
            let opens = self.book.entered_or(&OPENS, place, line.finishing_opens_mm, &OPENS_NOTHING);
            let cast = self.book.derive(&CAST_BORE, place, [finished, opens]);
            let shrinks = [alloy.shrink, pattern.shrink];
            let back = way_back(self.book, place, cast, shrinks);
            let file_bore = pattern.file_bore_mm.map(|bore| self.book.entered(&FILE_BORE, place, bore.get()));
            let terms = RingTerms { file_bore, shrinks, lines: pattern.printer };
            (figures.back, figures.typed) = (Some(back), Some(self.typed_bore(place, back, within, &terms)));
        }
        Some(figures)
    }

    /// The finished bore: larger for a wide band, smaller for a comfort fit, each only where it was said.
    fn corrected(&mut self, line: &Line, bore: Id) -> Id {
        let place = Place::Line(line.id);
        let mut finished = bore;
        if line.band_mm.is_some_and(|band| band.get() > WIDE_MM) {
            let adds = self.book.assumed(&WIDE_ADDS, place);
            finished = self.book.derive(&WIDE_BORE, place, [finished, adds]);
        }
        if line.comfort_fit {
            let larger = self.book.entered_or(&COMFORT_SAID, place, line.comfort_mm, &COMFORT);
            finished = self.book.derive(&COMFORT_BORE, place, [finished, larger]);
        }
        finished
    }

    /// Along each axis; axes that share one line share their figures.
    fn typed_bore(&mut self, place: Place, back: WayBack, within: Id, terms: &RingTerms) -> [Typed; 3] {
        let mut made: Vec<(Option<PrinterLine>, Typed)> = Vec::with_capacity(1);
        terms.lines.map(|line| {
            if let Some((_, same)) = made.iter().find(|(other, _)| *other == line) {
                return *same;
            }
            let (measure, slope) = typed(self.book, place, back.on_print, line);
            let [metal, pattern] = terms.shrinks;
            let within = Some(self.book.derive(&TYPED_WITHIN, place, [within, metal, pattern, slope]));
            let scale = terms.file_bore.map(|file| self.book.derive(&SCALE, place, [measure, file]));
            let along = Typed { measure, scale, within };
            made.push((line, along));
            along
        })
    }

    /// The outer sizes a line asks for, along x, y and z; none before it has a pattern and an alloy.
    pub(super) fn sides(
        &mut self,
        line: &Line,
        pattern: Option<&PatternFigures>,
        alloy: Option<AlloyTerms<'a>>,
    ) -> [Option<SideFigures>; 3] {
        let asked = line.finished.sides();
        let (Some(pattern), Some(alloy), true) = (pattern, alloy, asked.iter().any(Option::is_some)) else { return [None; 3] };
        let place = Place::Line(line.id);
        let takes = self.book.entered_or(&TAKES, place, line.finishing_takes_mm, &TAKES_NOTHING);
        [0, 1, 2].map(|axis| {
            let finished = self.book.entered(&FINISHED, place, asked[axis]?.get());
            let cast = self.book.derive(&CAST_OUTSIDE, place, [finished, takes]);
            let back = way_back(self.book, place, cast, [alloy.shrink, pattern.shrink]);
            let (measure, _) = typed(self.book, place, back.on_print, pattern.printer[axis]);
            let scale = pattern.file_sides_mm.map(|sides| {
                let side = self.book.measured(&FILE_SIDE, place, sides[axis]);
                self.book.derive(&SCALE, place, [measure, side])
            });
            Some(SideFigures { finished, back, typed: Typed { measure, scale, within: None } })
        })
    }

    /// The scale and inner diameter of a ring size; one that its scale does not have is a finding.
    fn ring_size(&mut self, size: &'a Size, place: Place) -> Option<(&'a RingScale, Id)> {
        let Size::Ring { scale, size } = size else { return None };
        let scale = self.entry::<RingScale>(Some(scale), place)?;
        match scale.inner_diameter_mm(size) {
            Ok(bore_mm) => {
                let origin = &scale.origin;
                Some((scale, self.book.shelf_number(&SIZE_BORE, &scale.id, bore_mm, origin.source(), origin.trust())))
            }
            Err(error) => {
                let range = match error {
                    SizeError::NotASize { example, .. } => example,
                    SizeError::OffScale { lowest, highest } => format!("{lowest} – {highest}"),
                    SizeError::Between { below, above } => format!("{below}, {above}"),
                };
                self.find(&finding::SIZE_OFF_SCALE, place, vec![Arg::Text(size.clone()), Arg::Text(scale.name.clone()), Arg::Text(range)]);
                None
            }
        }
    }
}
