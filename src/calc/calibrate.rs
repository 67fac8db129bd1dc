//! How true a printer prints with a resin: a straight line of measured on drawn lengths by least squares, axis by axis, and what to draw so
//! that a part comes out at a wanted measure.

use jiff::civil::Date;

use super::book::{Book, Id};
use super::pass::Pass;
use super::rule::{inputs, rules};
use super::value::Cause;
use crate::job::{Axis, Calibration, Place, Studio};
use crate::stock::EntryId;

inputs! {
    /// A length as it was drawn.
    NOMINAL "calibrate.nominal" Length;
    /// The same as it came out.
    MEASURED "calibrate.measured" Length;
    /// Lengths measured along an axis.
    ROWS "calibrate.rows" Count;
    /// The measure a part is to come out at.
    WANTED "calibrate.wanted" Length;
}

rules! {
    /// All drawn lengths.
    SUM_NOMINAL "calibrate.sum-nominal" (nominal: Length) -> Length
        = Sum "sum(nominal)";
        Computed "sum of the lengths as they were drawn"
    /// All measured lengths.
    SUM_MEASURED "calibrate.sum-measured" (measured: Length) -> Length
        = Sum "sum(measured)";
        Computed "sum of the lengths as they came out"
    /// Mean of the drawn lengths.
    MEAN_NOMINAL "calibrate.mean-nominal" (sum: Length, rows: Count) -> Length
        = Formula "sum/rows" { sum / rows };
        Computed "arithmetic mean"
    /// Mean of the measured lengths.
    MEAN_MEASURED "calibrate.mean-measured" (sum: Length, rows: Count) -> Length
        = Formula "sum/rows" { sum / rows };
        Computed "arithmetic mean"
    /// How far a drawn length lies from their mean, squared.
    SQUARE "calibrate.square" (nominal: Length, mean: Length) -> Area
        = Formula "(nominal - mean)^2" { (nominal - mean).powi(2) };
        Computed "least squares, about the mean so that no digits are lost"
    /// The same times how far the measured one lies from its own.
    PRODUCT "calibrate.product" (nominal: Length, mean: Length, measured: Length, mean_measured: Length) -> Area
        = Formula "(nominal - mean)*(measured - mean_measured)" { (nominal - mean) * (measured - mean_measured) };
        Computed "least squares, about the means so that no digits are lost"
    /// All squares.
    SQUARES "calibrate.squares" (square: Area) -> Area
        = Sum "sum(square)";
        Computed "least squares"
    /// All products.
    PRODUCTS "calibrate.products" (product: Area) -> Area
        = Sum "sum(product)";
        Computed "least squares"
    /// Measured for every millimetre drawn.
    SLOPE "calibrate.slope" (products: Area, squares: Area) -> Ratio
        = Formula "products/squares" { products / squares };
        FromMemory "straight line by least squares, as in any textbook of statistics (from memory)"
    /// What is measured more than drawn, whatever the length.
    OFFSET "calibrate.offset" (mean_measured: Length, slope: Ratio, mean: Length) -> Length
        = Formula "mean_measured - slope*mean" { mean_measured - slope * mean };
        FromMemory "straight line by least squares, as in any textbook of statistics (from memory)"
    /// How far a measured length lies off the line.
    RESIDUAL "calibrate.residual" (measured: Length, offset: Length, slope: Ratio, nominal: Length) -> Length
        = Formula "measured - (offset + slope*nominal)" { measured - (offset + slope * nominal) };
        Computed "measured less what the line says"
    /// The same squared.
    RESIDUAL_SQUARE "calibrate.residual-square" (residual: Length) -> Area
        = Formula "residual^2" { residual.powi(2) };
        Computed "least squares"
    /// All of them.
    RESIDUALS "calibrate.residuals" (square: Area) -> Area
        = Sum "sum(square)";
        Computed "least squares"
    /// Rows beyond the two that a line takes for itself.
    FREE "calibrate.free" (rows: Count) -> Count
        = Formula "rows - 2" { rows - 2.0 };
        Computed "two numbers, slope and offset, were taken from the rows"
    /// How far lengths lie off the line, as a standard deviation.
    SPREAD "calibrate.spread" (residuals: Area, free: Count) -> Length
        = Formula "sqrt(residuals/free)" { (residuals / free).sqrt() };
        FromMemory "residual standard deviation, as in any textbook of statistics (from memory)"
    /// How far the slope may be off.
    SLOPE_ERROR "calibrate.slope-error" (spread: Length, squares: Area) -> Ratio
        = Formula "spread/sqrt(squares)" { spread / squares.sqrt() };
        FromMemory "standard error of a slope, as in any textbook of statistics (from memory)"
    /// How far the offset may be off.
    OFFSET_ERROR "calibrate.offset-error" (spread: Length, rows: Count, mean: Length, squares: Area) -> Length
        = Formula "spread*sqrt(1/rows + mean^2/squares)" { spread * (1.0 / rows + mean.powi(2) / squares).sqrt() };
        FromMemory "standard error of an intercept, as in any textbook of statistics (from memory)"
    /// What to draw for a wanted measure.
    DRAWN "calibrate.drawn" (wanted: Length, offset: Length, slope: Ratio) -> Length
        = Formula "(wanted - offset)/slope" { (wanted - offset) / slope };
        Computed "the line, read backwards"
    /// How far that may be off for one part.
    DRAWN_ERROR "calibrate.drawn-error" (spread: Length, slope: Ratio, rows: Count, wanted: Length, mean_measured: Length, squares: Area) -> Length
        = Formula "spread/abs(slope)*sqrt(1 + 1/rows + (wanted - mean_measured)^2/(slope^2*squares))" {
            spread / slope.abs() * (1.0 + 1.0 / rows + (wanted - mean_measured).powi(2) / (slope.powi(2) * squares)).sqrt()
        };
        FromMemory "standard error of a calibration line read backwards, for one reading, as in textbooks of analytical chemistry (from memory)"
}

