//! Straight lines by least squares against certified and published results.

use pourbook::calc::{AcceptedLine, AxisFigures, accepted_line};
use pourbook::job::{Axis, Calibration};

use super::table::{Table, Within};
use super::world::{Outcome, World, gauge, said, some};

fn world(points: &[(f64, f64)], wanted: Option<f64>) -> World {
    World::empty().with(|world| {
        let rows = points.iter().map(|(drawn, measured)| gauge(Axis::Y, *drawn, *measured)).collect();
        let wanted_mm = wanted.and_then(said);
        world.studio.calibrations = vec![Calibration {
            printer: "press".to_owned(),
            material: some("resin-castable"),
            rows,
            wanted_mm,
            accepted: true,
            ..Calibration::default()
        }];
    })
}

fn line(outcome: &Outcome) -> &AxisFigures {
    let axes = &outcome.report.calibrations[0].axes;
    assert_eq!(axes.len(), 1);
    &axes[0]
}

fn pairs<const N: usize>(x: [f64; N], y: [f64; N]) -> Vec<(f64, f64)> {
    x.into_iter().zip(y).collect()
}

/// NIST Statistical Reference Datasets, linear regression, Norris: calibration of ozone monitors, 36 observations (US National Institute of
/// Standards and Technology, public domain).
fn norris() -> Vec<(f64, f64)> {
    let x = [
        0.2, 337.4, 118.2, 884.6, 10.1, 226.5, 666.3, 996.3, 448.6, 777.0, 558.2, 0.4, 0.6, 775.5, 666.9, 338.0, 447.5, 11.6, 556.0, 228.1,
        995.8, 887.6, 120.2, 0.3, 0.3, 556.8, 339.1, 887.2, 999.0, 779.0, 11.1, 118.3, 229.2, 669.1, 448.9, 0.5,
    ];
    let y = [
        0.1, 338.8, 118.1, 888.0, 9.2, 228.1, 668.5, 998.5, 449.1, 778.9, 559.2, 0.3, 0.1, 778.1, 668.8, 339.3, 448.9, 10.8, 557.7, 228.3,
        998.0, 888.8, 119.6, 0.3, 0.6, 557.6, 339.3, 888.0, 998.5, 778.9, 10.2, 117.6, 228.9, 668.4, 449.2, 0.2,
    ];
    pairs(x, y)
}

#[test]
fn a_certified_line() {
    let source = "NIST StRD, Norris, certified values";
    let studio = world(&norris(), None).studio;
    let outcome = world(&norris(), None).recompute();
    let found = line(&outcome);
    let mut table = Table::default();
    let certified = [
        ("offset", -0.262323073774029, found.offset),
        ("slope", 1.00211681802045, found.slope),
        ("standard error of the offset", 0.232818234301152, found.offset_error),
        ("standard error of the slope", 0.429796848199937E-03, found.slope_error),
        ("residual standard deviation", 0.884796396144373, found.spread),
    ];
    for (name, expected, id) in certified {
        // Certified to fifteen digits; ten must be met.
        table.row(format!("Norris: {name}"), source, expected, outcome.number(id), Within::Share(1e-10));
    }
    table.judge(1);
    // What the size chain asks for is the same line.
    let AcceptedLine { slope, offset_mm, slope_error, offset_error_mm, spread_mm, rows, on } =
        accepted_line(&studio, "press", some("resin-castable").as_ref(), Axis::Y).unwrap();
    let ids = [found.slope, found.offset, found.slope_error, found.offset_error, found.spread];
    assert_eq!(ids.map(|id| outcome.number(id)), [slope, offset_mm, slope_error, offset_error_mm, spread_mm]);
    assert_eq!((rows, on), (36, None));
    // Residuals of a line with an offset sum to nothing, and so do they weighed by length.
    let residuals: Vec<(f64, f64)> = found.rows.iter().map(|row| (outcome.number(row.residual), outcome.number(row.nominal))).collect();
    assert!(residuals.iter().map(|row| row.0).sum::<f64>().abs() < 1e-10);
    assert!(residuals.iter().map(|row| row.0 * row.1).sum::<f64>().abs() < 1e-7);
}

