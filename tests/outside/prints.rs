//! The print plan by hand, and what must hold of any arrangement on plates.

use pourbook::calc::{Parts, PrintFigures, plates};
use pourbook::job::{PatternId, PrintRow};

use super::table::{Table, Within};
use super::world::{Outcome, World, said};

fn plan(outcome: &Outcome) -> &PrintFigures {
    &outcome.report.prints[0]
}

#[test]
fn a_plan_worked_by_hand() {
    // Three leaves of 30 × 10 × 10 mm and 1.0 cm³, a knob of 10 × 10 mm and 0.8 cm³ that stands 12 mm high with its supports; layers of
    // 0.05 mm, six of them lit 30 s, the others 2.5 s, 6 s of moving each; a plate of 120 × 68 mm with 2 mm between parts; supports a quarter;
    // resin of 1.12 g/cm³ at 190 a kilogram.
    let outcome = World::full().recompute();
    let found = plan(&outcome);
    let hand = "worked by hand";
    let mut table = Table::default();
    let mut row = |name: &str, expected: f64, id| table.row(name, hand, expected, outcome.number(id), Within::Share(1e-12));
    row("layers, 12 / 0.05", 240.0, found.layers);
    row("minutes, (6·36 + 234·8.5) / 60", 2205.0 / 60.0, found.time);
    row("leaves on a plate, turned: 10 · 2 before 3 · 5", 20.0, found.rows[0].fits);
    row("knobs on a plate, 10 · 5", 50.0, found.rows[1].fits);
    row("plates", 1.0, found.plates);
    row("plates at least, 1296 of 8540 mm²", 1.0, found.plates_least);
    row("cm³ of resin, (3·1.0 + 0.8)·1.25", 4.75, found.resin);
    row("g of resin, 4.75·1.12", 5.32, found.mass);
    row("cost, 5.32·0.19 to the cent", 1.01, found.cost.unwrap());
    table.judge(1);
}

#[test]
fn half_the_layer_is_twice_the_layers() {
    for height in [0.05, 0.7, 1.1, 12.0, 26.35, 149.95] {
        let layers = |layer: f64| {
            let world = World::full().with(|world| {
                world.studio.printers[0].settings[0].layer_mm = said(layer);
                world.job.prints[0].rows =
                    vec![PrintRow { pattern: PatternId(3), count: 1, height_mm: said(height), ..PrintRow::default() }];
            });
            let outcome = world.recompute();
            outcome.number(plan(&outcome).layers)
        };
        // Whole layers, although neither height nor layer is a whole number of anything in binary.
        assert_eq!(layers(0.05), (height * 20.0).round(), "{height}");
        assert_eq!(layers(0.025), 2.0 * layers(0.05), "{height}");
        // A layer more where the height is a hair over.
        assert_eq!(layers(0.05) + 1.0, {
            let over = World::full().with(|world| {
                world.job.prints[0].rows =
                    vec![PrintRow { pattern: PatternId(3), count: 1, height_mm: said(height + 0.001), ..PrintRow::default() }];
            });
            let outcome = over.recompute();
            outcome.number(plan(&outcome).layers)
        });
    }
}

#[test]
fn twice_as_many_take_twice_the_resin_and_no_longer_a_plate() {
    let once = World::full().recompute();
    let twice = World::full().with(|world| world.job.prints[0].rows.iter_mut().for_each(|row| row.count *= 2)).recompute();
    assert_eq!(twice.number(plan(&twice).resin), 2.0 * once.number(plan(&once).resin));
    assert_eq!(twice.number(plan(&twice).time), once.number(plan(&once).time));
    // 41 leaves at 20 a plate.
    let many = World::full().with(|world| {
        world.job.prints[0].rows.truncate(1);
        world.job.prints[0].rows[0].count = 41;
    });
    let many = many.recompute();
    assert_eq!(many.number(plan(&many).plates), 3.0);
    assert_eq!(many.number(plan(&many).time_all), 3.0 * many.number(plan(&many).time));
}

/// Numbers that repeat (a linear congruence, its constants from Knuth's MMIX).
struct Random(u64);

impl Random {
    fn below(&mut self, most: u32) -> u32 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        u32::try_from((self.0 >> 33) % u64::from(most)).unwrap()
    }
}