/// A line of fewer rows says nothing of how far it may be off.
pub const LEAST_ROWS: usize = 3;

/// One measured length against the line.
#[derive(Debug, Clone, Copy)]
pub struct GaugeFigures {
    /// Its place among the calibration's rows.
    pub row: usize,
    /// As it was drawn.
    pub nominal: Id,
    /// As it came out.
    pub measured: Id,
    /// How far it lies off the line.
    pub residual: Id,
}

/// The line of one axis.
#[derive(Debug, Clone)]
pub struct AxisFigures {
    /// The axis.
    pub axis: Axis,
    /// Its rows, those that say both lengths.
    pub rows: Vec<GaugeFigures>,
    /// Measured for every millimetre drawn.
    pub slope: Id,
    /// What is measured more than drawn, whatever the length.
    pub offset: Id,
    /// Standard error of the slope.
    pub slope_error: Id,
    /// Standard error of the offset.
    pub offset_error: Id,
    /// Residual standard deviation.
    pub spread: Id,
    /// What to draw for the wanted measure, and its standard error.
    pub drawn: Option<[Id; 2]>,
}

/// The lines of one calibration.
#[derive(Debug, Clone)]
pub struct CalibrationFigures {
    /// Its place in the studio's list.
    pub at: usize,
    /// The axes that were measured.
    pub axes: Vec<AxisFigures>,
}

/// What an accepted calibration says of an axis.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct AcceptedLine {
    /// When it was measured.
    pub on: Option<Date>,
    /// Measured for every millimetre drawn.
    pub slope: f64,
    /// What is measured more than drawn, in mm.
    pub offset_mm: f64,
    /// Standard error of the slope.
    pub slope_error: f64,
    /// Standard error of the offset, in mm.
    pub offset_error_mm: f64,
    /// Residual standard deviation, in mm.
    pub spread_mm: f64,
    /// Rows it rests on.
    pub rows: usize,
}

/// The line by which sizes are drawn for a printer with a resin: of the accepted calibrations that measured this axis at least
/// [`LEAST_ROWS`] times, the newest. Computed anew, by the same rules as the figures of [`CalibrationFigures`].
#[must_use]
pub fn accepted_line(studio: &Studio, printer: &str, material: Option<&EntryId>, axis: Axis) -> Option<AcceptedLine> {
    let mut newest = accepted(studio, printer, material).into_iter();
    let calibration = newest.find(|(_, calibration)| complete(calibration, axis).count() >= LEAST_ROWS)?.1;
    let mut book = Book::default();
    let line = fit(&mut book, calibration, axis)?;
    Some(AcceptedLine {
        on: calibration.on,
        slope: book.number(line.slope)?,
        offset_mm: book.number(line.offset)?,
        slope_error: book.number(line.slope_error)?,
        offset_error_mm: book.number(line.offset_error)?,
        spread_mm: book.number(line.spread)?,
        rows: line.rows.len(),
    })
}