#[test]
fn four_tables_of_one_line() {
    // F. J. Anscombe, "Graphs in statistical analysis", The American Statistician 27 (1973): four tables that all give y = 3.00 + 0.500 x
    // with standard errors 1.125 and 0.118. Only the residuals tell them apart.
    let x = [10.0, 8.0, 13.0, 9.0, 11.0, 14.0, 6.0, 4.0, 12.0, 7.0, 5.0];
    let fourth = [8.0, 8.0, 8.0, 8.0, 8.0, 8.0, 8.0, 19.0, 8.0, 8.0, 8.0];
    let tables = [
        pairs(x, [8.04, 6.95, 7.58, 8.81, 8.33, 9.96, 7.24, 4.26, 10.84, 4.82, 5.68]),
        pairs(x, [9.14, 8.14, 8.74, 8.77, 9.26, 8.10, 6.13, 3.10, 9.13, 7.26, 4.74]),
        pairs(x, [7.46, 6.77, 12.74, 7.11, 7.81, 8.84, 6.08, 5.39, 8.15, 6.42, 5.73]),
        pairs(fourth, [6.58, 5.76, 7.71, 8.84, 8.47, 7.04, 5.25, 12.50, 5.56, 7.91, 6.89]),
    ];
    let source = "Anscombe 1973";
    let mut table = Table::default();
    for (number, points) in (1..).zip(&tables) {
        let outcome = world(points, None).recompute();
        let found = line(&outcome);
        table.row(format!("table {number}: slope"), source, 0.5, outcome.number(found.slope), Within::Amount(0.0005));
        table.row(format!("table {number}: offset"), source, 3.0, outcome.number(found.offset), Within::Amount(0.005));
        table.row(format!("table {number}: error of the slope"), source, 0.118, outcome.number(found.slope_error), Within::Amount(0.0005));
        table.row(
            format!("table {number}: error of the offset"),
            source,
            1.125,
            outcome.number(found.offset_error),
            Within::Amount(0.0015),
        );
    }
    table.judge(1);
    let outcome = world(&tables[2], None).recompute();
    let farthest = line(&outcome).rows.iter().max_by(|a, b| outcome.number(a.residual).abs().total_cmp(&outcome.number(b.residual).abs()));
    assert_eq!(farthest.unwrap().row, 2, "12.74 at 13 lies far off the others");
}

#[test]
fn a_line_read_backwards() {
    // J. N. Miller, J. C. Miller, "Statistics and Chemometrics for Analytical Chemistry", chapter 5, fluorescein standards, from memory.
    let points = pairs([0.0, 2.0, 4.0, 6.0, 8.0, 10.0, 12.0], [2.1, 5.0, 9.0, 12.6, 17.3, 21.0, 24.7]);
    let source = "Miller & Miller, chapter 5, from memory";
    let mut table = Table::default();
    for (wanted, drawn, error) in [(2.9, 0.72, 0.26), (13.5, 6.21, 0.24), (23.0, 11.13, 0.26)] {
        let outcome = world(&points, Some(wanted)).recompute();
        let found = line(&outcome);
        let [ours, off] = found.drawn.unwrap();
        table.row(format!("what gives {wanted}"), source, drawn, outcome.number(ours), Within::Printed(2));
        table.row(format!("its error at {wanted}"), source, error, outcome.number(off), Within::Printed(2));
        // Drawn like that, it comes out as wanted.
        let back = outcome.number(found.offset) + outcome.number(found.slope) * outcome.number(ours);
        table.row(format!("{wanted} drawn and measured again"), "the line itself", wanted, back, Within::Share(1e-12));
        // The book rounds its residuals before it squares them.
        table.row("spread about the line", source, 0.4329, outcome.number(found.spread), Within::Amount(0.0001));
        table.row("error of the slope", source, 0.0409, outcome.number(found.slope_error), Within::Printed(4));
        table.row("error of the offset", source, 0.2949, outcome.number(found.offset_error), Within::Printed(4));
    }
    table.judge(1);
}