#[test]
fn plates_lie_between_the_area_and_each_part_apart() {
    let mut random = Random(7);
    let mut met = 0;
    for _ in 0..3000 {
        let plate = [f64::from(60 + random.below(120)), f64::from(40 + random.below(80))];
        let gap = f64::from(random.below(5));
        let kinds = 1 + random.below(6);
        let parts: Vec<Parts> = (0..kinds)
            .map(|_| Parts { sides_mm: [f64::from(3 + random.below(37)), f64::from(3 + random.below(37))], count: 1 + random.below(60) })
            .collect();
        let found = plates(&parts, plate, gap).unwrap();
        let area: f64 = parts.iter().map(|part| f64::from(part.count) * (part.sides_mm[0] + gap) * (part.sides_mm[1] + gap)).sum();
        let least = area / ((plate[0] + gap) * (plate[1] + gap));
        let apart: u64 = parts.iter().map(|part| plates(&[*part], plate, gap).unwrap()).sum();
        assert!(found as f64 >= least - 1e-9 && found <= apart, "{least} {found} {apart}: {parts:?} on {plate:?}");
        met += u32::from(found as f64 == least.ceil());
        // The order of rows, and which side is called x, change nothing; more parts never need fewer plates than their area says.
        let turned: Vec<Parts> = parts.iter().rev().map(|part| Parts { sides_mm: [part.sides_mm[1], part.sides_mm[0]], ..*part }).collect();
        assert_eq!(plates(&turned, [plate[1], plate[0]], gap), Some(found));
    }
    // Rows of mixed parts never fill a plate to its rim, and yet in a third of all cases no plan could need fewer.
    assert!(met > 1000, "{met} of 3000 are as few as can be");
}

#[test]
fn equal_squares_fill_a_plate_in_rows_and_columns() {
    for (side, count) in [(10.0, 54), (11.0, 37), (23.5, 4), (7.0, 200)] {
        let each = (91.0_f64 / (side + 1.0)).floor() * (61.0_f64 / (side + 1.0)).floor();
        let by_hand = (f64::from(count) / each).ceil();
        assert_eq!(plates(&[Parts { sides_mm: [side, side], count }], [90.0, 60.0], 1.0).map(|many| many as f64), Some(by_hand));
    }
}

#[test]
fn ten_thousand_parts_of_a_hundred_kinds_are_laid_at_once() {
    let parts: Vec<Parts> =
        (0..100).map(|kind| Parts { sides_mm: [3.0 + f64::from(kind) * 0.31, 2.0 + f64::from(kind) * 0.17], count: 10_000 }).collect();
    let begun = std::time::Instant::now();
    assert!(plates(&parts, [120.0, 68.0], 2.0).unwrap() > 1000);
    assert!(begun.elapsed().as_secs() < 5, "{:?}", begun.elapsed());
}

#[test]
fn an_accepted_line_reaches_what_is_typed_in_the_slicer() {
    // The leaves of the full job are printed on a calibrated printer and are to be 29.5 mm along x.
    let typed = |accepted: bool| {
        let mut world = World::full();
        world.studio.calibrations[0].accepted = accepted;
        let outcome = world.recompute();
        let side = outcome.report.lines.iter().find_map(|line| line.sides[0]).unwrap();
        (outcome.number(side.back.on_print), outcome.number(side.typed.measure))
    };
    let (wanted, true_printer) = typed(false);
    assert_eq!(wanted, true_printer);
    // Least squares on 5, 10, 20, 40 with 0.996·x + 0.03 + (0.02, 0.01, 0.02, 0.01), worked by hand: mean of x 18.75, of the last 0.015;
    // Σ(x − 18.75)² = 718.75, Σ(x − 18.75)·last = 25·0.005 − 50·0.005 = −0.125, so that the slope is 0.996 − 0.125/718.75 and the
    // offset 0.045 + 18.75·0.125/718.75.
    let (slope, offset) = (0.996 - 0.125 / 718.75, 0.045 + 18.75 * 0.125 / 718.75);
    let (same, typed) = typed(true);
    assert_eq!(same, wanted);
    assert!((typed - (wanted - offset) / slope).abs() < 1e-9, "{typed} for {wanted}");
}