/// The accepted calibrations of a printer with a resin with their places in the studio's list, newest first; one without a day is the oldest.
#[must_use]
pub fn accepted<'s>(studio: &'s Studio, printer: &str, material: Option<&EntryId>) -> Vec<(usize, &'s Calibration)> {
    let of = |calibration: &Calibration| {
        calibration.accepted && calibration.printer.trim() == printer.trim() && calibration.material.as_ref() == material
    };
    let mut found: Vec<_> = studio.calibrations.iter().enumerate().filter(|(_, calibration)| of(calibration)).collect();
    found.sort_by_key(|(at, calibration)| std::cmp::Reverse((calibration.on, *at)));
    found
}

/// Rows of an axis that say both lengths, with their places: (row, drawn, measured).
fn complete(calibration: &Calibration, axis: Axis) -> impl Iterator<Item = (usize, f64, f64)> + '_ {
    calibration.rows.iter().enumerate().filter(move |(_, gauge)| gauge.axis == axis).filter_map(|(row, gauge)| {
        let (nominal, measured) = (gauge.nominal_mm?, gauge.measured_mm?);
        Some((row, nominal.get(), measured.get()))
    })
}

/// The line of an axis; `None` where nothing was measured along it.
fn fit(book: &mut Book, calibration: &Calibration, axis: Axis) -> Option<AxisFigures> {
    let rows: Vec<(usize, Id, Id)> = complete(calibration, axis)
        .map(|(row, nominal, measured)| (row, book.studio(&NOMINAL, nominal), book.studio(&MEASURED, measured)))
        .collect();
    if rows.is_empty() {
        return None;
    }
    let place = Place::Studio;
    let many = u32::try_from(rows.len()).unwrap_or(u32::MAX);
    let count = if rows.len() < LEAST_ROWS { book.absent(&ROWS, place, Cause::TooFew) } else { book.studio(&ROWS, f64::from(many)) };
    let nominals: Vec<Id> = rows.iter().map(|row| row.1).collect();
    let all_measured: Vec<Id> = rows.iter().map(|row| row.2).collect();
    let sum = book.derive_over(&SUM_NOMINAL, place, &nominals);
    let mean = book.derive(&MEAN_NOMINAL, place, [sum, count]);
    let sum = book.derive_over(&SUM_MEASURED, place, &all_measured);
    let mean_measured = book.derive(&MEAN_MEASURED, place, [sum, count]);
    let squares: Vec<Id> = nominals.iter().map(|nominal| book.derive(&SQUARE, place, [*nominal, mean])).collect();
    let squares = book.derive_over(&SQUARES, place, &squares);
    let products: Vec<Id> =
        rows.iter().map(|(_, nominal, measured)| book.derive(&PRODUCT, place, [*nominal, mean, *measured, mean_measured])).collect();
    let products = book.derive_over(&PRODUCTS, place, &products);
    let slope = book.derive(&SLOPE, place, [products, squares]);
    let offset = book.derive(&OFFSET, place, [mean_measured, slope, mean]);
    let rows: Vec<GaugeFigures> = rows
        .into_iter()
        .map(|(row, nominal, measured)| {
            let residual = book.derive(&RESIDUAL, place, [measured, offset, slope, nominal]);
            GaugeFigures { row, nominal, measured, residual }
        })
        .collect();
    let residuals: Vec<Id> = rows.iter().map(|row| book.derive(&RESIDUAL_SQUARE, place, [row.residual])).collect();
    let residuals = book.derive_over(&RESIDUALS, place, &residuals);
    let free = book.derive(&FREE, place, [count]);
    let spread = book.derive(&SPREAD, place, [residuals, free]);
    let slope_error = book.derive(&SLOPE_ERROR, place, [spread, squares]);
    let offset_error = book.derive(&OFFSET_ERROR, place, [spread, count, mean, squares]);
    let drawn = calibration.wanted_mm.map(|wanted| {
        let wanted = book.studio(&WANTED, wanted.get());
        let drawn = book.derive(&DRAWN, place, [wanted, offset, slope]);
        [drawn, book.derive(&DRAWN_ERROR, place, [spread, slope, count, wanted, mean_measured, squares])]
    });
    Some(AxisFigures { axis, rows, slope, offset, slope_error, offset_error, spread, drawn })
}

impl Pass<'_> {
    /// The lines of every calibration of the studio, in its order.
    pub(super) fn calibrations(&mut self) -> Vec<CalibrationFigures> {
        let studio = self.studio;
        let lines = |book: &mut Book, calibration| Axis::ALL.into_iter().filter_map(|axis| fit(book, calibration, axis)).collect();
        studio
            .calibrations
            .iter()
            .enumerate()
            .map(|(at, calibration)| CalibrationFigures { at, axes: lines(self.book, calibration) })
            .collect()
    }
}