/// What the script prints.
const FRACTIONS: [(&str, f64); 7] = [
    ("slope", 0.996069565217391),
    ("offset", 0.0286956521739130),
    ("spread", 0.0172702307328309),
    ("error of the slope", 0.000644182927911379),
    ("error of the offset", 0.0148476828562701),
    ("drawn for 17.2", 17.2390613541921),
    ("error of what is drawn", 0.0194095089710340),
];

#[test]
fn a_made_table_in_exact_fractions() {
    // python3 tests/tools/line_by_fractions.py
    let points = [(5.0, 5.02), (10.0, 9.99), (20.0, 19.93), (40.0, 39.88)];
    let outcome = world(&points, Some(17.2)).recompute();
    let found = line(&outcome);
    let source = "tests/tools/line_by_fractions.py";
    let mut table = Table::default();
    let ids =
        [found.slope, found.offset, found.spread, found.slope_error, found.offset_error, found.drawn.unwrap()[0], found.drawn.unwrap()[1]];
    for ((name, expected), id) in FRACTIONS.into_iter().zip(ids) {
        table.row(name, source, expected, outcome.number(id), Within::Share(1e-10));
    }
    table.judge(1);
}

#[test]
fn too_few_rows_or_lengths_all_alike_give_no_line() {
    for (points, root) in
        [(vec![(10.0, 9.98), (20.0, 19.95)], "calibrate.rows"), (vec![(10.0, 9.98), (10.0, 9.97), (10.0, 9.99)], "calibrate.slope")]
    {
        let outcome = world(&points, Some(17.2)).recompute();
        let found = line(&outcome);
        for id in [found.slope, found.offset, found.slope_error, found.offset_error, found.spread, found.drawn.unwrap()[0]] {
            assert_eq!(outcome.book.number(id), None);
            assert_eq!(outcome.roots(id), [root]);
        }
        assert_eq!(accepted_line(&world(&points, None).studio, "press", some("resin-castable").as_ref(), Axis::Y), None);
    }
    assert!(world(&[], None).recompute().report.calibrations[0].axes.is_empty());
}

#[test]
fn the_newest_accepted_one_counts() {
    use jiff::civil::date;
    let points = |by: f64| [(5.0, 5.0 * by), (10.0, 10.0 * by), (20.0, 20.0 * by)];
    let studio = |change: fn(&mut [Calibration])| {
        let calibrations = [0.99, 0.98, 0.97].map(|by| world(&points(by), None).studio.calibrations.remove(0));
        let mut calibrations = calibrations.to_vec();
        calibrations[0].on = Some(date(2026, 2, 1));
        calibrations[1].on = Some(date(2026, 3, 1));
        change(&mut calibrations);
        World::empty().with(|world| world.studio.calibrations = calibrations).studio
    };
    let slope = |studio, axis| {
        let resin = some("resin-castable");
        accepted_line(&studio, " press ", resin.as_ref(), axis).map(|line| (line.slope * 1e9).round() / 1e9)
    };
    // The third has no day, so it is the oldest.
    assert_eq!(slope(studio(|_| ()), Axis::Y), Some(0.98));
    assert_eq!(slope(studio(|all| all[1].accepted = false), Axis::Y), Some(0.99));
    assert_eq!(slope(studio(|all| all[1].printer = "other".to_owned()), Axis::Y), Some(0.99));
    assert_eq!(slope(studio(|all| all[1].material = None), Axis::Y), Some(0.99));
    // A later one that measured another axis leaves this one standing.
    assert_eq!(slope(studio(|all| all[1].rows.iter_mut().for_each(|row| row.axis = Axis::Z)), Axis::Y), Some(0.99));
    assert_eq!(slope(studio(|_| ()), Axis::X), None);
}
